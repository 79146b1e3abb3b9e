"""How near the bodies behind a plate come to each other and to what stands around, in mm.

Two bodies count where they share some depth; their clearance is then the gap of their footprints. A depth limit counts
at the corners of a body's box, on the safe side.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.numbering import number_key, numbering
from panelcad.drawing.views.around import Limit, Space, depth_limits, moving_parts, obstacles
from panelcad.geometry.gap import gap
from panelcad.geometry.point import Point
from panelcad.model.layout import Layout, PlacedItem, PlateLayout, Prism
from panelcad.model.profile import Profile

FAR: Final = 20.0
"""What is farther apart than this is not listed."""


@dataclass(frozen=True)
class Clearance:
    """Between an item's body and a neighbour; `ends` are the two points it is measured between, where it is in plan."""

    item: str
    body: str
    neighbour: str
    """The id of an item, or of a thing around the plate."""
    distance: float
    required: float
    ends: tuple[Point, ...] = ()


@dataclass(frozen=True)
class _Solid:
    owner: str
    space: Prism | Space
    required: float


def clearances(laid: Layout, plate: PlateLayout) -> list[Clearance]:
    """For each item and each neighbour within reach its nearest clearance.

    First what has the least left over what is required; what is equal to a micrometre by the items' numbers.
    """
    profile = laid.project.profile
    around = list(_around(laid, plate.plate.id, profile))
    limits = depth_limits(laid, plate.plate.id)
    found: list[Clearance] = []
    for i, item in enumerate(plate.items):
        others = [
            _Solid(o.item.id, body, profile.body_clearance) for o in plate.items[i + 1 :] for body in _bodies(item, o)
        ]
        found.extend(_nearest(item, [*others, *around]))
        found.extend(_to_limits(item, limits, profile.depth_clearance))
    near = [each for each in found if each.distance <= FAR]
    numbers = numbering(laid).items
    return sorted(near, key=lambda each: (round(each.distance - each.required, 3), number_key(numbers[each.item])))


def _bodies(item: PlacedItem, other: PlacedItem) -> tuple[Prism, ...]:
    """A neighbour's bodies; none of one that shares the item's cut, for a stack stands close by design."""
    return () if item.item.cut is not None and item.item.cut == other.item.cut else other.behind


def _around(laid: Layout, plate_id: str, profile: Profile) -> Iterator[_Solid]:
    for space in obstacles(laid, plate_id):
        yield _Solid(space.owner, space, profile.obstacle_clearance)
    for places in moving_parts(laid, plate_id):
        yield from (_Solid(place.owner, place, profile.moving_clearance) for place in places)


def _nearest(item: PlacedItem, others: list[_Solid]) -> Iterator[Clearance]:
    best: dict[str, Clearance] = {}
    for body in item.behind:
        for other in others:
            if not _may_meet(body, other.space):
                continue
            apart = gap(body.footprint, other.space.footprint)
            known = best.get(other.owner)
            if known is None or apart.distance < known.distance:
                ends = (apart.a, apart.b)
                best[other.owner] = Clearance(
                    item.item.id, body.kind.value, other.owner, apart.distance, other.required, ends
                )
    yield from best.values()


def _may_meet(body: Prism, other: Prism | Space) -> bool:
    if body.far <= other.near or other.far <= body.near:
        return False
    a, b = body.footprint.bounds, other.footprint.bounds
    return a[0] < b[2] + FAR and b[0] < a[2] + FAR and a[1] < b[3] + FAR and b[1] < a[3] + FAR


def _to_limits(item: PlacedItem, limits: tuple[Limit, ...], required: float) -> Iterator[Clearance]:
    for limit in limits:
        left = [(_depth_left(body, limit), body.kind.value) for body in item.behind if _is_over(body, limit)]
        if left:
            distance, kind = min(left)
            yield Clearance(item.item.id, kind, limit.limit.id, distance, required)


def _is_over(body: Prism, limit: Limit) -> bool:
    a, b = body.footprint.bounds, limit.footprint.bounds
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _depth_left(body: Prism, limit: Limit) -> float:
    x1, y1, x2, y2 = body.footprint.bounds
    return min(limit.limit.depth_at(x, y) for x in (x1, x2) for y in (y1, y2)) - body.far
