"""Where a thing that is moved comes to stand, and what it was caught by. Lengths in mm.

Each axis is settled on its own: the nearest line within reach wins; between lines about as near, the one that means
more (a centre before a rack's rail, a rail before an edge, an edge before an equal gap, everything before the grid).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from typing import Final, NamedTuple

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.field import Field
from panelcad.editing.snapping.standing import Standing

_AS_NEAR: Final = 0.35
"""Lines that differ by less than this share of the reach count as equally near."""

_NEIGHBOURS: Final = 150.0
"""mm from middle to middle; edges of things farther apart than this catch less and less."""


class Rank(Enum):
    """What a line means, the most meaningful first."""

    AXIS = 0
    CENTRE = 1
    OWN_LINE = 2
    EDGE = 3
    GAP = 4
    GRID = 5


class Caught(NamedTuple):
    """One axis settled: how far to shift, by what, and the line to show.

    `other` is the thing that caught it; `second` the other one of two whose gap is repeated or shared.
    """

    shift: float
    at: float
    rank: Rank
    words: str
    other: Standing | None = None
    second: Standing | None = None

    @property
    def label(self) -> str:
        return self.words if self.other is None else self.words.format(self.other.name)


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
        labels = (caught.label for caught in (self.x, self.y) if caught is not None)
        return "; ".join(dict.fromkeys(labels))


def snap(moving: Standing, dx: float, dy: float, field: Field, reach: float) -> Snap:
    """The move of `moving` by dx, dy, drawn to what is within `reach` mm of it."""
    shifted = moving.moved(dx, dy)
    caught_x = _settle(shifted, Axis.ACROSS, field, reach)
    caught_y = _settle(shifted, Axis.UP, field, reach)
    return Snap(
        dx + (caught_x.shift if caught_x else 0.0), dy + (caught_y.shift if caught_y else 0.0), caught_x, caught_y
    )


def to_reading(settled: Snap, moving: Standing, step: float) -> Snap:
    """The same move, ending at a whole multiple of `step` mm where nothing caught it: at a figure that people read."""
    dx = settled.dx if settled.x else _whole(moving.centre.x, settled.dx, step)
    dy = settled.dy if settled.y else _whole(moving.centre.y, settled.dy, step)
    return Snap(dx, dy, settled.x, settled.y)


def _whole(start: float, shift: float, step: float) -> float:
    """A shift of 0 stays: what does not move keeps its place to the nanometre."""
    return round((start + shift) / step) * step - start if shift else 0.0


def _settle(moving: Standing, axis: Axis, field: Field, reach: float) -> Caught | None:
    near = [caught for caught in _candidates(moving, axis, field, reach) if _catches(caught, moving, reach)]
    if not near:
        return _to_grid(moving, axis, field.grid, reach)
    nearest = min(abs(c.shift) for c in near)
    as_near = [c for c in near if abs(c.shift) <= nearest + _AS_NEAR * reach]
    return min(as_near, key=lambda c: (c.rank.value, _away(moving, c.other), abs(c.shift)))


def _catches(caught: Caught, moving: Standing, reach: float) -> bool:
    """An edge catches its neighbours; the farther off it stands, the nearer to its line one must come."""
    if caught.rank is not Rank.EDGE:
        return True
    away = _away(moving, caught.other)
    return away <= _NEIGHBOURS or abs(caught.shift) <= reach * _NEIGHBOURS / away


def _away(moving: Standing, other: Standing | None) -> float:
    """How far off the other thing is: of several that would do, the neighbour is meant."""
    if other is None:
        return 0.0
    return abs(other.centre.x - moving.centre.x) + abs(other.centre.y - moving.centre.y)


def _candidates(moving: Standing, axis: Axis, field: Field, reach: float) -> Iterator[Caught]:
    """Everything within reach. Words are only made for what caught it: this runs at every step of a drag."""
    centre = moving.centre[axis.value]
    for line in field.lines:
        if line.axis is axis and abs(line.at - centre) <= reach:
            yield Caught(line.at - centre, line.at, Rank.AXIS, line.label)
    for mark in field.centres_near(axis, centre, reach):
        yield Caught(mark.at - centre, mark.at, Rank.CENTRE, mark.words, mark.other)
    for mine in (*moving.span(axis), *(line.at for line in moving.lines if line.axis is axis)):
        for mark in field.own_lines_near(axis, mine, reach):
            yield Caught(mark.at - mine, mark.at, Rank.OWN_LINE, mark.words, mark.other)
    for mine in moving.span(axis):
        for mark in field.edges_near(axis, mine, reach):
            yield Caught(mark.at - mine, mark.at, Rank.EDGE, mark.words, mark.other)
    if not moving.is_spot:
        yield from (caught for caught in _gaps(moving, axis, field) if abs(caught.shift) <= reach)


def _gaps(moving: Standing, axis: Axis, field: Field) -> Iterator[Caught]:
    """Between its two neighbours with equal gaps, or beyond one with the gap that one has on its other side."""
    beside = field.rows[axis].beside(moving)
    low, high = moving.span(axis)
    if beside.before and beside.after:
        left, right = beside.before[0], beside.after[0]
        room = _gap(left, right, axis) - (high - low)
        if room >= 0:
            start = left.span(axis)[1] + room / 2
            yield Caught(start - low, start, Rank.GAP, "equal gaps", left, right)
    if len(beside.before) > 1:
        near, far = beside.before
        start = near.span(axis)[1] + _gap(far, near, axis)
        if _gap(far, near, axis) >= 0:
            yield Caught(start - low, start, Rank.GAP, f"same gap as {_BEFORE[axis]} {{}}", near, far)
    if len(beside.after) > 1:
        near, far = beside.after
        end = near.span(axis)[0] - _gap(near, far, axis)
        if _gap(near, far, axis) >= 0:
            yield Caught(end - high, end, Rank.GAP, f"same gap as {_AFTER[axis]} {{}}", near, far)


_BEFORE: Final = {Axis.ACROSS: "left of", Axis.UP: "below"}
_AFTER: Final = {Axis.ACROSS: "right of", Axis.UP: "above"}


def _gap(first: Standing, second: Standing, axis: Axis) -> float:
    return second.span(axis)[0] - first.span(axis)[1]


def _to_grid(moving: Standing, axis: Axis, step: float, reach: float) -> Caught | None:
    if step <= 0:
        return None
    centre = moving.centre[axis.value]
    at = round(centre / step) * step
    shift = at - centre
    return Caught(shift, at, Rank.GRID, "grid") if abs(shift) <= max(reach, step / 2) else None
