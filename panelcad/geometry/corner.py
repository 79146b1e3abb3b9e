"""A corner between two lines or arcs, rounded by a tangent arc or cut off by a straight line. Exact; lengths in mm."""

import math
from typing import NamedTuple

from panelcad.geometry.curve import aside, curve_crossings, heading
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import FULL_TURN, Arc, Line, Segment, segment_between

_STRAIGHT = 1e-9
_SMOOTH = 1e-4
_ON_IT = 1e-7
_SAME_ARC = 1e-4
"""How far, in mm, the ends of an arc may lie from those of the rounding that it is taken for."""


class Cornered(NamedTuple):
    """Where the first segment now ends and the second now begins, and the bulge of what joins them."""

    leaves: Point
    joins: Point
    bulge: float


def rounded(before: Segment, after: Segment, radius: float) -> Cornered:
    """The tangent arc of this radius in the corner where `before` ends and `after` starts.

    Raises ValueError where the segments run on straight, or are too short for the radius.
    """
    turn = _turn(before, after)
    side = math.copysign(radius, turn)
    found = [
        Cornered(leaves, joins, _bulge(centre, leaves, joins, turn))
        for centre in curve_crossings(aside(before, side), aside(after, side))
        for leaves, joins in ((_foot(before, centre), _foot(after, centre)),)
        if _is_within(before, leaves) and _is_within(after, joins)
    ]
    if not found:
        raise ValueError("the edges are too short for that radius")
    return min(found, key=lambda one: distance(one.leaves, before.end))


def rounded_pieces(before: Segment, after: Segment, radius: float) -> tuple[Segment, Segment, Segment]:
    """What is left of both segments, and the tangent arc of this radius between them. Raises as `rounded`."""
    corner = rounded(before, after, radius)
    return (
        segment_between(before.start, corner.leaves, trimmed(before, before.start, corner.leaves)),
        segment_between(corner.leaves, corner.joins, corner.bulge),
        segment_between(corner.joins, after.end, trimmed(after, corner.joins, after.end)),
    )


def sharp_corner(before: Segment, arc: Arc, after: Segment) -> Point | None:
    """Where the two segments would meet if the arc between them did not round their corner; None where it does not."""
    if abs(arc.sweep) >= math.pi or not (is_smooth(before, arc) and is_smooth(arc, after)):
        return None
    middle = arc.at(0.5)
    corner = min(curve_crossings(before, after), key=lambda at: distance(at, middle), default=None)
    if corner is None:
        return None
    try:
        again = rounded(lengthened(before, before.start, corner), lengthened(after, corner, after.end), arc.radius)
    except ValueError:
        return None
    strays = max(distance(again.leaves, arc.start), distance(again.joins, arc.end))
    return corner if strays < _SAME_ARC else None


def lengthened(segment: Segment, start: Point, end: Point) -> Segment:
    """The piece of the segment's whole line or circle between two points of it."""
    return segment_between(start, end, trimmed(segment, start, end))


def cut_off(before: Segment, after: Segment, leg: float) -> Cornered:
    """A straight line that takes `leg` mm off both segments, measured along them.

    Raises ValueError where the segments run on straight, or are too short.
    """
    _turn(before, after)
    if leg >= before.length or leg >= after.length:
        raise ValueError("the edges are too short for that chamfer")
    return Cornered(before.at(1 - leg / before.length), after.at(leg / after.length), 0.0)


def is_smooth(before: Segment, after: Segment) -> bool:
    """Whether the second runs on where the first ends, to 0.006°, which lengths in whole nanometres leave."""
    return abs(_sine(before, after)) < _SMOOTH


def bulge_through(start: Point, through: Point, end: Point) -> float:
    """The bulge of the arc from `start` to `end` that passes through a point; 0 where the three are in line."""
    ax, ay = start.x - through.x, start.y - through.y
    bx, by = end.x - through.x, end.y - through.y
    cross, dot = ax * by - ay * bx, ax * bx + ay * by
    if abs(cross) < _STRAIGHT:
        return 0.0
    return math.copysign(math.tan((math.pi - math.atan2(abs(cross), dot)) / 2), -cross)


def trimmed(segment: Segment, start: Point, end: Point) -> float:
    """The bulge of the piece of a segment between two of its points."""
    if isinstance(segment, Line):
        return 0.0
    turn = (segment.angle_of(end) - segment.angle_of(start)) % FULL_TURN
    return math.tan((turn if segment.sweep > 0 else turn - FULL_TURN) / 4)


def _turn(before: Segment, after: Segment) -> float:
    """Sine of the turn at the corner, positive to the left."""
    turn = _sine(before, after)
    if abs(turn) < _SMOOTH:
        raise ValueError("the edges run on without a corner")
    return turn


def _sine(before: Segment, after: Segment) -> float:
    (ax, ay), (bx, by) = heading(before, before.end), heading(after, after.start)
    return ax * by - ay * bx


def _bulge(centre: Point, leaves: Point, joins: Point, turn: float) -> float:
    ax, ay = leaves.x - centre.x, leaves.y - centre.y
    bx, by = joins.x - centre.x, joins.y - centre.y
    sweep = math.atan2(abs(ax * by - ay * bx), ax * bx + ay * by)
    return math.copysign(math.tan(sweep / 4), turn)


def _foot(segment: Segment, point: Point) -> Point:
    """The point of the segment's whole line or circle nearest to `point`."""
    if isinstance(segment, Arc):
        return segment.centre.towards(point, segment.radius)
    ux, uy = heading(segment, segment.start)
    along = (point.x - segment.start.x) * ux + (point.y - segment.start.y) * uy
    return segment.start.moved(along * ux, along * uy)


def _is_within(segment: Segment, point: Point) -> bool:
    return distance(segment.nearest(point), point) < _ON_IT
