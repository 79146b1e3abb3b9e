"""Rows of a dialog that say what shape a thing has, how large it is and where it stands."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox, QLabel

from panelcad.desktop.dialogs.edit_dialog import LengthEntry
from panelcad.desktop.panes.form import Form
from panelcad.editing.outline import outline_of
from panelcad.errors import UnusableInput
from panelcad.geometry.point import Point
from panelcad.model.shape import Circle, Outline, Rectangle, Shape, Slot
from panelcad.units import LengthUnit

_KINDS: Final = (("rectangle", "Rectangle"), ("circle", "Circle"), ("slot", "Slot"))
_SIZES: Final = {
    "rectangle": ("Width", "Height", "Corner radius"),
    "circle": ("Diameter",),
    "slot": ("Length", "Width"),
    "outline": (),
}
_MAKE: Final[dict[str, Callable[..., Shape]]] = {
    "rectangle": lambda width, height, radius: Rectangle(width=width, height=height, corner_radius=radius),
    "circle": lambda diameter: Circle(diameter=diameter),
    "slot": lambda length, width: Slot(length=length, width=width),
}
"""Each kind from its sizes in mm, in the order of `_SIZES`."""


class ShapeEntry(QObject):
    """`edited` whenever a field says something else. A free contour keeps its shape and is only called so."""

    edited = Signal()

    def __init__(self, form: Form, unit: LengthUnit, shape: Shape) -> None:
        super().__init__()
        self._kept = shape if shape.kind not in _MAKE else None
        self.kind = QComboBox()
        self.kind.setAccessibleName("Shape")
        if self._kept is not None:
            self.kind.addItem("Free contour", "outline")
        for key, title in _KINDS:
            self.kind.addItem(title, key)
        self.kind.setCurrentIndex(self.kind.findData(shape.kind if self._kept is None else "outline"))
        form.row("&Shape", self.kind)
        self.sizes = tuple(LengthEntry("Size", mm, unit) for mm in _sizes_of(shape))
        self._labels = tuple(QLabel() for _ in self.sizes)
        for label, entry in zip(self._labels, self.sizes, strict=True):
            label.setProperty("role", "faint")
            form.label_row(label, entry)
            entry.edited.connect(self.edited)
        self._unit = unit
        self.kind.activated.connect(lambda _: self._take_kind())
        self._name_sizes()

    def _take_kind(self) -> None:
        self._name_sizes()
        self.edited.emit()

    def _name_sizes(self) -> None:
        """Only the sizes that the shape has are shown, each by its name."""
        names = _SIZES[self.kind.currentData()]
        for i, (label, entry) in enumerate(zip(self._labels, self.sizes, strict=True)):
            is_there = i < len(names)
            label.setVisible(is_there)
            entry.setVisible(is_there)
            if is_there:
                label.setText(f"{names[i]}, {self._unit.value}")
                entry.setAccessibleName(names[i])

    def shape(self) -> Shape:
        """The shape that the fields say. Raises `UnusableInput`."""
        kind = self.kind.currentData()
        if kind == "outline" and self._kept is not None:
            return self._kept
        values = [entry.mm for entry in self.sizes[: len(_SIZES[kind])]]
        try:
            return _MAKE[kind](*values)
        except ValueError as error:
            raise UnusableInput("", "", "these sizes make no shape", "sizes larger than 0 that fit together") from error


def _sizes_of(shape: Shape) -> tuple[float, float, float]:
    """Three sizes in mm to begin with, whatever the shape."""
    match shape:
        case Rectangle():
            return shape.width, shape.height, shape.corner_radius
        case Circle():
            return shape.diameter, shape.diameter, 0.0
        case Slot():
            return shape.length, shape.width, 0.0
    x1, y1, x2, y2 = shape.contour().bounds
    return x2 - x1, y2 - y1, 0.0


def centred(shape: Shape) -> tuple[Outline, Point]:
    """A shape drawn anywhere as an outline about its own middle, and where that middle is."""
    outline = outline_of(shape)
    x1, y1, x2, y2 = outline.contour().bounds
    middle = Point((x1 + x2) / 2, (y1 + y2) / 2)
    corners = tuple(c.revised(x=c.x - middle.x, y=c.y - middle.y) for c in outline.corners)
    return Outline(corners=corners), middle
