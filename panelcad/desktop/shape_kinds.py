"""The shapes that are given in figures, and what people measure of each."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.model.shape import Circle, FlattedCircle, Rectangle, Shape, Slot


@dataclass(frozen=True)
class ShapeKind:
    """`sizes` are what people measure; `make` takes them in that order, `measure` gives them, all in mm."""

    key: str
    title: str
    sizes: tuple[str, ...]
    make: Callable[..., Shape]


RECTANGLE: Final = ShapeKind(
    "rectangle",
    "Rectangle",
    ("Width", "Height", "Corner radius"),
    lambda width, height, radius: Rectangle(width=width, height=height, corner_radius=radius),
)
CIRCLE: Final = ShapeKind("circle", "Circle", ("Diameter",), lambda diameter: Circle(diameter=diameter))
SLOT: Final = ShapeKind("slot", "Slot", ("Length", "Width"), lambda length, width: Slot(length=length, width=width))
D_SHAPE: Final = ShapeKind(
    "flatted circle",
    "D-shape",
    ("Diameter", "Across the flat"),
    lambda diameter, across: FlattedCircle(diameter=diameter, flat_depth=diameter - across),
)
PLAIN: Final = (RECTANGLE, CIRCLE, SLOT)
CUTTABLE: Final = (*PLAIN, D_SHAPE)


def sizes_of(shape: Shape) -> tuple[float, float, float]:
    """Three sizes in mm to begin with, whatever the shape."""
    match shape:
        case Rectangle():
            return shape.width, shape.height, shape.corner_radius
        case Circle():
            return shape.diameter, shape.diameter, 0.0
        case Slot():
            return shape.length, shape.width, 0.0
        case FlattedCircle():
            return shape.diameter, shape.diameter - shape.flat_depth, 0.0
    x1, y1, x2, y2 = shape.contour().bounds
    return x2 - x1, y2 - y1, 0.0
