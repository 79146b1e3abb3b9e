"""An outline that is being drawn point by point: an open course of lines, arcs and rounded corners.

Points are numbered from 1 as they are drawn. Every step gives a course that neither crosses nor touches itself, or
raises `EditRefused`. Lengths in mm; a bulge is tan(sweep / 4), positive counter-clockwise.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from panelcad.editing.outline import outline_of, refuse_crossing
from panelcad.editing.refusal import edit
from panelcad.editing.sharp_outline import corners_of, rounded_pair
from panelcad.errors import EditRefused
from panelcad.geometry.crossing import crossings, nearest
from panelcad.geometry.curve import heading
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Segment, segment_between
from panelcad.model.shape import Outline

_SAME: Final = 1e-6
"""Points nearer than this, in mm, are one: stored lengths are whole nanometres."""
_TURNS_BACK: Final = -1 + 1e-9


@dataclass(frozen=True)
class Station:
    """A point of the course, the bulge of the edge that arrives there, and the radius its corner is rounded by."""

    at: Point
    bulge: float = 0.0
    radius: float = 0.0


@dataclass(frozen=True)
class Course:
    stations: tuple[Station, ...]

    @property
    def first(self) -> Point:
        return self.stations[0].at

    @property
    def last(self) -> Station:
        return self.stations[-1]


def begun(at: Point) -> Course:
    """The course whose first point this is."""
    return Course((Station(at),))


def go_on(course: Course, at: Point, bulge: float = 0.0) -> Course:
    """The course with another point. Raises `EditRefused` where the edge would cross or touch what is drawn."""
    if distance(course.last.at, at) < _SAME:
        raise EditRefused("The next point is where the last one is.")
    edge = segment_between(course.last.at, at, bulge)
    _refuse_meeting(edges(course), edge)
    grown = Course((*course.stations, Station(at, bulge)))
    drawn(grown)
    return grown


def with_radius(course: Course, radius: float) -> Course:
    """The corner at the last point rounded by this radius, 0 for a sharp one; the next edge makes that corner."""
    if radius < 0:
        raise EditRefused("A radius that is not negative is expected.")
    return Course((*course.stations[:-1], replace(course.last, radius=radius)))


def taken_back(course: Course) -> Course | None:
    """The course without its last point; None where it was the only one."""
    return Course(course.stations[:-1]) if len(course.stations) > 1 else None


def drawn(course: Course) -> tuple[Segment, ...]:
    """The lines and arcs drawn so far, corners rounded. Raises `EditRefused` where an edge is too short for that."""
    return tuple(_rounded(course, edges(course)))


def edges(course: Course) -> tuple[Segment, ...]:
    """From point to point, as if every corner were sharp."""
    return tuple(segment_between(a.at, b.at, b.bulge) for a, b in pairwise(course.stations))


@dataclass(frozen=True)
class Foreseen:
    """What another edge would make of the course: what stands, and what it brings with its rounded corners."""

    standing: tuple[Segment, ...]
    coming: tuple[Segment, ...]


def foreseen(course: Course, at: Point, bulge: float = 0.0) -> Foreseen:
    """The course with an edge to a place, to its first point too. Raises `EditRefused` as `go_on` and `closed` do."""
    edge = segment_between(course.last.at, at, bulge)
    closes = len(course.stations) > 1 and distance(at, course.first) < _SAME
    whole = _rounded(course, (*edges(course), edge))
    new = 2 if course.last.radius and len(course.stations) > 1 else 1
    standing, coming = whole[:-new], whole[-new:]
    if closes and course.stations[0].radius and standing:
        before, arc, after = _cornered(course, 0, coming[-1], standing[0])
        standing, coming = [after, *standing[1:]], [*coming[:-1], before, arc]
    return Foreseen(tuple(standing), tuple(coming))


@edit
def closed(course: Course, bulge: float = 0.0) -> Outline:
    """The outline that an edge back to the first point makes of the course, counter-clockwise."""
    known = edges(course)
    if len(known) < 2 and not (known and (bulge or course.last.bulge)):
        raise EditRefused("A closed outline needs three points, or two with an arc between them.")
    _refuse_meeting(known, segment_between(course.last.at, course.first, bulge), closes=True)
    found = foreseen(course, course.first, bulge)
    outline = outline_of(Outline(corners=corners_of((*found.standing, *found.coming))))
    refuse_crossing(outline)
    return outline


def _rounded(course: Course, sharp: tuple[Segment, ...]) -> list[Segment]:
    """The edges with the corners between them rounded."""
    found = list(sharp)
    for number in reversed(range(1, len(found))):
        found[number - 1 : number + 1] = _cornered(course, number, found[number - 1], found[number])
    return found


def _cornered(course: Course, number: int, before: Segment, after: Segment) -> list[Segment]:
    """Both edges and, where the corner between them is rounded, its arc."""
    radius = course.stations[number].radius
    if not radius:
        return [before, after]
    return list(rounded_pair(before, after, radius, f"point {number + 1}"))


def _refuse_meeting(known: Sequence[Segment], new: Segment, *, closes: bool = False) -> None:
    """Raises `EditRefused` where the new edge meets one that is drawn elsewhere than where it joins on."""
    for number, edge in enumerate(known, 1):
        joins = [new.start] if number == len(known) else []
        joins += [new.end] if closes and number == 1 else []
        if _meets(edge, new, joins):
            raise EditRefused(f"That edge would cross the one from point {number} to point {number + 1}.")


def _meets(edge: Segment, new: Segment, joins: list[Point]) -> bool:
    if not joins:
        return nearest(edge, new).distance < _SAME
    elsewhere = [at for at in crossings(edge, new) if all(distance(at, join) > _SAME for join in joins)]
    return bool(elsewhere) or any(_lies_on(edge, new, join) for join in joins)


def _lies_on(edge: Segment, new: Segment, join: Point) -> bool:
    """Whether the two leave the point that joins them along one another."""
    (ax, ay), (bx, by) = heading(edge, join), heading(new, join)
    outward = 1.0 if distance(edge.end, join) < _SAME else -1.0
    inward = 1.0 if distance(new.start, join) < _SAME else -1.0
    return (ax * bx + ay * by) * outward * inward <= _TURNS_BACK
