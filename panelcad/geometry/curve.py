"""Whole lines and circles that segments lie on: where they cross, which way they run, how they lie aside. In mm."""

import math

from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc, Line, Segment

_SAME_POINT = 1e-7


def heading(segment: Segment, at: Point) -> tuple[float, float]:
    """The unit vector along which a segment runs where it passes `at`."""
    if isinstance(segment, Line):
        span = segment.length
        return (segment.end.x - segment.start.x) / span, (segment.end.y - segment.start.y) / span
    way = math.copysign(1.0, segment.sweep) / segment.radius
    return -(at.y - segment.centre.y) * way, (at.x - segment.centre.x) * way


def aside(segment: Segment, left: float) -> Segment:
    """The segment moved `left` mm to the left of its way. Raises ValueError where an arc would vanish."""
    if isinstance(segment, Line):
        ux, uy = heading(segment, segment.start)
        return Line(segment.start.moved(-uy * left, ux * left), segment.end.moved(-uy * left, ux * left))
    radius = segment.radius - math.copysign(left, left * segment.sweep)
    if radius <= _SAME_POINT:
        raise ValueError("nothing is left of an arc moved by its whole radius")
    start, end = (segment.centre.towards(point, radius) for point in (segment.start, segment.end))
    return Arc(start, end, segment.centre, radius, segment.start_angle, segment.sweep)


def curve_crossings(a: Segment, b: Segment) -> list[Point]:
    """Crossings of the whole lines and circles that two segments lie on."""
    if isinstance(a, Line):
        return _line_line(a, b) if isinstance(b, Line) else _line_circle(a, b)
    return _line_circle(b, a) if isinstance(b, Line) else _circle_circle(a, b)


def _line_line(a: Line, b: Line) -> list[Point]:
    ax, ay = a.end.x - a.start.x, a.end.y - a.start.y
    bx, by = b.end.x - b.start.x, b.end.y - b.start.y
    cross = ax * by - ay * bx
    if abs(cross) <= 1e-12 * a.length * b.length:
        return []
    along = ((b.start.x - a.start.x) * by - (b.start.y - a.start.y) * bx) / cross
    return [a.at(along)]


def _line_circle(line: Line, arc: Arc) -> list[Point]:
    ux, uy = (line.end.x - line.start.x) / line.length, (line.end.y - line.start.y) / line.length
    along = (arc.centre.x - line.start.x) * ux + (arc.centre.y - line.start.y) * uy
    foot = line.start.moved(along * ux, along * uy)
    beyond = arc.radius**2 - distance(arc.centre, foot) ** 2
    if beyond < 0.0:
        return []
    half = math.sqrt(beyond)
    return [foot.moved(half * ux, half * uy), foot.moved(-half * ux, -half * uy)]


def _circle_circle(a: Arc, b: Arc) -> list[Point]:
    span = distance(a.centre, b.centre)
    if span <= _SAME_POINT or not abs(a.radius - b.radius) <= span <= a.radius + b.radius:
        return []
    along = (span**2 + a.radius**2 - b.radius**2) / (2 * span)
    half = math.sqrt(max(0.0, a.radius**2 - along**2))
    foot = a.centre.towards(b.centre, along)
    ux, uy = (b.centre.x - a.centre.x) / span, (b.centre.y - a.centre.y) / span
    return [foot.moved(-half * uy, half * ux), foot.moved(half * uy, -half * ux)]
