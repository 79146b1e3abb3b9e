"""A contour split by a straight line, and two that share an edge made one. True arcs stay true arcs; lengths in mm."""

import math
from typing import NamedTuple

from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex, closed_chain
from panelcad.geometry.corner import trimmed
from panelcad.geometry.crossing import crossings
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Line, Segment

_SAME = 1e-5
"""Points this near are one: stored lengths are whole nanometres."""


class Halves(NamedTuple):
    """The part to the left of the line, the part to its right, and the line's piece between them."""

    left: Chain
    right: Chain
    seam: Line


def split(contour: Contour, start: Point, end: Point) -> Halves:
    """The two parts of a contour either side of the line through two points.

    Raises ValueError where the line does not cross the contour exactly twice.
    """
    chain = contour.chain if isinstance(contour, Rounded) else contour
    hits = _hits(chain, _long_line(chain, start, end))
    if len(hits) != 2:
        raise ValueError("the line must cross the outline exactly twice")
    (i, first), (j, second) = hits
    one = _between(chain, i, first, j, second)
    other = _between(chain, j, second, i, first)
    pieces = sorted((one, other), key=lambda part: -_side(start, end, _inside(part)))
    return Halves(closed_chain(pieces[0].vertices), closed_chain(pieces[1].vertices), Line(first, second))


def joined(a: Contour, b: Contour) -> Chain:
    """One contour of two that lie against each other along straight edges.

    Raises ValueError where they share no edge, or more than one stretch of them.
    """
    first, second = _with_corners_of(_chain(a), _chain(b)), _with_corners_of(_chain(b), _chain(a))
    mine, theirs = _unshared(first, second), _unshared(second, first)
    if len(mine) == len(first.segments):
        raise ValueError("the two outlines share no straight edge")
    whole = _one_run(mine) + _one_run(theirs)
    ends = zip(whole, whole[1:] + whole[:1], strict=True)
    if any(distance(one.end, following.start) > _SAME for one, following in ends):
        raise ValueError("the two outlines touch along more than one stretch")
    return closed_chain(_without_needless_corners([Vertex(*s.start, trimmed(s, s.start, s.end)) for s in whole]))


def through_box(box: tuple[float, float, float, float], start: Point, end: Point) -> tuple[Point, Point]:
    """Two points of the line through `start` and `end`, far enough apart to pass through all of a box, in mm."""
    x1, y1, x2, y2 = box
    reach = distance(start, end) + math.hypot(x2 - x1, y2 - y1) + distance(start, Point(x1, y1))
    return end.towards(start, reach), start.towards(end, reach)


def _chain(contour: Contour) -> Chain:
    return contour.chain if isinstance(contour, Rounded) else contour


def _long_line(chain: Chain, start: Point, end: Point) -> Line:
    """The line drawn out beyond the contour both ways. Raises ValueError where both points are one."""
    if distance(start, end) < _SAME:
        raise ValueError("two different points are needed for the line")
    return Line(*through_box(chain.bounds, start, end))


def _hits(chain: Chain, line: Line) -> list[tuple[int, Point]]:
    """The segments that the line crosses and where; a corner on the line counts once."""
    found: list[tuple[int, Point]] = []
    for i, segment in enumerate(chain.segments):
        for point in crossings(segment, line):
            if all(distance(point, known) > _SAME for _, known in found):
                found.append((i, point))
    return found


def _between(chain: Chain, i: int, first: Point, j: int, second: Point) -> Chain:
    """From `first` on segment i along the contour to `second` on segment j, and straight back."""
    segments = chain.segments
    count = len(segments)
    run = [(i + k) % count for k in range((j - i) % count + 1)]
    if i == j and _along(segments[i], second) < _along(segments[i], first):
        run = [(i + k) % count for k in range(count + 1)]
    vertices: list[Vertex] = []
    for place, index in enumerate(run):
        segment = segments[index]
        start = first if place == 0 else segment.start
        end = second if place == len(run) - 1 else segment.end
        if distance(start, end) > _SAME:
            vertices.append(Vertex(*start, trimmed(segment, start, end)))
    return Chain((*vertices, Vertex(*second)))


def _along(segment: Segment, point: Point) -> float:
    return distance(segment.start, point)


def _inside(part: Chain) -> Point:
    """The middle of the contour's run without the seam: the side it lies on."""
    longest = max(part.segments[:-1], key=lambda segment: segment.length)
    return longest.at(0.5)


def _side(start: Point, end: Point, point: Point) -> float:
    return (end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x)


def _with_corners_of(chain: Chain, other: Chain) -> Chain:
    """The chain with a corner more wherever a corner of the other lies on one of its straight edges."""
    vertices: list[Vertex] = []
    for vertex, segment in zip(chain.vertices, chain.segments, strict=True):
        vertices.append(vertex)
        if isinstance(segment, Line):
            within = [v.point for v in other.vertices if _is_inner_point(segment, v.point)]
            vertices.extend(Vertex(*p) for p in sorted(within, key=lambda p: distance(segment.start, p)))
    return Chain(tuple(vertices))


def _is_inner_point(line: Line, point: Point) -> bool:
    near = distance(line.nearest(point), point) <= _SAME
    return near and min(distance(point, line.start), distance(point, line.end)) > _SAME


def _unshared(chain: Chain, other: Chain) -> list[Segment]:
    """The chain's segments that are not a straight edge of the other, in the chain's order."""
    lines = [segment for segment in other.segments if isinstance(segment, Line)]

    def is_shared(segment: Segment) -> bool:
        return isinstance(segment, Line) and any(
            distance(segment.start, line.end) <= _SAME and distance(segment.end, line.start) <= _SAME for line in lines
        )

    return [segment for segment in chain.segments if not is_shared(segment)]


def _one_run(segments: list[Segment]) -> list[Segment]:
    """The segments begun where the run begins: behind the gap that the shared edges left."""
    for i, segment in enumerate(segments):
        if distance(segments[i - 1].end, segment.start) > _SAME:
            return segments[i:] + segments[:i]
    return segments


def _without_needless_corners(vertices: list[Vertex]) -> tuple[Vertex, ...]:
    """Corners between two straight edges that run on in one line are left out."""
    count = len(vertices)
    kept = []
    for i, vertex in enumerate(vertices):
        before, after = vertices[i - 1], vertices[(i + 1) % count]
        straight = before.bulge == 0.0 and vertex.bulge == 0.0
        line = Line(before.point, after.point)
        if not straight or distance(line.nearest(vertex.point), vertex.point) > _SAME:
            kept.append(vertex)
    return tuple(kept)
