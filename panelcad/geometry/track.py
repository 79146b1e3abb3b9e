"""An open chain of lines and arcs, in mm: centre lines, leaders, needles, strokes of lettering."""

from dataclasses import dataclass
from functools import cached_property

from panelcad.geometry.boxes import box_around
from panelcad.geometry.contour import Vertex
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Segment, segment_between


@dataclass(frozen=True)
class Track:
    """At least two vertices; the last one's bulge is not used."""

    vertices: tuple[Vertex, ...]

    @cached_property
    def segments(self) -> tuple[Segment, ...]:
        pairs = zip(self.vertices, self.vertices[1:], strict=False)
        return tuple(segment_between(v.point, w.point, v.bulge) for v, w in pairs)

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        return box_around(segment.bounds for segment in self.segments)


def line(start: Point, end: Point) -> Track:
    return Track((Vertex(*start), Vertex(*end)))


def polyline(*points: Point) -> Track:
    return Track(tuple(Vertex(*point) for point in points))
