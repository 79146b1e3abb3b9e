"""Where a straight line across the plane runs inside a contour."""

from itertools import pairwise
from typing import Final, NamedTuple

from panelcad.geometry.across import Across
from panelcad.geometry.contour import Contour
from panelcad.geometry.crossing import crossings
from panelcad.geometry.gap import contains
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Line

_LEAST: Final = 1e-6


class Interval(NamedTuple):
    low: float
    high: float


def point_on(across: Across, at: float, along: float) -> Point:
    """The point of the line `across` through `at`, `along` mm up or right."""
    return Point(at, along) if across is Across.VERTICAL else Point(along, at)


def chords(contour: Contour, across: Across, at: float) -> list[Interval]:
    """The stretches of the line that lie inside the contour, in mm along the line, in rising order."""
    x1, y1, x2, y2 = contour.bounds
    first, low, last, high = (x1, y1, x2, y2) if across is Across.VERTICAL else (y1, x1, y2, x2)
    if not first < at < last:
        return []
    line = Line(point_on(across, at, low - 1.0), point_on(across, at, high + 1.0))
    found = sorted(_along(across, hit) for segment in contour.segments for hit in crossings(line, segment))
    return _joined(
        [Interval(a, b) for a, b in pairwise(found) if b - a > _LEAST and _inside(contour, across, at, a, b)]
    )


def without(stretches: list[Interval], holes: list[Interval]) -> list[Interval]:
    """The stretches with all that lies in `holes` taken out of them."""
    for hole in holes:
        stretches = [piece for stretch in stretches for piece in _cut(stretch, hole)]
    return stretches


def _cut(stretch: Interval, hole: Interval) -> list[Interval]:
    if hole.high <= stretch.low or hole.low >= stretch.high:
        return [stretch]
    pieces = (Interval(stretch.low, hole.low), Interval(hole.high, stretch.high))
    return [piece for piece in pieces if piece.high - piece.low > _LEAST]


def _along(across: Across, point: Point) -> float:
    return point.y if across is Across.VERTICAL else point.x


def _inside(contour: Contour, across: Across, at: float, a: float, b: float) -> bool:
    return contains(contour, point_on(across, at, (a + b) / 2))


def _joined(intervals: list[Interval]) -> list[Interval]:
    """Stretches that meet become one."""
    joined: list[Interval] = []
    for interval in intervals:
        if joined and interval.low - joined[-1].high <= _LEAST:
            joined[-1] = Interval(joined[-1].low, interval.high)
        else:
            joined.append(interval)
    return joined
