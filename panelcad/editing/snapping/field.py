"""All that a thing may be caught by, sorted once so that each step of a drag looks only at what is near it."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Final, NamedTuple

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.rows import Rows
from panelcad.editing.snapping.standing import Standing

_AXES: Final = tuple(Axis)
_EDGES: Final = {
    Axis.ACROSS: ("left edge of {}", "right edge of {}"),
    Axis.UP: ("lower edge of {}", "upper edge of {}"),
}
_CENTRE: Final = "centre of {}"
_SPOT: Final = "{}"


@dataclass(frozen=True)
class AxisLine:
    """A line of the panel itself: its middle, the datum, the pilot's centre line."""

    axis: Axis
    at: float
    label: str


class Mark(NamedTuple):
    """Where a centre, an edge or a line of another thing is along an axis; `words` leave a place for its name."""

    at: float
    words: str
    other: Standing


@dataclass(frozen=True)
class Field:
    """Everything a thing can be caught by: the others, the panel's lines, and the grid's step (0 for none)."""

    others: tuple[Standing, ...] = ()
    lines: tuple[AxisLine, ...] = ()
    grid: float = 0.0

    @cached_property
    def _centres(self) -> dict[Axis, list[Mark]]:
        return {
            axis: _rising(Mark(o.centre[axis.value], _SPOT if o.is_spot else _CENTRE, o) for o in self.others)
            for axis in _AXES
        }

    @cached_property
    def _edges(self) -> dict[Axis, list[Mark]]:
        return {
            axis: _rising(
                Mark(at, words, other)
                for other in self.others
                for at, words in zip(other.span(axis), _EDGES[axis], strict=True)
            )
            for axis in _AXES
        }

    @cached_property
    def _own_lines(self) -> dict[Axis, list[Mark]]:
        marks = [(line.axis, Mark(line.at, line.words, other)) for other in self.others for line in other.lines]
        return {axis: _rising(mark for its, mark in marks if its is axis) for axis in _AXES}

    @cached_property
    def rows(self) -> dict[Axis, Rows]:
        return {axis: Rows(self.others, axis) for axis in _AXES}

    def centres_near(self, axis: Axis, at: float, reach: float) -> list[Mark]:
        return _near(self._centres[axis], at, reach)

    def edges_near(self, axis: Axis, at: float, reach: float) -> list[Mark]:
        return _near(self._edges[axis], at, reach)

    def own_lines_near(self, axis: Axis, at: float, reach: float) -> list[Mark]:
        return _near(self._own_lines[axis], at, reach)


def _rising(marks: Iterable[Mark]) -> list[Mark]:
    return sorted(marks, key=lambda mark: mark.at)


def _near(marks: list[Mark], at: float, reach: float) -> list[Mark]:
    first = bisect_left(marks, at - reach, key=lambda mark: mark.at)
    return marks[first : bisect_right(marks, at + reach, key=lambda mark: mark.at)]
