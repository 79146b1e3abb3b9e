"""Shapes, holes and sheets in a drawing's words, in the reader's unit."""

from collections.abc import Callable
from typing import Any, Final

from panelcad.model.hole import HoleForm, HoleKind
from panelcad.model.plate import Plate
from panelcad.model.shape import (
    ChamferedRectangle,
    Circle,
    FlattedCircle,
    KeyedCircle,
    Outline,
    Rectangle,
    Shape,
    Slot,
    Trapezoid,
)
from panelcad.units import LengthUnit, format_angle, format_length, format_number

Number = Callable[[float], str]


def shape_text(shape: Shape, unit: LengthUnit) -> str:
    """Such as 'Ø3.125', '6.250 × 1.650 R0.060', '20.00 × 5.00 slot'."""
    return _SHAPES[type(shape)](shape, lambda mm: format_number(mm, unit))


def hole_text(form: HoleForm, unit: LengthUnit) -> str:
    """Such as 'Ø4.30', 'Ø4.30 countersunk 100° to Ø8.00 at the back', 'Ø2.85 tapped #6-32'."""

    def number(mm: float) -> str:
        return format_number(mm, unit)

    return f"Ø{number(form.diameter)}{_HOLES[form.kind](form, number)}"


def sheet_text(plate: Plate, unit: LengthUnit) -> str:
    """Alloy and thickness."""
    return f"{plate.alloy}, {format_length(plate.thickness, unit)}"


def turned_text(degrees: float) -> str:
    """' turned 45°' where it matters, else nothing."""
    return f", turned {format_angle(degrees)}" if round(degrees % 180.0, 3) else ""


def _rectangle(shape: Rectangle, number: Number) -> str:
    radius = f" R{number(shape.corner_radius)}" if shape.corner_radius else ""
    return f"{number(shape.width)} × {number(shape.height)}{radius}"


def _keyed(shape: KeyedCircle, number: Number) -> str:
    return f"Ø{number(shape.diameter)}, key {number(shape.key_width)} wide, {number(shape.key_depth)} deep"


def _trapezoid(shape: Trapezoid, number: Number) -> str:
    sides = f"sides {format_angle(shape.side_angle)}, R{number(shape.corner_radius)}"
    return f"{number(shape.width)} × {number(shape.height)} tapered, {sides}"


def _outline(shape: Outline, number: Number) -> str:
    x1, y1, x2, y2 = shape.contour().bounds
    return f"{number(x2 - x1)} × {number(y2 - y1)} over all, contour as in the cutting file"


_SHAPES: Final[dict[type[Any], Callable[[Any, Number], str]]] = {
    Circle: lambda shape, number: f"Ø{number(shape.diameter)}",
    Rectangle: _rectangle,
    Slot: lambda shape, number: f"{number(shape.length)} × {number(shape.width)} slot",
    KeyedCircle: _keyed,
    FlattedCircle: lambda shape, number: f"Ø{number(shape.diameter)}, flat {number(shape.flat_depth)} deep",
    ChamferedRectangle: lambda s, number: f"{number(s.width)} × {number(s.height)}, corners {number(s.chamfer)} × 45°",
    Trapezoid: _trapezoid,
    Outline: _outline,
}


def _countersunk(form: HoleForm, number: Number) -> str:
    cone = form.countersink
    if cone is None:
        return ""
    return f" countersunk {format_angle(cone.angle)} to Ø{number(cone.diameter)} at the {cone.face.value}"


def _keyed_hole(form: HoleForm, number: Number) -> str:
    return f", key {number(form.key_width)} wide, {number(form.key_depth)} deep"


_HOLES: Final[dict[HoleKind, Callable[[HoleForm, Number], str]]] = {
    HoleKind.PLAIN: lambda _form, _number: "",
    HoleKind.COUNTERSUNK: _countersunk,
    HoleKind.TAPPED: lambda form, _number: f" tapped {form.thread}",
    HoleKind.NUTPLATE: lambda _form, _number: ", nutplate behind",
    HoleKind.INSERT: lambda form, _number: f", threaded insert {form.thread}" if form.thread else ", threaded insert",
    HoleKind.KEYED: _keyed_hole,
    HoleKind.FLATTED: lambda form, number: f", flat {number(form.key_depth)} deep",
}
