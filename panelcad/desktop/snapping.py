"""Where a thing that is moved comes to stand, and what it was caught by. Lengths in mm; nothing of Qt.

Each axis is settled on its own: the nearest line within reach wins; between lines about as near, the one that means
more (a centre before an edge, an edge before an equal gap, everything before the grid).
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from itertools import pairwise
from typing import Final, NamedTuple

from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point

_AS_NEAR: Final = 0.35
"""Lines that differ by less than this share of the reach count as equally near."""


class Axis(Enum):
    """The axis along which a line is reckoned: X for upright lines, Y for level ones."""

    X = 0
    Y = 1


class Rank(Enum):
    """What a line means, the most meaningful first."""

    AXIS = 0
    CENTRE = 1
    EDGE = 2
    GAP = 3
    GRID = 4


@dataclass(frozen=True)
class Standing:
    """A thing that is there: its own origin and the box of its bezel and cut."""

    name: str
    centre: Point
    box: Bounds

    def span(self, axis: Axis) -> tuple[float, float]:
        return self.box[axis.value], self.box[axis.value + 2]


@dataclass(frozen=True)
class AxisLine:
    """A line of the panel itself: its middle, the datum, the pilot's centre line, a rack's edge."""

    axis: Axis
    at: float
    label: str


@dataclass(frozen=True)
class Caught:
    """One axis settled: how far to shift, by what, and the line to show."""

    shift: float
    at: float
    rank: Rank
    label: str
    other: Standing | None = None


@dataclass(frozen=True)
class Snap:
    """The corrected move in mm, and what caught it on each axis."""

    dx: float
    dy: float
    x: Caught | None = None
    y: Caught | None = None

    @property
    def words(self) -> str:
        """What it snapped to, for the status bar."""
        return "; ".join(caught.label for caught in (self.x, self.y) if caught is not None)


class _Mark(NamedTuple):
    """Where a centre or an edge of another thing is along an axis."""

    at: float
    other: Standing
    side: int = 0


@dataclass(frozen=True)
class Field:
    """Everything a thing can be caught by: the others, the panel's lines, and the grid's step (0 for none)."""

    others: tuple[Standing, ...] = ()
    lines: tuple[AxisLine, ...] = ()
    grid: float = 0.0

    @cached_property
    def _centres(self) -> tuple[list[_Mark], ...]:
        """Along each axis in rising order, so that a step of a drag looks only at what is near."""
        return tuple(_rising(_Mark(one.centre[i], one) for one in self.others) for i in (0, 1))

    @cached_property
    def _edges(self) -> tuple[list[_Mark], ...]:
        return tuple(
            _rising(_Mark(one.box[i + 2 * side], one, side) for one in self.others for side in (0, 1)) for i in (0, 1)
        )

    def centres_near(self, axis: Axis, at: float, reach: float) -> list[_Mark]:
        return _near(self._centres[axis.value], at, reach)

    def edges_near(self, axis: Axis, at: float, reach: float) -> list[_Mark]:
        return _near(self._edges[axis.value], at, reach)


def _rising(marks: Iterable[_Mark]) -> list[_Mark]:
    return sorted(marks, key=lambda mark: mark.at)


def _near(marks: list[_Mark], at: float, reach: float) -> list[_Mark]:
    first = bisect_left(marks, at - reach, key=lambda mark: mark.at)
    return marks[first : bisect_right(marks, at + reach, key=lambda mark: mark.at)]


def snap(moving: Standing, dx: float, dy: float, field: Field, reach: float) -> Snap:
    """The move of `moving` by dx, dy, drawn to what is within `reach` mm of it."""
    shifted = _shifted(moving, dx, dy)
    caught_x = _settle(shifted, Axis.X, field, reach)
    caught_y = _settle(shifted, Axis.Y, field, reach)
    return Snap(
        dx + (caught_x.shift if caught_x else 0.0), dy + (caught_y.shift if caught_y else 0.0), caught_x, caught_y
    )


def _shifted(standing: Standing, dx: float, dy: float) -> Standing:
    x1, y1, x2, y2 = standing.box
    return Standing(standing.name, standing.centre.moved(dx, dy), (x1 + dx, y1 + dy, x2 + dx, y2 + dy))


def _settle(moving: Standing, axis: Axis, field: Field, reach: float) -> Caught | None:
    near = list(_candidates(moving, axis, field, reach))
    if not near:
        return _to_grid(moving, axis, field.grid, reach)
    nearest = min(abs(c.shift) for c in near)
    as_near = [c for c in near if abs(c.shift) <= nearest + _AS_NEAR * reach]
    return min(as_near, key=lambda c: (c.rank.value, _away(moving, c.other), abs(c.shift)))


def _away(moving: Standing, other: Standing | None) -> float:
    """How far off the other thing is: of several that would do, the neighbour is meant."""
    if other is None:
        return 0.0
    return abs(other.centre.x - moving.centre.x) + abs(other.centre.y - moving.centre.y)


def _candidates(moving: Standing, axis: Axis, field: Field, reach: float) -> Iterator[Caught]:
    """Everything within reach. Words are only made for what is near: this runs at every step of a drag."""
    centre = moving.centre[axis.value]
    for line in field.lines:
        if line.axis is axis and abs(line.at - centre) <= reach:
            yield Caught(line.at - centre, line.at, Rank.AXIS, line.label)
    for mark in field.centres_near(axis, centre, reach):
        yield Caught(mark.at - centre, mark.at, Rank.CENTRE, f"centre of {mark.other.name}", mark.other)
    for mine in moving.span(axis):
        for mark in field.edges_near(axis, mine, reach):
            label = f"{_EDGE_WORDS[axis][mark.side]} of {mark.other.name}"
            yield Caught(mark.at - mine, mark.at, Rank.EDGE, label, mark.other)
    yield from (caught for caught in _gaps(moving, axis, field.others) if abs(caught.shift) <= reach)


_EDGE_WORDS: Final = {Axis.X: ("left edge", "right edge"), Axis.Y: ("lower edge", "upper edge")}


def _gaps(moving: Standing, axis: Axis, others: tuple[Standing, ...]) -> Iterator[Caught]:
    """Between two neighbours of its row with equal gaps, or beyond the last one with the gap the row has.

    In one row stand things whose spans across the axis overlap.
    """
    low_across, high_across = 1 - axis.value, 3 - axis.value
    bottom, top = moving.box[low_across], moving.box[high_across]
    beside = [one for one in others if one.box[low_across] < top and bottom < one.box[high_across]]
    row = sorted(beside, key=lambda one: one.box[axis.value])
    low, high = moving.span(axis)
    for left, right in pairwise(row):
        gap = right.span(axis)[0] - left.span(axis)[1]
        room = gap - (high - low)
        if room >= 0:
            start = left.span(axis)[1] + room / 2
            yield Caught(start - low, start, Rank.GAP, "equal gaps", left)
        if gap >= 0:
            yield from _beyond(moving, axis, left, right, gap)


def _beyond(moving: Standing, axis: Axis, left: Standing, right: Standing, gap: float) -> Iterator[Caught]:
    low, high = moving.span(axis)
    after, before = right.span(axis)[1] + gap, left.span(axis)[0] - gap
    yield Caught(after - low, after, Rank.GAP, f"same gap as left of {right.name}", right)
    yield Caught(before - high, before, Rank.GAP, f"same gap as right of {left.name}", left)


def _to_grid(moving: Standing, axis: Axis, step: float, reach: float) -> Caught | None:
    if step <= 0:
        return None
    centre = moving.centre[axis.value]
    at = round(centre / step) * step
    shift = at - centre
    return Caught(shift, at, Rank.GRID, "grid") if abs(shift) <= max(reach, step / 2) else None


def around(standings: Iterable[Standing], name: str, centre: Point | None = None) -> Standing:
    """Several things as one: the box around them, about `centre` or the box's middle. Raises ValueError for none."""
    boxes = list(zip(*(standing.box for standing in standings), strict=True))
    if not boxes:
        raise ValueError("nothing stands there")
    box = (min(boxes[0]), min(boxes[1]), max(boxes[2]), max(boxes[3]))
    return Standing(name, centre or Point((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), box)
