"""Where dimensions and notes hold on to, and what a dimension measures, in mm of its plate's axes."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.errors import UnknownName
from panelcad.geometry.point import Point, distance
from panelcad.model.layout import PlateLayout
from panelcad.model.markup import Along, Dimension, Hold, Hook

Bounds = tuple[float, float, float, float]
_AT: Final[dict[Hold, Callable[[Bounds, Point], Point]]] = {
    Hold.LEFT: lambda box, origin: Point(box[0], origin.y),
    Hold.RIGHT: lambda box, origin: Point(box[2], origin.y),
    Hold.BOTTOM: lambda box, origin: Point(origin.x, box[1]),
    Hold.TOP: lambda box, origin: Point(origin.x, box[3]),
    Hold.CENTRE: lambda _, origin: origin,
}


@dataclass(frozen=True)
class Measured:
    """The two points of a dimension and the distance it gives, in mm."""

    start: Point
    end: Point
    value: float


def measured(plate: PlateLayout, dimension: Dimension) -> Measured:
    """What a dimension gives as its parts stand now. Raises `UnknownName`."""
    start, end = hook_point(plate, dimension.start), hook_point(plate, dimension.end)
    return Measured(start, end, _distance(start, end, dimension.along))


def off_line(found: Measured, along: Along) -> tuple[float, float]:
    """The unit vector along which a dimension line stands off from what it measures."""
    if along is Along.ACROSS:
        return 0.0, 1.0
    span = distance(found.start, found.end)
    if along is Along.UP or span == 0.0:
        return (1.0, 0.0) if along is Along.UP else (0.0, 1.0)
    return (found.start.y - found.end.y) / span, (found.end.x - found.start.x) / span


def line_ends(found: Measured, dimension: Dimension) -> tuple[Point, Point]:
    """The ends of the dimension line, `offset` away from the first point."""
    x, y = off_line(found, dimension.along)
    start = found.start.moved(x * dimension.offset, y * dimension.offset)
    if dimension.along is Along.ACROSS:
        return start, Point(found.end.x, start.y)
    if dimension.along is Along.UP:
        return start, Point(start.x, found.end.y)
    return start, found.end.moved(x * dimension.offset, y * dimension.offset)


def hook_point(plate: PlateLayout, hook: Hook) -> Point:
    """The point a hook holds. Raises `UnknownName` for a part that is not on this plate."""
    if hook.part is None:
        return Point(hook.x, hook.y)
    box, origin = extent(plate, hook.part)
    return _AT[hook.hold](box, origin).moved(hook.x, hook.y)


def extent(plate: PlateLayout, part_id: str) -> tuple[Bounds, Point]:
    """A part's box and its own origin: an item's bezel, or else its cut; a plate's outline about its middle."""
    if part_id == plate.plate.id:
        return _about_middle(plate.outline.bounds)
    for item in plate.items:
        if item.item.id == part_id:
            shown = [item.bezel] if item.bezel else [body.footprint for body in item.bodies]
            return _around([c.bounds for c in shown], Point(item.placement.x, item.placement.y))
    for cut in plate.cuts:
        if cut.cut.id == part_id:
            boxes = [f.contour.bounds for f in cut.openings or cut.features]
            return _around(boxes, Point(cut.placement.x, cut.placement.y))
    return _small_part(plate, part_id)


def _small_part(plate: PlateLayout, part_id: str) -> tuple[Bounds, Point]:
    for screw in plate.attach:
        if screw.owner == part_id:
            return screw.contour.bounds, screw.centre
    for engraving in plate.plate.engravings:
        if engraving.id == part_id:
            spot = Point(engraving.x, engraving.y)
            return (*spot, *spot), spot
    raise UnknownName("part of this plate", part_id, tuple(cut.cut.id for cut in plate.cuts))


def _around(boxes: list[Bounds], origin: Point) -> tuple[Bounds, Point]:
    if not boxes:
        return (*origin, *origin), origin
    lows = min(box[0] for box in boxes), min(box[1] for box in boxes)
    return (*lows, max(box[2] for box in boxes), max(box[3] for box in boxes)), origin


def _about_middle(box: Bounds) -> tuple[Bounds, Point]:
    return box, Point((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _distance(start: Point, end: Point, along: Along) -> float:
    if along is Along.ACROSS:
        return abs(end.x - start.x)
    return abs(end.y - start.y) if along is Along.UP else distance(start, end)
