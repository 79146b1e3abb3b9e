"""Simple marks: discs, bands, strokes, polygons, words. Lengths in mm, clock angles in degrees from the top."""

import math
from collections.abc import Iterable
from typing import NamedTuple

import shapely

from panelcad.drawing.display import (
    Across,
    Along,
    Cap,
    Colour,
    Face,
    Fill,
    Group,
    LinearGradient,
    Node,
    Path,
    Pen,
    Stop,
    Text,
)
from panelcad.geometry.contour import Contour, Rounded, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point, polar
from panelcad.geometry.polygon import polygon as polygon_of
from panelcad.geometry.track import Track, line


class Box(NamedTuple):
    """A rectangle by its lower left corner and its size."""

    x: float
    y: float
    width: float
    height: float

    @staticmethod
    def around(contour: Contour) -> "Box":
        x1, y1, x2, y2 = contour.bounds
        return Box(x1, y1, x2 - x1, y2 - y1)

    @property
    def right(self) -> float:
        return self.x + self.width

    @property
    def top(self) -> float:
        return self.y + self.height

    @property
    def centre(self) -> Point:
        return Point(self.x + self.width / 2, self.y + self.height / 2)

    def contour(self, radius: float = 0.0) -> Rounded:
        return rectangle(self.centre, self.width, self.height, radius)

    def inset(self, by: float) -> "Box":
        return Box(self.x + by, self.y + by, self.width - 2 * by, self.height - 2 * by)

    def part(self, x: float, y: float, width: float, height: float) -> "Box":
        """The part whose place and size are shares of this one's."""
        return Box(self.x + x * self.width, self.y + y * self.height, width * self.width, height * self.height)

    def at(self, x: float, y: float) -> Point:
        """The point at these shares of width and height."""
        return Point(self.x + x * self.width, self.y + y * self.height)


def clock(centre: Point, radius: float, angle: float) -> Point:
    """The point at a clock angle: 0 at the top, 90 to the right."""
    return polar(centre, radius, 90.0 - angle)


def disc(centre: Point, radius: float, fill: Fill, pen: Pen | None = None) -> Path:
    return Path((circle(centre, 2 * radius),), fill, pen)


def ring(centre: Point, outer: float, inner: float, fill: Fill) -> Path:
    return Path((circle(centre, 2 * outer), circle(centre, 2 * inner)), fill)


def circle_line(centre: Point, radius: float, colour: Colour, width: float) -> Path:
    return Path((circle(centre, 2 * radius),), None, Pen(colour, width))


def box(area: Box, fill: Fill | None, radius: float = 0.0) -> Path:
    """A filled rectangle."""
    return Path((area.contour(radius),), fill)


def frame_line(area: Box, pen: Pen, radius: float = 0.0) -> Path:
    return Path((area.contour(radius),), None, pen)


def shape(points: Iterable[Point], fill: Fill | None, pen: Pen | None = None) -> Path:
    """A filled polygon."""
    return Path((closed_chain(tuple(Vertex(*p) for p in points)),), fill, pen)


def strokes(tracks: Iterable[Track], colour: Colour, width: float, cap: Cap = Cap.FLAT) -> Node:
    """All tracks drawn with one pen; an empty group where there are none."""
    drawn = tuple(tracks)
    return Path(drawn, None, Pen(colour, width, cap=cap)) if drawn else Group(())


def stroke(start: Point, end: Point, colour: Colour, width: float) -> Node:
    return strokes((line(start, end),), colour, width)


def arc(centre: Point, radius: float, start: float, end: float) -> Track:
    """A round line clockwise between two clock angles less than a turn apart."""
    halves = (end - start) / 2
    bulge = -math.tan(math.radians(halves) / 4)
    a, b, c = (clock(centre, radius, angle) for angle in (start, start + halves, end))
    return Track((Vertex(a.x, a.y, bulge), Vertex(b.x, b.y, bulge), Vertex(*c)))


def band(centre: Point, outer: float, inner: float, angles: tuple[float, float], fill: Fill) -> Path:
    """A piece of a ring, clockwise between two clock angles."""
    start, end = angles
    halves = (end - start) / 2
    bulge = math.tan(math.radians(halves) / 4)
    out = [clock(centre, outer, angle) for angle in (start, start + halves, end)]
    back = [clock(centre, inner, angle) for angle in (end, start + halves, start)]
    bulges = (-bulge, -bulge, 0.0, bulge, bulge, 0.0)
    vertices = [Vertex(p.x, p.y, b) for p, b in zip([*out, *back], bulges, strict=True)]
    return Path((closed_chain(tuple(vertices)),), fill)


def word(text: str, at: Point, height: float, colour: Colour, face: Face = Face.REGULAR) -> Text:
    """One word centred on a point."""
    return Text(text, at, height, colour, Along.CENTRE, Across.MIDDLE, face=face)


def words_left(text: str, at: Point, height: float, colour: Colour, face: Face = Face.REGULAR) -> Text:
    return Text(text, at, height, colour, Along.LEFT, Across.MIDDLE, face=face)


def words_right(text: str, at: Point, height: float, colour: Colour, face: Face = Face.REGULAR) -> Text:
    return Text(text, at, height, colour, Along.RIGHT, Across.MIDDLE, face=face)


def downward(top: float, bottom: float, first: Colour, last: Colour, x: float = 0.0) -> LinearGradient:
    """A fill that changes from one colour at the top to another at the bottom."""
    return LinearGradient(Point(x, top), Point(x, bottom), (Stop(0.0, first), Stop(1.0, last)))


def grown(contour: Contour, by: float) -> Contour:
    """The contour `by` mm outside this one, or inside where `by` is negative; true arcs where its corners allow it."""
    if isinstance(contour, Rounded) and contour.radius + by >= 0.0:
        return Rounded(contour.core, contour.radius + by)
    ground = polygon_of(contour, error=0.02).buffer(by, quad_segs=6, join_style="mitre" if by < 0 else "round")
    largest = max(getattr(ground, "geoms", [ground]), key=lambda part: part.area)
    if largest.is_empty:
        return contour
    ring_points = list(shapely.get_coordinates(largest.exterior))[:-1]
    return closed_chain(tuple(Vertex(float(x), float(y)) for x, y in ring_points))
