"""What belongs to different plates, compared in the aircraft as convex boxes, on the safe side.

Bodies behind one plate against those behind another, and against the obstacles and moving parts that are given in
another plate's axes. A shock-mounted plate's boxes are grown by its sway.
"""

from collections.abc import Iterator
from itertools import combinations, permutations
from typing import NamedTuple

import numpy as np

from panelcad.checks.finding import Bound, is_short, short_of
from panelcad.checks.registry import TheWhole, rule
from panelcad.geometry.box_clearance import Box, clearance
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.kept import kept
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.plate import Plate, Sway
from panelcad.model.surroundings import MovingPart, Obstacle, Volume
from panelcad.model.travel import Travel


class _Standing(NamedTuple):
    """A box in the aircraft, and where on its plate it belongs."""

    id: str
    plate: str
    at: Point
    box: Box


@rule(
    "plates-apart",
    title="Cases of different plates",
    measures="gap between the boxes of bodies behind two plates, in the aircraft; never more than the truth",
    looks_at=TheWhole(),
    severities=(Severity.ERROR,),
    limits=("body_clearance",),
)
def plates_apart(laid: Layout) -> Iterator[Finding]:
    if len(laid.plates) < 2:
        return
    bound = Bound(laid.project.profile.body_clearance, Severity.ERROR, "body_clearance")
    for one, other in combinations([_of_plate(plate) for plate in laid.plates], 2):
        yield from _interfering("plates-apart", "Bodies of two plates interfere", one, other, bound)


@rule(
    "other-plates-obstacles",
    title="Cases against what stands behind another plate",
    measures="gap between the box of a body behind one plate and that of an obstacle, or of a moving part over its "
    "straight travel, in another plate's axes; never more than the truth",
    looks_at=TheWhole(),
    severities=(Severity.ERROR,),
    limits=("obstacle_clearance", "moving_clearance"),
)
def other_plates_obstacles(laid: Layout) -> Iterator[Finding]:
    profile, around = laid.project.profile, laid.project.surroundings
    fixed = Bound(profile.obstacle_clearance, Severity.ERROR, "obstacle_clearance")
    moving = Bound(profile.moving_clearance, Severity.ERROR, "moving_clearance")
    for plate, other in permutations(laid.plates, 2):
        bodies, theirs = _of_plate(plate), other.plate
        obstacles = [_of_obstacle(each, theirs) for each in around.obstacles if each.plate == theirs.id]
        movers = [_of_moving(each, theirs) for each in around.moving_parts if each.plate == theirs.id]
        rule_id = "other-plates-obstacles"
        yield from _interfering(rule_id, "Body meets an obstacle behind another plate", bodies, obstacles, fixed)
        problem = "Body is in the way of a part that moves behind another plate"
        yield from _interfering(rule_id, problem, bodies, movers, moving)


def _interfering(
    rule_id: str, problem: str, one: list[_Standing], other: list[_Standing], bound: Bound
) -> Iterator[Finding]:
    """The worst finding for each pair of things."""
    worst: dict[tuple[str, str], tuple[float, _Standing]] = {}
    for a, b in _near(one, other, bound.required):
        left = clearance(a.box, b.box)
        if is_short(left, bound.required) and left < worst.get((a.id, b.id), (left + 1.0, a))[0]:
            worst[a.id, b.id] = (left, a)
    for ids, (left, a) in worst.items():
        yield Finding(
            rule=rule_id,
            problem=problem,
            items=tuple(sorted(ids)),
            plate=a.plate,
            where=(a.at,),
            **short_of(left, bound),
        )


def _near(one: list[_Standing], other: list[_Standing], reach: float) -> Iterator[tuple[_Standing, _Standing]]:
    """Pairs whose upright boxes are within reach."""
    if not one or not other:
        return
    a, b = np.array([s.box.bounds for s in one])[:, None], np.array([s.box.bounds for s in other])[None]
    close = ((a[..., 0, :] - reach <= b[..., 1, :]) & (b[..., 0, :] - reach <= a[..., 1, :])).all(-1)
    for i, j in zip(*np.nonzero(close), strict=True):
        yield one[int(i)], other[int(j)]


def _of_plate(plate: PlateLayout) -> list[_Standing]:
    return [standing for item in plate.items for standing in _of_item(item, plate.plate)]


def _of_item(item: PlacedItem, plate: Plate) -> tuple[_Standing, ...]:
    def make() -> tuple[_Standing, ...]:
        at = Point(item.placement.x, item.placement.y)
        boxes = [_box(body.footprint.bounds, (body.near, body.far), plate, plate.sway) for body in item.behind]
        return tuple(_Standing(item.item.id, plate.id, at, box) for box in boxes)

    return kept("standing in the aircraft", (item, plate.frame, plate.sway, plate.id), make)


def _of_obstacle(obstacle: Obstacle, plate: Plate) -> _Standing:
    volume = obstacle.volume
    return _Standing(obstacle.id, plate.id, Point(volume.x, volume.y), _volume_box(volume, (), plate))


def _of_moving(moving: MovingPart, plate: Plate) -> _Standing:
    volume = moving.volume
    return _Standing(moving.id, plate.id, Point(volume.x, volume.y), _volume_box(volume, moving.travels, plate))


def _volume_box(volume: Volume, travels: tuple[Travel, ...], plate: Plate) -> Box:
    """The box of a volume and of all its straight travel, in its plate's axes."""
    x1, y1, x2, y2 = Placement(volume.x, volume.y, volume.rotation).contour(volume.shape.contour()).bounds
    dx, dy, dz = ([0.0, *(getattr(way, axis) for way in travels)] for axis in ("dx", "dy", "dz"))
    bounds = (x1 + min(dx), y1 + min(dy), x2 + max(dx), y2 + max(dy))
    return _box(bounds, (volume.near + min(dz), volume.far + max(dz)), plate, None)


def _box(bounds: tuple[float, float, float, float], depth: tuple[float, float], plate: Plate, sway: Sway | None) -> Box:
    frame = plate.frame
    axes = PlateFrame(Spot(frame.x, frame.y, frame.z), frame.tilt, frame.cant)
    x, y, z = (sway.x, sway.y, sway.z) if sway else (0.0, 0.0, 0.0)
    x1, y1, x2, y2 = bounds
    return Box(axes, Spot(x1 - x, y1 - y, depth[0] - z), Spot(x2 + x, y2 + y, depth[1] + z))
