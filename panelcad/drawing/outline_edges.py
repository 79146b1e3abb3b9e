"""An outline taken apart for dimensions: its vertices V1, V2, … counter-clockwise, and the edge that leaves each.

V1 is the vertex nearest to the lower left corner of the outline's box. A circle has none; its diameter says all.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc, Line, Segment

_SAME: Final = 1e-6
"""Millimetres: coordinates nearer than this are one."""
_SMOOTH: Final = math.radians(0.5)
"""Edges that meet at less than this run on as one; an inspector finds no corner there."""


@dataclass(frozen=True)
class Edge:
    """The edge from vertex `number` to the next; `is_corner` where its start is a corner and no smooth passage."""

    number: int
    following: int
    segment: Segment
    is_corner: bool

    @property
    def start(self) -> Point:
        return self.segment.start

    @property
    def name(self) -> str:
        return f"V{self.number}–V{self.following}"

    @property
    def arc(self) -> Arc | None:
        return self.segment if isinstance(self.segment, Arc) else None

    @property
    def is_concave(self) -> bool:
        """Whether it is an arc that bows into the metal."""
        return self.arc is not None and self.arc.sweep < 0

    @property
    def level_at(self) -> float | None:
        """Its y where it is a level line."""
        return self.start.y if self._is_line and abs(self.start.y - self.segment.end.y) < _SAME else None

    @property
    def upright_at(self) -> float | None:
        """Its x where it is an upright line."""
        return self.start.x if self._is_line and abs(self.start.x - self.segment.end.x) < _SAME else None

    @property
    def _is_line(self) -> bool:
        return isinstance(self.segment, Line)


def edges(contour: Contour) -> tuple[Edge, ...]:
    """The edges of a contour in order; none of a circle."""
    if isinstance(contour, Rounded) and contour.is_circle:
        return ()
    segments = [segment for segment in contour.segments if segment.length > _SAME]
    x1, y1, _, _ = contour.bounds
    first = min(range(len(segments)), key=lambda i: round(distance(segments[i].start, Point(x1, y1)), 6))
    ordered = segments[first:] + segments[:first]
    count = len(ordered)
    return tuple(
        Edge(i + 1, (i + 1) % count + 1, segment, _turns(ordered[i - 1], segment)) for i, segment in enumerate(ordered)
    )


def arcs(found: tuple[Edge, ...]) -> Iterator[tuple[Edge, Arc]]:
    """The arcs among edges, one of each centre and radius."""
    seen = set()
    for edge in found:
        if edge.arc is None:
            continue
        same = (round(edge.arc.centre.x, 4), round(edge.arc.centre.y, 4), round(edge.arc.radius, 4))
        if same not in seen:
            seen.add(same)
            yield edge, edge.arc


def _turns(before: Segment, after: Segment) -> bool:
    turn = (_heading(after, 0.0) - _heading(before, 1.0) + math.pi) % (2 * math.pi) - math.pi
    return abs(turn) > _SMOOTH


def _heading(segment: Segment, share: float) -> float:
    """Which way a segment runs at its start (share 0) or its end (share 1), in radians."""
    if isinstance(segment, Arc):
        return segment.start_angle + share * segment.sweep + math.copysign(math.pi / 2, segment.sweep)
    return math.atan2(segment.end.y - segment.start.y, segment.end.x - segment.start.x)
