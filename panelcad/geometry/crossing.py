"""The nearest points of two segments, and where they cross. Closed forms, no tessellation."""

import math
from collections.abc import Iterator
from typing import NamedTuple

from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import ON_SEGMENT, Arc, Line, Segment


class Nearest(NamedTuple):
    """Distance in mm of two segments and the points, one on each, that are so far apart."""

    distance: float
    a: Point
    b: Point


def nearest(a: Segment, b: Segment) -> Nearest:
    """The nearest pair of points; distance 0 where the segments cross or touch."""
    for point in crossings(a, b):
        return Nearest(0.0, point, point)
    return min(_candidates(a, b), key=lambda found: found.distance)


def crossings(a: Segment, b: Segment) -> Iterator[Point]:
    """Every point that lies on both segments; overlapping stretches give none."""
    if isinstance(a, Line) and isinstance(b, Line):
        yield from _line_line(a, b)
    elif isinstance(a, Line) and isinstance(b, Arc):
        yield from _line_arc(a, b)
    elif isinstance(a, Arc) and isinstance(b, Line):
        yield from _line_arc(b, a)
    elif isinstance(a, Arc) and isinstance(b, Arc):
        yield from _arc_arc(a, b)


def _candidates(a: Segment, b: Segment) -> Iterator[Nearest]:
    for corner in (a.start, a.end):
        yield _pair(corner, b.nearest(corner))
    for corner in (b.start, b.end):
        yield _pair(a.nearest(corner), corner)
    yield from _inner_candidates(a, b)


def _inner_candidates(a: Segment, b: Segment) -> Iterator[Nearest]:
    """Pairs inside both segments, where the common normal meets both."""
    if isinstance(a, Arc) and isinstance(b, Arc):
        for on_a in _towards(a, b.centre):
            for on_b in _towards(b, a.centre):
                yield _pair(on_a, on_b)
    elif isinstance(a, Arc) and isinstance(b, Line):
        foot = b.nearest(a.centre)
        yield from (_pair(on_a, foot) for on_a in _towards(a, foot))
    elif isinstance(a, Line) and isinstance(b, Arc):
        yield from (Nearest(found.distance, found.b, found.a) for found in _inner_candidates(b, a))


def _towards(arc: Arc, target: Point) -> Iterator[Point]:
    """The arc's points on the line through its centre and `target`."""
    if distance(arc.centre, target) == 0.0:
        return
    angle = arc.angle_of(target)
    for turn in (angle, angle + math.pi):
        if arc.covers(turn):
            yield Point(arc.centre.x + arc.radius * math.cos(turn), arc.centre.y + arc.radius * math.sin(turn))


def _pair(a: Point, b: Point) -> Nearest:
    return Nearest(distance(a, b), a, b)


def _line_line(a: Line, b: Line) -> Iterator[Point]:
    ax, ay = a.end.x - a.start.x, a.end.y - a.start.y
    bx, by = b.end.x - b.start.x, b.end.y - b.start.y
    cross = ax * by - ay * bx
    if cross == 0.0:
        return
    cx, cy = b.start.x - a.start.x, b.start.y - a.start.y
    along_a, along_b = (cx * by - cy * bx) / cross, (cx * ay - cy * ax) / cross
    slack_a, slack_b = ON_SEGMENT / max(a.length, ON_SEGMENT), ON_SEGMENT / max(b.length, ON_SEGMENT)
    if -slack_a <= along_a <= 1 + slack_a and -slack_b <= along_b <= 1 + slack_b:
        yield a.at(min(max(along_a, 0.0), 1.0))


def _line_arc(line: Line, arc: Arc) -> Iterator[Point]:
    span = line.length
    if span == 0.0:
        return
    ux, uy = (line.end.x - line.start.x) / span, (line.end.y - line.start.y) / span
    along = (arc.centre.x - line.start.x) * ux + (arc.centre.y - line.start.y) * uy
    foot = Point(line.start.x + along * ux, line.start.y + along * uy)
    beyond = arc.radius**2 - distance(arc.centre, foot) ** 2
    if beyond < 0.0:
        return
    half = math.sqrt(beyond)
    for reach in (along - half, along + half):
        point = Point(line.start.x + reach * ux, line.start.y + reach * uy)
        if -ON_SEGMENT <= reach <= span + ON_SEGMENT and arc.covers(arc.angle_of(point)):
            yield point


def _arc_arc(a: Arc, b: Arc) -> Iterator[Point]:
    span = distance(a.centre, b.centre)
    if span == 0.0 or span > a.radius + b.radius or span < abs(a.radius - b.radius):
        return
    along = (span**2 + a.radius**2 - b.radius**2) / (2 * span)
    half = math.sqrt(max(0.0, a.radius**2 - along**2))
    ux, uy = (b.centre.x - a.centre.x) / span, (b.centre.y - a.centre.y) / span
    for side in (half, -half):
        point = Point(a.centre.x + along * ux - side * uy, a.centre.y + along * uy + side * ux)
        if a.covers(a.angle_of(point)) and b.covers(b.angle_of(point)):
            yield point
