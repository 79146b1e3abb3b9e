"""Rows for the screw holes of a cutout: none, on a circle, or at the corners of a rectangle.

They begin with the holes that are there; a pattern that has no rows stays as it is.
"""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QLabel, QLineEdit

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.entries import AngleEntry, LengthEntry
from panelcad.desktop.dialogs.screw_rows import FastenerEntry
from panelcad.desktop.panes.form import Form
from panelcad.errors import UnreadableQuantity
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, Spot
from panelcad.model.source import Source, Standing
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
_ENTRIES: Final = {"fastener": FastenerEntry}
_FIRST: Final = {"ring": 88.9, "across": 63.5, "up": 63.5, "hole": 4.318, "fastener": 0.138 * 25.4}
"""Values to begin with in mm: four #6-32 screws on a 3 1/2 in circle, the pattern of a 3 1/8 in instrument."""


class HolesEntry(QObject):
    """`edited` whenever a field says something else."""

    edited = Signal()

    def __init__(self, form: Form, unit: LengthUnit, groups: tuple[HoleGroup, ...]) -> None:
        super().__init__()
        self._kept = groups
        self._known = _known(groups)
        self._is_touched = False
        self.edited.connect(self._touch)
        self.pattern = ChoiceBox()
        self.pattern.setAccessibleName("Screw holes")
        for title, key in (("none", _NONE), ("on a circle", _CIRCLE), ("at the corners of a rectangle", _RECTANGLE)):
            self.pattern.addItem(title, key)
        if groups and self._known is None:
            self.pattern.addItem("as they are", _KEPT)
        self.pattern.setCurrentIndex(self.pattern.findData(self._first_pattern))
        form.row("Screw &holes", self.pattern)
        figures = {**_FIRST, **(self._known.lengths if self._known else {})}
        self._lengths = {
            key: _ENTRIES.get(key, LengthEntry)(title, figures[key], unit) for key, title in _TITLES.items()
        }
        ring = self._known.ring if self._known else None
        self._count = QLineEdit(str(ring.count if ring else 4))
        self._first = AngleEntry("First at", ring.first_angle if ring else 45.0)
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

    @property
    def _first_pattern(self) -> str:
        if self._known is None:
            return _KEPT if self._kept else _NONE
        return _CIRCLE if self._known.ring else _RECTANGLE

    def _touch(self) -> None:
        self._is_touched = True

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
        if pattern == _NONE:
            return ()
        if pattern == _KEPT or (self._known is not None and not self._is_touched):
            return tuple(_as_measured(group, source) for group in self._kept)
        sizes = {"diameter": self._lengths["hole"].mm, "fastener": self._lengths["fastener"].mm}
        form = HoleForm(**sizes) if self._known is None else self._known.group.form.revised(**sizes)
        if pattern == _CIRCLE:
            return (HoleGroup(form=form, bolt_circle=self._ring(), source=source),)
        across, up = self._lengths["across"].mm / 2, self._lengths["up"].mm / 2
        return (HoleGroup(form=form, spots=_corners(across, up), source=source),)

    def _ring(self) -> BoltCircle:
        text = self._count.text().strip()
        if not text.isdecimal():
            raise UnreadableQuantity(text, "a whole number of holes", "How many")
        return BoltCircle(diameter=self._lengths["ring"].mm, count=int(text[:4]), first_angle=self._first.degrees)


@dataclass(frozen=True)
class _Known:
    """A pattern that has rows: its figures in mm, and its bolt circle if it is one."""

    group: HoleGroup
    lengths: dict[str, float]
    ring: BoltCircle | None


def _known(groups: tuple[HoleGroup, ...]) -> _Known | None:
    """The figures of a cutout's holes where rows say them all."""
    if len(groups) != 1:
        return None
    group = groups[0]
    lengths = {"hole": group.form.diameter, "fastener": group.form.fastener}
    if group.bolt_circle is not None:
        ring = group.bolt_circle
        return None if group.spots else _Known(group, {**lengths, "ring": ring.diameter}, ring)
    across, up = max(spot.x for spot in group.spots), max(spot.y for spot in group.spots)
    if {(spot.x, spot.y) for spot in group.spots} != {(spot.x, spot.y) for spot in _corners(across, up)}:
        return None
    return _Known(group, {**lengths, "across": 2 * across, "up": 2 * up}, None)


def _corners(across: float, up: float) -> tuple[Spot, ...]:
    """At so many mm right, left, above and below the middle."""
    return tuple(Spot(x=x, y=y) for x, y in ((across, up), (-across, up), (-across, -up), (across, -up)))


def _as_measured(group: HoleGroup, source: Source) -> HoleGroup:
    """What the user measured has the source that the form says by now; another source stays."""
    return group.revised(source=source) if group.source.standing is Standing.USER else group
