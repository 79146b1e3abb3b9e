"""Rows that dialogs share: a length, a text, a choice; each shows its outcome while it is filled in."""

from collections.abc import Iterable
from enum import Enum

from PySide6.QtWidgets import QComboBox, QLineEdit

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.workbench import Workbench
from panelcad.model.project import Project


def start(bench: Workbench) -> tuple[Project, str, str]:
    """The project, the option and the plate that are looked at."""
    return bench.document.project, bench.document.option_id, bench.stage.plate_id


def length_row(dialog: EditDialog, title: str, mm: float) -> LengthEntry:
    unit = dialog.bench.unit
    entry = LengthEntry(title.replace("&", ""), mm, unit)
    entry.edited.connect(dialog.preview)
    dialog.form.row(f"{title}, {unit.value}", entry)
    return entry


def text_row(dialog: EditDialog, title: str, text: str) -> QLineEdit:
    field = QLineEdit(text)
    field.setAccessibleName(title.replace("&", ""))
    field.textEdited.connect(lambda _: dialog.preview())
    dialog.form.row(title, field)
    return field


def choice_row(dialog: EditDialog, title: str, values: Iterable[Enum], chosen: Enum) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName(title.replace("&", ""))
    for value in values:
        box.addItem(str(value.value), value)
    box.setCurrentIndex(box.findData(chosen))
    box.activated.connect(lambda _: dialog.preview())
    dialog.form.row(title, box)
    return box
