"""Closed contours of lines and true arcs, in mm. There are two kinds.

`Rounded` is a convex core of one or more points, grown by a radius: a circle is a grown point, a slot a grown
segment, a rounded rectangle a grown rectangle. Distances between two of them are exact without any tessellation.
`Chain` is any other closed chain of vertices with bulges.
"""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from panelcad.geometry.boxes import box_around
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import FLAT, Line, Segment, segment_between

QUARTER_TURN_BULGE = 0.41421356237309503
"""tan(90° / 4)."""


class Vertex(NamedTuple):
    """A corner and the bulge of the segment that leaves it: tan(included angle / 4), counter-clockwise positive."""

    x: float
    y: float
    bulge: float = 0.0

    @property
    def point(self) -> Point:
        return Point(self.x, self.y)


@dataclass(frozen=True)
class Chain:
    """A closed chain; its last vertex joins its first. Built counter-clockwise by `closed_chain`."""

    vertices: tuple[Vertex, ...]

    @cached_property
    def segments(self) -> tuple[Segment, ...]:
        following = self.vertices[1:] + self.vertices[:1]
        return tuple(segment_between(v.point, w.point, v.bulge) for v, w in zip(self.vertices, following, strict=True))

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        return box_around(segment.bounds for segment in self.segments)

    @cached_property
    def area(self) -> float:
        """Enclosed area in mm²; positive counter-clockwise."""
        return sum(segment.swept_area for segment in self.segments)

    @property
    def length(self) -> float:
        """Length of the whole contour in mm."""
        return sum(segment.length for segment in self.segments)


@dataclass(frozen=True)
class Rounded:
    """A convex core, its points counter-clockwise, grown by `radius`."""

    core: tuple[Point, ...]
    radius: float

    @property
    def is_circle(self) -> bool:
        return len(self.core) == 1

    @property
    def centre(self) -> Point:
        """The middle of the core's box; a circle's centre."""
        x1, y1, x2, y2 = self.bounds
        return self.core[0] if self.is_circle else Point((x1 + x2) / 2, (y1 + y2) / 2)

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        xs, ys = [p.x for p in self.core], [p.y for p in self.core]
        return min(xs) - self.radius, min(ys) - self.radius, max(xs) + self.radius, max(ys) + self.radius

    @cached_property
    def chain(self) -> Chain:
        """The same contour as a chain: two half circles for a circle, tangent arcs at rounded corners."""
        return Chain(tuple(_rounded_vertices(self.core, self.radius)))

    @property
    def segments(self) -> tuple[Segment, ...]:
        return self.chain.segments

    @property
    def area(self) -> float:
        """Enclosed area in mm² (Steiner's formula of a grown convex body)."""
        return abs(_polygon_area(self.core)) + _perimeter(self.core) * self.radius + math.pi * self.radius**2

    @property
    def length(self) -> float:
        return _perimeter(self.core) + 2 * math.pi * self.radius


Contour = Rounded | Chain


def circle(centre: Point, diameter: float) -> Rounded:
    return Rounded((centre,), diameter / 2)


def rectangle(centre: Point, width: float, height: float, corner_radius: float = 0.0) -> Rounded:
    """A rectangle; its corner radius is held to half its shorter side, where it becomes a slot or a circle."""
    radius = min(corner_radius, width / 2, height / 2) if corner_radius > FLAT else 0.0
    half_width, half_height = _no_sliver(width / 2 - radius), _no_sliver(height / 2 - radius)
    corners = (
        Point(centre.x - half_width, centre.y - half_height),
        Point(centre.x + half_width, centre.y - half_height),
        Point(centre.x + half_width, centre.y + half_height),
        Point(centre.x - half_width, centre.y + half_height),
    )
    return Rounded(tuple(dict.fromkeys(corners)), radius)


def _no_sliver(half: float) -> float:
    return half if half > FLAT else 0.0


def closed_chain(vertices: tuple[Vertex, ...]) -> Chain:
    """The chain through these vertices, turned counter-clockwise."""
    chain = Chain(vertices)
    return chain if chain.area >= 0 else reversed_chain(chain)


def reversed_chain(chain: Chain) -> Chain:
    """The same contour run the other way: order reversed, every bulge negated."""
    bulges = [vertex.bulge for vertex in chain.vertices]
    corners = [vertex.point for vertex in chain.vertices]
    backwards = [Vertex(p.x, p.y, -bulges[i - 1]) for i, p in enumerate(corners)]
    return Chain(tuple(reversed(backwards)))


def _polygon_area(points: tuple[Point, ...]) -> float:
    following = points[1:] + points[:1]
    return sum(Line(a, b).swept_area for a, b in zip(points, following, strict=True))


def _perimeter(points: tuple[Point, ...]) -> float:
    """Length around a core; a segment is run there and back, a point has none."""
    following = points[1:] + points[:1]
    return sum(distance(a, b) for a, b in zip(points, following, strict=True))


def _rounded_vertices(core: tuple[Point, ...], radius: float) -> list[Vertex]:
    if len(core) == 1:
        (cx, cy) = core[0]
        return [Vertex(cx + radius, cy, 1.0), Vertex(cx - radius, cy, 1.0)]
    if radius == 0.0:
        return [Vertex(p.x, p.y) for p in core]
    vertices: list[Vertex] = []
    count = len(core)
    for i, corner in enumerate(core):
        before = _outward(core[i - 1], corner)
        after = _outward(corner, core[(i + 1) % count])
        bulge = _bulge_between(before, after)
        vertices.append(Vertex(corner.x + before[0] * radius, corner.y + before[1] * radius, bulge))
        vertices.append(Vertex(corner.x + after[0] * radius, corner.y + after[1] * radius))
    return vertices


def _outward(start: Point, end: Point) -> tuple[float, float]:
    span = distance(start, end)
    return (end.y - start.y) / span, -(end.x - start.x) / span


def _bulge_between(before: tuple[float, float], after: tuple[float, float]) -> float:
    cross = before[0] * after[1] - before[1] * after[0]
    dot = before[0] * after[0] + before[1] * after[1]
    if abs(dot) < 1e-15:
        return QUARTER_TURN_BULGE
    turn = math.atan2(abs(cross), dot)
    return math.tan(turn / 4)
