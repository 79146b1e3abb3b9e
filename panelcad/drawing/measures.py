"""What of a cut is measured: sizes in mm by the names an inspector would give them, and what is only looked at."""

from collections.abc import Callable, Iterator
from typing import Any, Final, NamedTuple

from panelcad.drawing.directions import along, bearing, toward
from panelcad.geometry.placement import Placement
from panelcad.model.hole import HoleForm, HoleKind
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
from panelcad.units import format_angle


class Measure(NamedTuple):
    """A size, or where there is none the words of what is to be seen."""

    what: str
    value: float | None
    words: str = ""


def shape_measures(shape: Shape, at: Placement) -> Iterator[Measure]:
    """The sizes of an opening that stands at this place of the plate."""
    return _SHAPES[type(shape)](shape, at)


def hole_measures(form: HoleForm, at: Placement) -> Iterator[Measure]:
    """The sizes of a hole; its countersink is measured with it."""
    if form.kind is HoleKind.KEYED:
        yield from _key(form.diameter, form.key_width, form.key_depth, bearing(at, form.key_angle))
    elif form.kind is HoleKind.FLATTED:
        yield from _flat(form.diameter, form.key_depth, bearing(at, form.key_angle))
    else:
        yield Measure("diameter", form.diameter)
    if form.countersink is not None:
        yield Measure("countersink diameter", form.countersink.diameter)


def is_about_a_circle(shape: Shape | None, form: HoleForm | None) -> bool:
    """Whether its place is the centre of a circle that has a key or a flat."""
    if form is not None:
        return form.kind in {HoleKind.KEYED, HoleKind.FLATTED}
    return isinstance(shape, KeyedCircle | FlattedCircle)


def _sides(width: float, height: float, at: Placement, corner: float = 0.0) -> Iterator[Measure]:
    way = bearing(at)
    yield Measure(f"width {along(way)}", width)
    yield Measure(f"height {along(way + 90.0)}", height)
    if corner:
        yield Measure("corner radius", corner)


def _key(diameter: float, width: float, depth: float, way: float) -> Iterator[Measure]:
    yield Measure("circle diameter", diameter)
    yield Measure("key width", width)
    yield Measure("key depth beyond the circle", depth)
    yield Measure("key", None, toward(way))


def _flat(diameter: float, depth: float, way: float) -> Iterator[Measure]:
    yield Measure("circle diameter", diameter)
    yield Measure("across the flat", diameter - depth)
    yield Measure("flat", None, toward(way))


def _circle(shape: Circle, _at: Placement) -> Iterator[Measure]:
    yield Measure("diameter", shape.diameter)


def _rectangle(shape: Rectangle, at: Placement) -> Iterator[Measure]:
    return _sides(shape.width, shape.height, at, shape.corner_radius)


def _slot(shape: Slot, at: Placement) -> Iterator[Measure]:
    yield Measure(f"length {along(bearing(at))}", shape.length)
    yield Measure("width, ends round", shape.width)


def _keyed(shape: KeyedCircle, at: Placement) -> Iterator[Measure]:
    yield from _key(shape.diameter, shape.key_width, shape.key_depth, bearing(at))
    if shape.key_end is KeyEnd.ROUND:
        yield Measure("key's end radius", shape.key_width / 2)
    else:
        yield Measure("key's corners", None, "square")


def _flatted(shape: FlattedCircle, at: Placement) -> Iterator[Measure]:
    return _flat(shape.diameter, shape.flat_depth, bearing(at))


def _chamfered(shape: ChamferedRectangle, at: Placement) -> Iterator[Measure]:
    yield from _sides(shape.width, shape.height, at, shape.corner_radius)
    yield Measure("chamfer at 45°", shape.chamfer)


def _trapezoid(shape: Trapezoid, at: Placement) -> Iterator[Measure]:
    yield from _sides(shape.width, shape.height, at, shape.corner_radius)
    yield Measure("sides", None, f"lean in by {format_angle(shape.side_angle)}")
    yield Measure("wider side", None, toward(bearing(at, 90.0)))


def _outline(shape: Outline, at: Placement) -> Iterator[Measure]:
    x1, y1, x2, y2 = at.contour(shape.contour()).bounds
    yield Measure("width over all along X", x2 - x1)
    yield Measure("height over all along Y", y2 - y1)


_SHAPES: Final[dict[type[Any], Callable[[Any, Placement], Iterator[Measure]]]] = {
    Circle: _circle,
    Rectangle: _rectangle,
    Slot: _slot,
    KeyedCircle: _keyed,
    FlattedCircle: _flatted,
    ChamferedRectangle: _chamfered,
    Trapezoid: _trapezoid,
    Outline: _outline,
}
