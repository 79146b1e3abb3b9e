"""A contour moved outward or inward by the same way all along: its arcs stay true arcs, its corners corners.

That is what a finish does: metal coated `t` thick all over must be cut with its openings `t` larger on each side.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex, closed_chain
from panelcad.geometry.curve import curve_crossings
from panelcad.geometry.point import Point, distance, middle
from panelcad.geometry.segment import FULL_TURN, Arc, Line, Segment

_SAME_POINT = 1e-7
_NEAR_TANGENT = 1e-3
"""A gap in mm between two moved pieces that is closed at its middle where their curves do not meet."""


def offset(contour: Contour, outward: float) -> Contour:
    """The contour `outward` mm further out, inward where negative. Raises ValueError where nothing sound is left."""
    if outward == 0.0:
        return contour
    if isinstance(contour, Chain):
        return _chain_offset(contour, outward)
    if contour.radius > 0.0 and contour.radius + outward > 0.0:
        return Rounded(contour.core, contour.radius + outward)
    if len(contour.core) < 3:
        raise ValueError("nothing is left of a contour moved inward by its whole radius")
    return _chain_offset(Chain(tuple(Vertex(*p) for p in contour.core)), contour.radius + outward)


def _chain_offset(chain: Chain, outward: float) -> Chain:
    pieces = [moved for segment in chain.segments for moved in _moved(segment, outward)]
    if len(pieces) < 2:
        raise ValueError("nothing is left of a contour moved so far")
    corners = [_corner(before, after) for before, after in zip([pieces[-1], *pieces[:-1]], pieces, strict=True)]
    ends = [*corners[1:], corners[0]]
    vertices = [_vertex(*each) for each in zip(pieces, corners, ends, strict=True)]
    return closed_chain(tuple(vertices))


@dataclass(frozen=True)
class _Moved:
    """A segment moved aside, and what it was, to see whether it turned inside out."""

    now: Segment
    was: Segment


def _moved(segment: Segment, outward: float) -> Iterator[_Moved]:
    """The segment moved to its right; an arc that shrinks to nothing is left out."""
    if isinstance(segment, Line):
        dx, dy = segment.end.x - segment.start.x, segment.end.y - segment.start.y
        nx, ny = dy / segment.length * outward, -dx / segment.length * outward
        yield _Moved(Line(segment.start.moved(nx, ny), segment.end.moved(nx, ny)), segment)
        return
    radius = segment.radius + math.copysign(outward, segment.sweep * outward)
    if radius > _SAME_POINT:
        start, end = (segment.centre.towards(p, radius) for p in (segment.start, segment.end))
        yield _Moved(Arc(start, end, segment.centre, radius, segment.start_angle, segment.sweep), segment)


def _corner(before: _Moved, after: _Moved) -> Point:
    """Where the moved pieces meet: their common end, or the crossing of their curves nearest to it."""
    end, start = before.now.end, after.now.start
    between = middle(end, start)
    if distance(end, start) <= _SAME_POINT:
        return between
    found = min(curve_crossings(before.now, after.now), key=lambda p: distance(p, between), default=None)
    if found is not None:
        return found
    if distance(end, start) <= _NEAR_TANGENT:
        return between
    raise ValueError("the moved contour does not close")


def _vertex(piece: _Moved, start: Point, end: Point) -> Vertex:
    """The piece's first corner and its new bulge. Raises ValueError where the piece turned inside out."""
    if isinstance(piece.now, Line):
        old = piece.now
        ahead = (end.x - start.x) * (old.end.x - old.start.x) + (end.y - start.y) * (old.end.y - old.start.y)
        if ahead <= 0.0:
            raise ValueError("an edge of the contour is shorter than it would be moved")
        return Vertex(*start)
    return Vertex(*start, math.tan(_sweep(piece.now, start, end) / 4))


def _sweep(arc: Arc, start: Point, end: Point) -> float:
    """From `start` to `end` about the arc's centre, the way the arc runs."""
    turn = (arc.angle_of(end) - arc.angle_of(start)) % FULL_TURN
    sweep = turn if arc.sweep > 0.0 else turn - FULL_TURN
    if abs(sweep - arc.sweep) > math.pi:
        raise ValueError("an arc of the contour is shorter than it would be moved")
    return sweep
