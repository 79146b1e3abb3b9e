"""Rows of a dialog that say what shape a thing has and how large it is."""

from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QLabel

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.entries import AngleEntry, LengthEntry
from panelcad.desktop.panes.form import Form
from panelcad.desktop.shape_kinds import PLAIN, ShapeKind, angle_of, sizes_of
from panelcad.errors import UnreadableQuantity, UnusableInput
from panelcad.model.shape import Shape
from panelcad.units import LengthUnit

_FREE: Final = "free"


class ShapeEntry(QObject):
    """`edited` whenever a field says something else. A free contour keeps its shape and is only called so."""

    edited = Signal()

    def __init__(
        self,
        form: Form,
        unit: LengthUnit,
        shape: Shape,
        kinds: tuple[ShapeKind, ...] = PLAIN,
        word: str = "&Shape",
    ) -> None:
        super().__init__()
        self._form, self._unit = form, unit
        self._is_shown = True
        self._kinds = {kind.key: kind for kind in kinds}
        self._free: Shape | None = None
        self.kind = ChoiceBox()
        self.kind.setAccessibleName(word.replace("&", ""))
        for kind in kinds:
            self.kind.addItem(kind.title, kind.key)
        form.row(word, self.kind)
        self.sizes = tuple(LengthEntry("Size", 1.0, unit) for _ in range(3))
        self._labels = tuple(QLabel() for _ in self.sizes)
        for label, entry in zip(self._labels, self.sizes, strict=True):
            label.setProperty("role", "faint")
            form.label_row(label, entry)
            entry.edited.connect(self.edited)
        self.angle = AngleEntry("Angle", angle_of(shape))
        self._angle_label = QLabel()
        self._angle_label.setProperty("role", "faint")
        form.label_row(self._angle_label, self.angle)
        self.angle.edited.connect(self.edited)
        self.kind.activated.connect(lambda _: self._take_kind())
        self.show_shape(shape)

    def show_shape(self, shape: Shape) -> None:
        """Begin with this shape; one that has no fields is offered as a free contour."""
        if shape.kind not in self._kinds:
            self._free = shape
            if self.kind.findData(_FREE) < 0:
                self.kind.addItem("Free contour", _FREE)
        self.kind.setCurrentIndex(self.kind.findData(shape.kind if shape.kind in self._kinds else _FREE))
        for entry, mm in zip(self.sizes, sizes_of(shape), strict=True):
            entry.show_mm(mm)
        self.angle.setText(f"{angle_of(shape):g}")
        self._name_sizes()

    def set_shown(self, *, is_shown: bool) -> None:
        """All of its rows, or none."""
        self._is_shown = is_shown
        self._form.set_row_shown(self.kind, is_shown=is_shown)
        self._name_sizes()

    def _take_kind(self) -> None:
        """Sizes of the shape before stay where they make the new one; others begin with such as do."""
        kind = self._kinds.get(str(self.kind.currentData()))
        if kind is not None:
            self._begin(kind)
        self._name_sizes()
        self.edited.emit()

    def _begin(self, kind: ShapeKind) -> None:
        try:
            if kind.angle or not self._makes_a_shape():
                for entry, mm in zip(self.sizes, kind.begin(self.sizes[0].mm, self.sizes[1].mm), strict=False):
                    entry.show_mm(mm)
        except UnreadableQuantity:
            return  # what somebody typed stays, marked as wrong

    def _makes_a_shape(self) -> bool:
        try:
            self.shape()
        except UnusableInput:
            return False
        return True

    def _name_sizes(self) -> None:
        """Only the sizes that the shape has are shown, each by its name."""
        key = str(self.kind.currentData())
        names = self._kinds[key].sizes if key in self._kinds else ()
        for i, (label, entry) in enumerate(zip(self._labels, self.sizes, strict=True)):
            is_there = i < len(names)
            self._form.set_row_shown(entry, is_shown=is_there and self._is_shown)
            if is_there:
                label.setText(f"{names[i]}, {self._unit.value}")
                entry.setAccessibleName(names[i])
        angle = self._kinds[key].angle if key in self._kinds else ""
        self._form.set_row_shown(self.angle, is_shown=bool(angle) and self._is_shown)
        self._angle_label.setText(f"{angle}, °")
        self.angle.setAccessibleName(angle)

    def shape(self) -> Shape:
        """The shape that the fields say. Raises `UnusableInput`."""
        key = str(self.kind.currentData())
        if key == _FREE and self._free is not None:
            return self._free
        kind = self._kinds[key]
        values = [entry.mm for entry in self.sizes[: len(kind.sizes)]]
        values += [self.angle.degrees] if kind.angle else []
        try:
            return kind.make(*values)
        except ValueError as error:
            expected = "sizes larger than 0 that fit together"
            raise UnusableInput(
                "", "", f"these sizes make no {kind.title[:1].lower()}{kind.title[1:]}", expected
            ) from error
