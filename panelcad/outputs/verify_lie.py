"""How a file lies that is not where it should be: scaled, mirrored, turned by quarters, or shifted as a whole.

Only middles and sizes of the contours' boxes are looked at. For each way to scale, mirror and turn, the shift that most
contours of one size agree on is tried.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import Final

from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.outputs.verify_match import Boxed, count_same
from panelcad.units import MM_PER_INCH

_MIX_UPS: Final = (MM_PER_INCH, 1 / MM_PER_INCH, 1000.0, 1 / 1000.0)
"""Inches and millimetres taken for each other, and millimetres for metres or micrometres."""
_AS_NAMED: Final = 1e-4
"""A scale within this share of a mix-up's is that mix-up's."""
_LEAST_SCALE: Final = 2e-5
"""A scale nearer to 1 than this changes no place on a panel by more than verifying tells."""
_BIN: Final = 0.1
"""mm: sizes and shifts are gathered in bins of this width."""
_MOST_PAIRS: Final = 4000
_SHIFTS_TRIED: Final = 3
_ENOUGH: Final = 0.9
"""The share of contours that agree at which no further scale is tried."""


_STAYS: Final = Placement()


@dataclass(frozen=True)
class Lie:
    """What puts a file right: its lengths times `scale`, then `placement`."""

    scale: float = 1.0
    placement: Placement = _STAYS

    @property
    def was_scaled(self) -> float:
        """How many times too large the file is."""
        return 1 / self.scale

    @property
    def mirrored(self) -> str:
        """How the file is mirrored, in words; empty where it is not."""
        if not self.placement.mirrored:
            return ""
        return "mirrored top to bottom" if self.placement.rotation == 180.0 else "mirrored left to right"

    @property
    def turned(self) -> float:
        """Degrees by which the file is turned counter-clockwise, after it was mirrored."""
        if self.placement.mirrored:
            return 0.0 if self.placement.rotation in {0.0, 180.0} else self.placement.rotation
        return -self.placement.rotation % 360.0

    @property
    def shift(self) -> Point:
        """The way the file is shifted in mm, after it was mirrored and turned."""
        way = self.placement
        back = Placement(rotation=way.rotation if way.mirrored else -way.rotation, mirrored=way.mirrored)
        at = back.point(Point(way.x, way.y))
        return Point(-at.x, -at.y)


@dataclass(frozen=True)
class _Box:
    size: tuple[float, float]
    middle: Point


RIGHT: Final = Lie()
_TURNS: Final = tuple(
    Placement(rotation=turn, mirrored=mirrored)
    for mirrored, turn in (
        (False, 0.0),
        (True, 0.0),
        (True, 180.0),
        (False, 180.0),
        *product((False, True), (90.0, 270.0)),
    )
)


def best_lie(expected: Sequence[Boxed], found: Sequence[Boxed], back: Placement, tolerance: float) -> tuple[int, Lie]:
    """The plainest way to put a file right for which most contours agree, and how many do.

    `found` is in the file's axes, and `back` leads from them to those of what is `expected`.
    """
    best, same = RIGHT, 0
    for scale in _scales(expected, found):
        rescaled = [_placed(box, back, scale) for box in found]
        for way in _TURNS:
            boxes = [_placed(box, way) for box in rescaled]
            for shift in _likely_shifts(expected, boxes):
                agreeing = count_same(expected, [_placed(box, Placement(*shift)) for box in boxes], tolerance)
                if agreeing > same:
                    same, best = agreeing, Lie(scale, Placement(*shift, way.rotation, way.mirrored))
        if same >= _ENOUGH * len(expected):
            break
    return same, best


def _scales(expected: Sequence[Boxed], found: Sequence[Boxed]) -> Iterator[float]:
    """1, the usual mix-ups, and the ratio of the largest contours."""
    yield 1.0
    if not found or not expected:
        return
    ratio = _largest(expected) / _largest(found)
    named = next((scale for scale in _MIX_UPS if abs(ratio / scale - 1) < _AS_NAMED), None)
    if named is not None:
        yield named
    elif abs(ratio - 1) > _LEAST_SCALE:
        yield ratio
    yield from (scale for scale in _MIX_UPS if scale != named)


def _largest(boxes: Sequence[Boxed]) -> float:
    return max(math.hypot(*box.size) for box in boxes)


def _placed(box: Boxed, way: Placement, scale: float = 1.0) -> _Box:
    width, height = (side * scale for side in box.size)
    middle = way.point(Point(box.middle.x * scale, box.middle.y * scale))
    return _Box((height, width) if way.rotation % 180.0 else (width, height), middle)


def _likely_shifts(expected: Sequence[Boxed], found: Sequence[Boxed]) -> Iterator[Point]:
    """None, then the shifts that most pairs of contours of one size agree on."""
    yield Point(0.0, 0.0)
    bins: dict[tuple[int, int], list[Point]] = defaultdict(list)
    for way in _shifts(expected, found):
        bins[round(way.x / _BIN), round(way.y / _BIN)].append(way)
    votes = Counter({place: len(ways) for place, ways in bins.items()})
    for place, _ in votes.most_common(_SHIFTS_TRIED):
        ways = bins[place]
        yield Point(_middle(way.x for way in ways), _middle(way.y for way in ways))


def _shifts(expected: Sequence[Boxed], found: Sequence[Boxed]) -> Iterator[Point]:
    """From each contour found to each expected one of its size, the rarest sizes first; of many alike only some."""
    ours, theirs = _by_size(expected), _by_size(found)
    sizes = sorted(ours.keys() & theirs.keys(), key=lambda size: len(ours[size]) * len(theirs[size]))
    left = _MOST_PAIRS
    for size in sizes:
        step = -(-len(ours[size]) * len(theirs[size]) // left)
        some = theirs[size][::step]
        yield from (
            Point(one.middle.x - other.middle.x, one.middle.y - other.middle.y)
            for one, other in product(ours[size], some)
        )
        left -= len(ours[size]) * len(some)
        if left <= 0:
            return


def _by_size(boxes: Sequence[Boxed]) -> dict[tuple[int, int], list[Boxed]]:
    sizes: dict[tuple[int, int], list[Boxed]] = defaultdict(list)
    for box in boxes:
        sizes[round(box.size[0] / _BIN), round(box.size[1] / _BIN)].append(box)
    return sizes


def _middle(values: Iterable[float]) -> float:
    ordered = sorted(values)
    return ordered[len(ordered) // 2]
