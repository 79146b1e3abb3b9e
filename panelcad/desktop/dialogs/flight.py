"""The moment of flight that every instrument of the project shows; seen while it is typed."""

from typing import Any, Final

from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.look import flight_changed
from panelcad.errors import UnreadableQuantity
from panelcad.model.flight import Flight
from panelcad.model.project import Project

_NUMBERS: Final = (
    ("heading", "&Heading, °"),
    ("heading_bug", "Heading &bug, °"),
    ("course", "&Course, °"),
    ("airspeed", "&Airspeed, kt"),
    ("ground_speed", "&Ground speed, kt"),
    ("altitude", "A&ltitude, ft"),
    ("altitude_bug", "Altitude &wanted, ft"),
    ("setting_hpa", "Altimeter &setting, hPa"),
    ("vertical_speed", "&Vertical speed, ft/min"),
    ("pitch", "&Pitch, °"),
    ("bank", "Ban&k, ° right"),
)
_SPEEDS: Final = (
    ("vs0", "VS0"),
    ("vs1", "VS1"),
    ("vfe", "VFE"),
    ("vno", "VNO"),
    ("vne", "VNE"),
    ("vmc", "VMC of a twin"),
    ("vyse", "VYSE of a twin"),
)
_TEXTS: Final = (("squawk", "&Transponder code"), ("time", "Ti&me"), ("next_fix", "Ne&xt fix"))


def flight_shown(bench: Workbench, parent: QWidget) -> None:
    """Ask what the instruments show, while the canvas shows it."""
    project = bench.document.project
    if not bench.stage.view.keeps_pixmaps:
        bench.stage.look_from("look-day")
    dialog = EditDialog(bench, "The flight that instruments show", "Set", parent, at=Dialog.FLIGHT)
    fields = _fields(dialog, project.flight)
    dialog.ask(lambda: _changed(project, fields))


def _fields(dialog: EditDialog, flight: Flight) -> dict[str, QLineEdit]:
    fields = {name: _field(dialog, word, f"{getattr(flight, name):g}") for name, word in _NUMBERS}
    fields |= {name: _field(dialog, word, getattr(flight, name)) for name, word in _TEXTS}
    dialog.form.heading("Airspeed marks, kt")
    fields |= {name: _field(dialog, word, _speed_text(getattr(flight.airspeeds, name))) for name, word in _SPEEDS}
    return fields


def _field(dialog: EditDialog, word: str, text: str) -> QLineEdit:
    field = QLineEdit(text)
    field.setAccessibleName(word.replace("&", ""))
    field.textEdited.connect(lambda _: dialog.preview())
    dialog.form.row(word, field)
    return field


def _speed_text(knots: float | None) -> str:
    return "" if knots is None else f"{knots:g}"


def _changed(project: Project, fields: dict[str, QLineEdit]) -> Project:
    changes: dict[str, Any] = {name: _number(fields[name]) for name, _ in _NUMBERS}
    changes |= {name: fields[name].text().strip() for name, _ in _TEXTS}
    speeds = {name: _number(fields[name]) if fields[name].text().strip() else None for name, _ in _SPEEDS}
    return flight_changed(project, airspeeds=speeds, **changes)


def _number(field: QLineEdit) -> float:
    text = field.text().strip().replace(",", ".")
    try:
        return float(text)
    except ValueError:
        raise UnreadableQuantity(f"{field.accessibleName()} '{field.text()}'", "a number") from None
