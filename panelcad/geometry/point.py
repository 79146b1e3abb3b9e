"""Points and directions of the plane, in mm."""

import math
from typing import NamedTuple


class Point(NamedTuple):
    x: float
    y: float

    def moved(self, dx: float, dy: float) -> "Point":
        return Point(self.x + dx, self.y + dy)

    def towards(self, other: "Point", length: float) -> "Point":
        """The point `length` mm from here on the way to `other`; here itself where both coincide."""
        span = distance(self, other)
        if span == 0.0:
            return self
        return Point(self.x + (other.x - self.x) * length / span, self.y + (other.y - self.y) * length / span)


def distance(a: Point, b: Point) -> float:
    return math.hypot(b.x - a.x, b.y - a.y)


def middle(a: Point, b: Point) -> Point:
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2)


def bearing(start: Point, end: Point) -> float:
    """The way from `start` to `end` in degrees counter-clockwise from the x axis, from 0 to less than 360."""
    return math.degrees(math.atan2(end.y - start.y, end.x - start.x)) % 360.0


def polar(centre: Point, radius: float, degrees: float) -> Point:
    """The point at `degrees` counter-clockwise from the x axis; exact on the axes."""
    cosine, sine = direction(degrees)
    return Point(centre.x + radius * cosine, centre.y + radius * sine)


def direction(degrees: float) -> tuple[float, float]:
    """Cosine and sine of an angle in degrees; quarter turns give exact zeros and ones."""
    turned = degrees % 360.0
    if turned % 90.0 == 0.0:
        return ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(turned // 90.0) % 4]
    return math.cos(math.radians(turned)), math.sin(math.radians(turned))
