"""A thing as snapping sees it: its own origin, the box it takes up, and lines of its own. Lengths in mm."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import NamedTuple

from panelcad.editing.extents import Axis
from panelcad.geometry.boxes import Box, box_around
from panelcad.geometry.point import Point


class OwnLine(NamedTuple):
    """A line that belongs to a thing, such as a rack's rail: upright at x for `ACROSS`, level at y for `UP`."""

    axis: Axis
    at: float
    words: str


@dataclass(frozen=True)
class Standing:
    """A thing that is there: its own origin and the box of its bezel and cut."""

    name: str
    centre: Point
    box: Box
    lines: tuple[OwnLine, ...] = ()

    def span(self, axis: Axis) -> tuple[float, float]:
        return self.box[axis.value], self.box[axis.value + 2]

    @property
    def is_spot(self) -> bool:
        """A mere place, such as a corner: it has no edges, and no gaps beside it."""
        return self.box[0] == self.box[2] and self.box[1] == self.box[3]

    def middle(self, axis: Axis) -> float:
        low, high = self.span(axis)
        return (low + high) / 2

    def moved(self, dx: float, dy: float) -> "Standing":
        x1, y1, x2, y2 = self.box
        shift = (dx, dy)
        lines = tuple(line._replace(at=line.at + shift[line.axis.value]) for line in self.lines)
        return replace(self, centre=self.centre.moved(dx, dy), box=(x1 + dx, y1 + dy, x2 + dx, y2 + dy), lines=lines)


def around(standings: Iterable[Standing], name: str, centre: Point | None = None) -> Standing:
    """Several things as one: the box around them, about `centre` or the box's middle. Raises ValueError for none."""
    things = tuple(standings)
    box = box_around(thing.box for thing in things)
    lines = tuple(line for thing in things for line in thing.lines)
    return Standing(name, centre or Point((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), box, lines)
