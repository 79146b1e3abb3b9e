"""Shapes, holes and sheets in a drawing's words, in the reader's unit."""

from collections.abc import Callable
from typing import Any, Final

from panelcad.drawing.directions import along, bearing, toward
from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.placement import Placement
from panelcad.model.hole import HoleForm, HoleKind
from panelcad.model.plate import Plate
from panelcad.model.shape import (
    ChamferedRectangle,
    Circle,
    FlattedCircle,
    KeyedCircle,
    KeyEnd,
    Outline,
    Rectangle,
    Shape,
    Slot,
    Trapezoid,
)
from panelcad.units import LengthUnit, format_angle, format_length, format_number

Number = Callable[[float], str]
_UPRIGHT: Final = Placement()


def shape_text(shape: Shape, unit: LengthUnit, at: Placement = _UPRIGHT) -> str:
    """Such as 'Ø3.125', '6.250 × 1.650 R0.060, 6.250 along Y', 'Ø12.00, key 3.00 wide, 1.00 deep toward −X'."""
    return _SHAPES[type(shape)](shape, lambda mm: format_number(mm, unit), at)


def hole_text(form: HoleForm, unit: LengthUnit, at: Placement = _UPRIGHT) -> str:
    """Such as 'Ø4.30', 'Ø4.30 countersunk 100° to Ø8.00 at the back', 'Ø2.85 tapped #6-32'."""

    def number(mm: float) -> str:
        return format_number(mm, unit)

    return f"Ø{number(form.diameter)}{_HOLES[form.kind](form, number, bearing(at, form.key_angle))}"


def contour_text(contour: Contour, unit: LengthUnit) -> str:
    """A circle's diameter, else what the contour measures over all."""
    x1, y1, x2, y2 = contour.bounds
    if isinstance(contour, Rounded) and contour.is_circle:
        return f"Ø{format_number(x2 - x1, unit)}"
    return f"{format_number(x2 - x1, unit)} × {format_number(y2 - y1, unit)}"


def sheet_text(plate: Plate, unit: LengthUnit) -> str:
    """Alloy and thickness."""
    return f"{plate.alloy}, {format_length(plate.thickness, unit)}"


def _lying(longer: str, at: Placement) -> str:
    """How a long thing lies where it does not lie along X."""
    way = bearing(at)
    return f", {longer} {along(way)}" if way % 180.0 else ""


def _rectangle(shape: Rectangle, number: Number, at: Placement) -> str:
    radius = f" R{number(shape.corner_radius)}" if shape.corner_radius else ""
    return f"{number(shape.width)} × {number(shape.height)}{radius}{_lying(number(shape.width), at)}"


def _slot(shape: Slot, number: Number, at: Placement) -> str:
    return f"{number(shape.length)} × {number(shape.width)} slot{_lying(number(shape.length), at)}"


def _keyed(shape: KeyedCircle, number: Number, at: Placement) -> str:
    ends = "round end" if shape.key_end is KeyEnd.ROUND else "square"
    return f"{_circle_and_key(shape, number, bearing(at))}, {ends}"


def _circle_and_key(shape: KeyedCircle, number: Number, way: float) -> str:
    return f"Ø{number(shape.diameter)}{_key_words(shape.key_width, shape.key_depth, number, way)}"


def _key_words(width: float, depth: float, number: Number, way: float) -> str:
    return f", key {number(width)} wide, {number(depth)} deep {toward(way)}"


def _flatted(shape: FlattedCircle, number: Number, at: Placement) -> str:
    return f"Ø{number(shape.diameter)}{_flat_words(shape.diameter, shape.flat_depth, number, bearing(at))}"


def _flat_words(diameter: float, depth: float, number: Number, way: float) -> str:
    return f", {number(diameter - depth)} across the flat, flat {toward(way)}"


def _chamfered(shape: ChamferedRectangle, number: Number, at: Placement) -> str:
    corners = f"corners {number(shape.chamfer)} × 45°"
    return f"{number(shape.width)} × {number(shape.height)}, {corners}{_lying(number(shape.width), at)}"


def _trapezoid(shape: Trapezoid, number: Number, at: Placement) -> str:
    sides = f"sides {format_angle(shape.side_angle)}, R{number(shape.corner_radius)}"
    wide = f"wider side {toward(bearing(at, 90.0))}"
    return f"{number(shape.width)} × {number(shape.height)} tapered, {sides}, {wide}"


def _outline(shape: Outline, number: Number, at: Placement) -> str:
    x1, y1, x2, y2 = at.contour(shape.contour()).bounds
    return f"{number(x2 - x1)} × {number(y2 - y1)} over all, contour below"


_SHAPES: Final[dict[type[Any], Callable[[Any, Number, Placement], str]]] = {
    Circle: lambda shape, number, _: f"Ø{number(shape.diameter)}",
    Rectangle: _rectangle,
    Slot: _slot,
    KeyedCircle: _keyed,
    FlattedCircle: _flatted,
    ChamferedRectangle: _chamfered,
    Trapezoid: _trapezoid,
    Outline: _outline,
}


def _countersunk(form: HoleForm, number: Number, _way: float) -> str:
    cone = form.countersink
    if cone is None:
        return ""
    return f" countersunk {format_angle(cone.angle)} to Ø{number(cone.diameter)} at the {cone.face.value}"


def _insert(form: HoleForm, _number: Number, _way: float) -> str:
    return f", threaded insert {form.thread}" if form.thread else ", threaded insert"


_HOLES: Final[dict[HoleKind, Callable[[HoleForm, Number, float], str]]] = {
    HoleKind.PLAIN: lambda _form, _number, _way: "",
    HoleKind.COUNTERSUNK: _countersunk,
    HoleKind.TAPPED: lambda form, _number, _way: f" tapped {form.thread}",
    HoleKind.NUTPLATE: lambda form, _number, _way: (
        f", nutplate {form.thread} behind" if form.thread else ", nutplate behind"
    ),
    HoleKind.INSERT: _insert,
    HoleKind.KEYED: lambda form, number, way: _key_words(form.key_width, form.key_depth, number, way),
    HoleKind.FLATTED: lambda form, number, way: _flat_words(form.diameter, form.key_depth, number, way),
}
