"""Lines and circular arcs: the pieces of a contour. Lengths in mm, angles in radians, exact to rounding."""

import math
from dataclasses import dataclass
from functools import cached_property

from panelcad.geometry.point import Point, distance

FULL_TURN = 2 * math.pi
FLAT = 5e-7
"""A bow lower than this, in mm, is a line: stored lengths end at the nanometre."""
ON_SEGMENT = 1e-9
"""How far, in mm, a computed point may stray off a segment and still count as on it."""


@dataclass(frozen=True)
class Line:
    start: Point
    end: Point

    @property
    def length(self) -> float:
        return distance(self.start, self.end)

    @property
    def swept_area(self) -> float:
        """The segment's share of the enclosed area (shoelace term), in mm²."""
        return (self.start.x * self.end.y - self.end.x * self.start.y) / 2

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        (x1, y1), (x2, y2) = self.start, self.end
        return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)

    def nearest(self, point: Point) -> Point:
        """The point of this line nearest to `point`."""
        dx, dy = self.end.x - self.start.x, self.end.y - self.start.y
        square = dx * dx + dy * dy
        if square == 0.0:
            return self.start
        share = ((point.x - self.start.x) * dx + (point.y - self.start.y) * dy) / square
        if share <= 0.0:
            return self.start
        if share >= 1.0:
            return self.end
        return Point(self.start.x + share * dx, self.start.y + share * dy)

    def at(self, share: float) -> Point:
        return Point(
            self.start.x + share * (self.end.x - self.start.x),
            self.start.y + share * (self.end.y - self.start.y),
        )


@dataclass(frozen=True)
class Arc:
    """An arc from `start` to `end`; `sweep` is positive counter-clockwise and at most a full turn."""

    start: Point
    end: Point
    centre: Point
    radius: float
    start_angle: float
    sweep: float

    @staticmethod
    def from_bulge(start: Point, end: Point, bulge: float) -> "Arc":
        """Bulge is tan(sweep / 4), positive counter-clockwise (DXF Reference, LWPOLYLINE, group 42)."""
        chord = distance(start, end)
        radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
        to_centre = chord * (1 - bulge * bulge) / (4 * bulge)
        nx, ny = -(end.y - start.y) / chord, (end.x - start.x) / chord
        centre = Point((start.x + end.x) / 2 + nx * to_centre, (start.y + end.y) / 2 + ny * to_centre)
        start_angle = math.atan2(start.y - centre.y, start.x - centre.x)
        return Arc(start, end, centre, radius, start_angle, 4 * math.atan(bulge))

    @property
    def length(self) -> float:
        return self.radius * abs(self.sweep)

    @property
    def swept_area(self) -> float:
        """The arc's share of the enclosed area: shoelace term of the chord and the circular segment, in mm²."""
        chord = (self.start.x * self.end.y - self.end.x * self.start.y) / 2
        return chord + self.radius**2 * (self.sweep - math.sin(self.sweep)) / 2

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        points = [self.start, self.end]
        for quarter, (dx, dy) in enumerate(((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))):
            if self.covers(quarter * math.pi / 2):
                points.append(Point(self.centre.x + dx * self.radius, self.centre.y + dy * self.radius))
        xs, ys = [p.x for p in points], [p.y for p in points]
        return min(xs), min(ys), max(xs), max(ys)

    def covers(self, angle: float) -> bool:
        """Whether the arc passes through the direction `angle` from its centre."""
        slack = ON_SEGMENT / max(self.radius, ON_SEGMENT)
        turned = angle - self.start_angle if self.sweep >= 0 else self.start_angle - angle
        turned %= FULL_TURN
        return turned <= abs(self.sweep) + slack or turned >= FULL_TURN - slack

    def angle_of(self, point: Point) -> float:
        return math.atan2(point.y - self.centre.y, point.x - self.centre.x)

    def nearest(self, point: Point) -> Point:
        """The point of this arc nearest to `point`; its start where `point` is the centre."""
        if point == self.centre:
            return self.start
        if self.covers(self.angle_of(point)):
            return self.centre.towards(point, self.radius)
        return min(self.start, self.end, key=lambda corner: distance(corner, point))

    def at(self, share: float) -> Point:
        angle = self.start_angle + share * self.sweep
        return Point(self.centre.x + self.radius * math.cos(angle), self.centre.y + self.radius * math.sin(angle))


Segment = Line | Arc


def segment_between(start: Point, end: Point, bulge: float) -> Segment:
    """A line where the bow is flat to half a nanometre, else the arc."""
    bow = abs(bulge) * distance(start, end) / 2
    return Arc.from_bulge(start, end, bulge) if bow > FLAT else Line(start, end)
