"""What belongs to a plate, standing in the aircraft as convex solids, each no smaller than the truth."""

import math
from collections.abc import Callable, Iterator
from itertools import chain
from typing import Final, NamedTuple

from panelcad.checks.nearness import turned
from panelcad.geometry.box_clearance import Beyond, Box, Solid
from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.kept import kept_row
from panelcad.model.layout import PlacedItem, PlateLayout
from panelcad.model.plate import Plate, Sway
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle, Volume
from panelcad.model.travel import Travel, Turn

_STEP: Final = 2.0
"""Degrees between the angles at which a turning part is looked at; what lies between is allowed for."""
_FAR: Final = 10_000.0
"""mm; how far behind a firewall it is forbidden to stand."""

Bounds = tuple[float, float, float, float]
Depth = tuple[float, float]


class Standing(NamedTuple):
    """A solid in the aircraft, and where on its plate it belongs."""

    id: str
    plate: str
    at: Point
    solid: Solid


def frame_of(plate: Plate) -> PlateFrame:
    """The plate's axes in the aircraft."""
    return PlateFrame(Spot(plate.frame.x, plate.frame.y, plate.frame.z), plate.frame.tilt, plate.frame.cant)


def behind(plate: PlateLayout) -> list[Standing]:
    """The bodies behind a plate, grown by its sway."""
    return _of_items("behind in the aircraft", plate, _bodies_behind)


def in_front(plate: PlateLayout) -> list[Standing]:
    """The bezels, knobs, levers over their travel and plugs in front of a plate, grown by its sway."""
    return _of_items("in front in the aircraft", plate, _parts_in_front)


def _of_items(
    purpose: str, plate: PlateLayout, parts: Callable[[PlacedItem], Iterator[tuple[Bounds, Depth]]]
) -> list[Standing]:
    owner = plate.plate

    def standings(item: PlacedItem) -> tuple[Standing, ...]:
        at = Point(item.placement.x, item.placement.y)
        return tuple(
            Standing(item.item.id, owner.id, at, _box(bounds, depth, owner, owner.sway))
            for bounds, depth in parts(item)
        )

    rows = kept_row((purpose, owner.id), plate.items, (owner.frame, owner.sway), standings)
    return list(chain.from_iterable(rows))


def _bodies_behind(item: PlacedItem) -> Iterator[tuple[Bounds, Depth]]:
    yield from ((body.footprint.bounds, (body.near, body.far)) for body in item.behind)


def _parts_in_front(item: PlacedItem) -> Iterator[tuple[Bounds, Depth]]:
    if item.bezel is not None and item.shows_bezel and item.cutout.bezel is not None:
        yield item.bezel.bounds, (-item.cutout.bezel.thickness, 0.0)
    for body, prism in zip(item.cutout.bodies, item.bodies, strict=True):
        if body.in_front:
            yield _over(body.travels, prism.footprint.bounds, (prism.near, prism.far), item.placement.rotation)


def obstacle(thing: Obstacle | KeepOut, plate: Plate) -> Standing:
    """A rib, a tube or a keep-out given in this plate's axes."""
    volume = thing.volume
    bounds, depth = _footprint(volume).bounds, (volume.near, volume.far)
    return Standing(thing.id, plate.id, Point(volume.x, volume.y), _box(bounds, depth, plate, None))


def moving(thing: MovingPart, plate: Plate) -> Standing:
    """A moving part over its whole travel and turn, given in this plate's axes."""
    volume = thing.volume
    bounds, depth = _over(thing.travels, _footprint(volume).bounds, (volume.near, volume.far))
    if thing.turn is not None:
        ways = thing.travels or (Travel(),)
        places = (Placement(x, y) for way in ways for x, y in ((0.0, 0.0), (way.dx, way.dy)))
        bounds = _around(_over_turn(place.contour(_footprint(volume)), thing.turn) for place in places)
    return Standing(thing.id, plate.id, Point(volume.x, volume.y), _box(bounds, depth, plate, None))


def depth_limit(limit: DepthLimit, plate: Plate) -> Standing:
    """All that lies beyond a firewall or a floor given in this plate's axes."""
    bounds = Placement(limit.x, limit.y, limit.rotation).contour(limit.shape.contour()).bounds
    plane = (limit.at_origin, limit.slope_x, limit.slope_y)
    return Standing(limit.id, plate.id, Point(limit.x, limit.y), Beyond(frame_of(plate), bounds, plane, _FAR))


def _footprint(volume: Volume) -> Contour:
    return Placement(volume.x, volume.y, volume.rotation).contour(volume.shape.contour())


def _over(travels: tuple[Travel, ...], bounds: Bounds, depth: Depth, rotation: float = 0.0) -> tuple[Bounds, Depth]:
    """A box's sides and depth over all its straight ways."""
    turn = Placement(rotation=rotation)
    ways = [Point(0.0, 0.0), *(turn.point(Point(way.dx, way.dy)) for way in travels)]
    dz = [0.0, *(way.dz for way in travels)]
    x1, y1, x2, y2 = bounds
    over = _around((x1 + x, y1 + y, x2 + x, y2 + y) for x, y in ways)
    return over, (depth[0] + min(dz), depth[1] + max(dz))


def _over_turn(contour: Contour, turn: Turn) -> Bounds:
    """The box around a contour at every angle; between two of the angles looked at nothing bulges out farther."""
    count = max(1, math.ceil((turn.most - turn.least) / _STEP))
    angles = [turn.least + (turn.most - turn.least) * i / count for i in range(count + 1)]
    x1, y1, x2, y2 = contour.bounds
    pivot = Point(turn.x, turn.y)
    reach = max(distance(pivot, Point(x, y)) for x in (x1, x2) for y in (y1, y2))
    bulge = reach * (1.0 - math.cos(math.radians((turn.most - turn.least) / count / 2)))
    x1, y1, x2, y2 = _around(turned(contour, turn, angle).bounds for angle in angles)
    return x1 - bulge, y1 - bulge, x2 + bulge, y2 + bulge


def _around(boxes: Iterator[Bounds]) -> Bounds:
    x1, y1, x2, y2 = zip(*boxes, strict=True)
    return min(x1), min(y1), max(x2), max(y2)


def _box(bounds: Bounds, depth: Depth, plate: Plate, sway: Sway | None) -> Box:
    x, y, z = (sway.x, sway.y, sway.z) if sway else (0.0, 0.0, 0.0)
    x1, y1, x2, y2 = bounds
    return Box(frame_of(plate), Spot(x1 - x, y1 - y, depth[0] - z), Spot(x2 + x, y2 + y, depth[1] + z))
