"""The shapes that are given in figures, and what people measure of each."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.model.shape import Circle, FlattedCircle, Rectangle, Shape, Slot, Trapezoid


@dataclass(frozen=True)
class ShapeKind:
    """`sizes` are what people measure; `make` takes them in that order, in mm, and then the angle in degrees, if any.

    `begin` makes sizes that fit the shape from those of another one.
    """

    key: str
    title: str
    sizes: tuple[str, ...]
    make: Callable[..., Shape]
    begin: Callable[[float, float], tuple[float, ...]] = lambda width, height: (width, height, 0.0)
    angle: str = ""
    """What people call its angle; '' where it has none."""


RECTANGLE: Final = ShapeKind(
    "rectangle",
    "Rectangle",
    ("Width", "Height", "Corner radius"),
    lambda width, height, radius: Rectangle(width=width, height=height, corner_radius=radius),
)
CIRCLE: Final = ShapeKind("circle", "Circle", ("Diameter",), lambda diameter: Circle(diameter=diameter))
SLOT: Final = ShapeKind(
    "slot",
    "Slot",
    ("Length", "Width"),
    lambda length, width: Slot(length=length, width=width),
    lambda width, height: (max(width, height), min(width, height)),
)
FLATTED: Final = ShapeKind(
    "flatted circle",
    "Circle with a flat",
    ("Diameter", "Across the flat"),
    lambda diameter, across: FlattedCircle(diameter=diameter, flat_depth=diameter - across),
    lambda width, _: (width, 0.9 * width),
)
SLANTED: Final = ShapeKind(
    "trapezoid",
    "Slanted D of a connector",
    ("Width, longer side", "Height", "Corner radius"),
    lambda width, height, radius, angle: Trapezoid(width=width, height=height, corner_radius=radius, side_angle=angle),
    lambda width, height: (width, min(height, width / 2), min(height, width / 2) / 6),
    angle="Side angle",
)
PLAIN: Final = (RECTANGLE, CIRCLE, SLOT)
CUTTABLE: Final = (*PLAIN, FLATTED)
DESCRIBABLE: Final = (*CUTTABLE, SLANTED)
_CONNECTOR_ANGLE: Final = 10.0
"""Degrees by which the sides of a D-subminiature connector lean; sources in cutouts/d-subminiature.toml."""


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
        case Trapezoid():
            return shape.width, shape.height, shape.corner_radius
    x1, y1, x2, y2 = shape.contour().bounds
    return x2 - x1, y2 - y1, 0.0


def angle_of(shape: Shape) -> float:
    """In degrees, to begin with, whatever the shape."""
    return shape.side_angle if isinstance(shape, Trapezoid) else _CONNECTOR_ANGLE
