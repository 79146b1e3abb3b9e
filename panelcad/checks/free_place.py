"""Where something new finds a free place on its plate: in front, and behind among bodies, obstacles and depth limits.

Places are tried from the wanted one outwards. Boxes tell at once what is covered from the front; what is left is judged
by the rules themselves, so that a place that is called free is one of which they find nothing.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from enum import IntEnum
from typing import Final

from panelcad.checks.bench import Bench
from panelcad.checks.moved import moved
from panelcad.checks.parts import Layer
from panelcad.checks.registry import EachPair, Loaded, load_rules
from panelcad.checks.run import setting_of
from panelcad.checks.wording import sentence
from panelcad.geometry.boxes import Box, box_around
from panelcad.geometry.point import Point
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.surroundings import DepthLimit, MovingPart, Obstacle, Surroundings

_RINGS: Final = 12
_STEP: Final = 25.4
"""mm between the places that are tried."""
_MOST_JUDGED: Final = 120
"""Places that are judged by the rules; those that are covered from the front are not counted."""
_BEHIND: Final = frozenset({Layer.BEHIND, Layer.BACKS, Layer.OBSTACLES, Layer.MOVING, Layer.DEPTH_LIMITS})


class Freedom(IntEnum):
    """How free a place is, the best first."""

    FREE = 0
    WARNED = 1
    """No error is found there, but a warning."""
    FRONT_ONLY = 2
    """All errors found there are of what is behind."""
    NONE = 3


@dataclass(frozen=True)
class FreePlace:
    """The place in mm, how free it is, and the gravest that the rules find there."""

    at: Point
    freedom: Freedom
    finding: Finding | None = None

    def words(self, laid: Layout, plate_id: str, ids: Collection[str]) -> str:
        """How far the place is free, in the project's unit; '' where nothing is found there and all is known."""
        if self.freedom is Freedom.NONE:
            return "No free place was found near."
        if self.finding is not None:
            said = sentence(self.finding, laid.project, laid.option)
            return f"Free in front only. {said}" if self.freedom is Freedom.FRONT_ONLY else f"Nearly free. {said}"
        mine = (each for each in laid.plate(plate_id).items if each.item.id in ids)
        if any(each.behind for each in mine) and not _knows_behind(laid.project.surroundings, plate_id):
            return "Free in front and of other cases; what stands behind this plate is not entered."
        return ""


def free_place(laid: Layout, plate_id: str, ids: Collection[str], wanted: Point) -> FreePlace:
    """The freest place near the wanted one for these things, that were put down about the datum; the nearer of equals.

    The wanted one itself, not free, where every place is covered from the front. Raises `UnknownName`.
    """
    plate, rules = laid.plate(plate_id), load_rules()
    there = _without(plate, ids)
    mine = _boxes(plate, ids)
    best = FreePlace(wanted, Freedom.NONE)
    if not mine:
        return replace(best, freedom=Freedom.FREE)
    bench = Bench(setting_of(there, laid), rules.rules)
    bench.lay(there)
    taken, sheet, whole = _boxes(there), plate.outline.bounds, box_around(mine)
    open_places = (at for at in _outward(wanted) if _is_open(whole, at, taken, sheet))
    for _, at in zip(range(_MOST_JUDGED), open_places, strict=False):
        judged = _judged(bench, moved(plate, dict.fromkeys(ids, (at.x, at.y))), rules, at)
        best = min(best, judged, key=lambda place: place.freedom)
        if best.freedom is Freedom.FREE:
            break
    return best


def _judged(bench: Bench, plate: PlateLayout, rules: Loaded, at: Point) -> FreePlace:
    found = [verdict for verdict in bench.verdicts_if(plate) if isinstance(verdict, Finding)]
    errors = [finding for finding in found if finding.severity is Severity.ERROR]
    warnings = [finding for finding in found if finding.severity is Severity.WARNING]
    if not errors:
        freedom = Freedom.WARNED if warnings else Freedom.FREE
        return FreePlace(at, freedom, next(iter(warnings), None))
    behind = {rule.id for rule in rules.rules if isinstance(rule.looks_at, EachPair) and _looks_behind(rule.looks_at)}
    freedom = Freedom.FRONT_ONLY if all(finding.rule in behind for finding in errors) else Freedom.NONE
    return FreePlace(at, freedom, errors[0])


def _knows_behind(around: Surroundings, plate_id: str) -> bool:
    behind: tuple[Obstacle | MovingPart | DepthLimit, ...] = (
        *around.obstacles,
        *around.moving_parts,
        *around.depth_limits,
    )
    return any(thing.plate == plate_id for thing in behind)


def _looks_behind(look: EachPair) -> bool:
    return look.a in _BEHIND and look.b in _BEHIND


def _without(plate: PlateLayout, ids: Collection[str]) -> PlateLayout:
    return replace(
        plate,
        cuts=tuple(each for each in plate.cuts if each.cut.id not in ids),
        items=tuple(each for each in plate.items if each.item.id not in ids),
    )


def _boxes(plate: PlateLayout, ids: Collection[str] | None = None) -> list[Box]:
    """Around what these things, or all of them, take of the front."""
    faces = [each.face.bounds for each in plate.items if ids is None or each.item.id in ids]
    holes = [each.contour.bounds for each in plate.features if ids is None or each.owner in ids]
    return faces + holes


def _outward(middle: Point) -> Iterator[Point]:
    """The middle, then places on squares around it, nearer ones first."""
    yield middle
    for ring in range(1, _RINGS + 1):
        spots = [(i, j) for i in range(-ring, ring + 1) for j in range(-ring, ring + 1) if max(abs(i), abs(j)) == ring]
        for i, j in sorted(spots, key=lambda spot: spot[0] ** 2 + spot[1] ** 2):
            yield Point(middle.x + i * _STEP, middle.y + j * _STEP)


def _is_open(mine: Box, at: Point, others: list[Box], sheet: Box) -> bool:
    x1, y1, x2, y2 = mine
    box = (x1 + at.x, y1 + at.y, x2 + at.x, y2 + at.y)
    on_sheet = box[0] >= sheet[0] and box[1] >= sheet[1] and box[2] <= sheet[2] and box[3] <= sheet[3]
    return on_sheet and not any(_overlap(box, other) for other in others)


def _overlap(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
