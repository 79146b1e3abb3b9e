"""Rows for the screw holes of a cutout: none, on a circle, or at the corners of a rectangle."""

from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QLabel, QLineEdit

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.entries import AngleEntry, LengthEntry
from panelcad.desktop.panes.form import Form
from panelcad.errors import UnreadableQuantity
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, Spot
from panelcad.model.source import Source
from panelcad.units import LengthUnit

_NONE, _CIRCLE, _RECTANGLE, _KEPT = "none", "circle", "rectangle", "kept"
_SHOWN: Final = {
    _NONE: (),
    _KEPT: (),
    _CIRCLE: ("ring", "count", "first", "hole", "fastener"),
    _RECTANGLE: ("across", "up", "hole", "fastener"),
}
_TITLES: Final = {
    "ring": "Bolt circle",
    "across": "Between holes, across",
    "up": "Between holes, up",
    "hole": "Screw hole",
    "fastener": "Screw, nominal",
}
_FIRST: Final = {"ring": 88.9, "across": 63.5, "up": 63.5, "hole": 4.318, "fastener": 0.138 * 25.4}
"""Values to begin with in mm: four #6-32 screws on a 3 1/2 in circle, the pattern of a 3 1/8 in instrument."""


class HolesEntry(QObject):
    """`edited` whenever a field says something else."""

    edited = Signal()

    def __init__(self, form: Form, unit: LengthUnit, groups: tuple[HoleGroup, ...]) -> None:
        super().__init__()
        self._kept = groups
        self.pattern = ChoiceBox()
        self.pattern.setAccessibleName("Screw holes")
        for title, key in (("none", _NONE), ("on a circle", _CIRCLE), ("at the corners of a rectangle", _RECTANGLE)):
            self.pattern.addItem(title, key)
        if groups:
            self.pattern.addItem("as they are", _KEPT)
            self.pattern.setCurrentIndex(self.pattern.count() - 1)
        form.row("Screw &holes", self.pattern)
        self._lengths = {key: LengthEntry(title, _FIRST[key], unit) for key, title in _TITLES.items()}
        self._count, self._first = QLineEdit("4"), AngleEntry("First at", 45.0)
        self._count.setAccessibleName("How many")
        self._rows: dict[str, tuple[QLabel, QLineEdit]] = {}
        for key in ("ring", "across", "up"):
            self._add(form, key, f"{_TITLES[key]}, {unit.value}", self._lengths[key])
        self._add(form, "count", "How many", self._count)
        self._add(form, "first", "First at, °", self._first)
        for key in ("hole", "fastener"):
            self._add(form, key, f"{_TITLES[key]}, {unit.value}", self._lengths[key])
        self.pattern.activated.connect(lambda _: self._take())
        self._show()

    def _add(self, form: Form, key: str, title: str, field: QLineEdit) -> None:
        label = QLabel(title)
        label.setProperty("role", "faint")
        form.label_row(label, field)
        field.textEdited.connect(lambda _: self.edited.emit())
        self._rows[key] = label, field

    def _take(self) -> None:
        self._show()
        self.edited.emit()

    def _show(self) -> None:
        shown = _SHOWN[self.pattern.currentData()]
        for key, (label, field) in self._rows.items():
            label.setVisible(key in shown)
            field.setVisible(key in shown)

    def groups(self, source: Source) -> tuple[HoleGroup, ...]:
        """The holes that the fields say. Raises `UnreadableQuantity`; pydantic's error where they make no holes."""
        pattern = self.pattern.currentData()
        if pattern in {_NONE, _KEPT}:
            return self._kept if pattern == _KEPT else ()
        form = HoleForm(diameter=self._lengths["hole"].mm, fastener=self._lengths["fastener"].mm)
        if pattern == _CIRCLE:
            return (HoleGroup(form=form, bolt_circle=self._ring(), source=source),)
        across, up = self._lengths["across"].mm / 2, self._lengths["up"].mm / 2
        spots = tuple(Spot(x=x, y=y) for x, y in ((across, up), (-across, up), (-across, -up), (across, -up)))
        return (HoleGroup(form=form, spots=spots, source=source),)

    def _ring(self) -> BoltCircle:
        text = self._count.text().strip()
        if not text.isdecimal():
            raise UnreadableQuantity(text, "a whole number of holes", "How many")
        return BoltCircle(diameter=self._lengths["ring"].mm, count=int(text[:4]), first_angle=self._first.degrees)
