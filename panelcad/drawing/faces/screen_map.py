"""A moving map with the heading up: invented ground, water, an airfield, a zone and the way to the next fixes.

Symbols are those of ICAO Annex 4, plainly drawn: a triangle for a fix, a circle with a bar for an airfield.
"""

from panelcad.drawing.display import Cap, Colour, Face, Group, Node, Path, Pen
from panelcad.drawing.faces.heading import aeroplane
from panelcad.drawing.faces.inks import BLACK, CYAN, MAGENTA, WHITE, ink
from panelcad.drawing.faces.marks import Box, arc, box, circle_line, clock, shape, stroke, strokes, word, words_left
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line, polyline
from panelcad.model.flight import Flight

_LAND, _HILL, _PEAK, _WATER = ink("#1f3a22"), ink("#3d4a26"), ink("#5c4a2c"), ink("#173b66")


def moving_map(area: Box, flight: Flight, own: Point, reach: float) -> Group:
    """The map in `area`; the aeroplane at `own`, the range ring `reach` mm around it."""
    ground = Group(_ground(reach), placement=Placement(own.x, own.y, flight.heading))
    return Group(
        (
            box(area, _LAND),
            ground,
            *_rings(own, reach, flight),
            Group(_route(reach, flight), placement=Placement(own.x, own.y)),
            aeroplane(own, 0.11 * reach),
        ),
        clip=area.contour(),
    )


def _blob(points: tuple[tuple[float, float], ...], size: float, colour: Colour) -> Path:
    """A rounded patch of ground through these corners, each edge bulging outward."""
    return Path((closed_chain(tuple(Vertex(x * size, y * size, 0.22) for x, y in points)),), colour)


def _ground(reach: float) -> tuple[Node, ...]:
    """North up, about the aeroplane."""
    coast = ((-4.0, 0.5), (-1.1, 0.75), (-0.3, 1.5), (0.9, 1.3), (1.5, 2.2), (1.2, 4.0), (-4.0, 4.0))
    hills = ((0.2, -0.2), (0.7, -0.9), (1.7, -0.8), (2.3, -0.1), (1.6, 0.35), (0.8, 0.3))
    peaks = ((0.75, -0.35), (1.1, -0.65), (1.7, -0.5), (1.6, -0.05), (1.1, 0.0))
    river = polyline(
        *(Point(x * reach, y * reach) for x, y in ((-0.3, 1.45), (-0.2, 0.6), (-0.7, -0.1), (-0.5, -1.2), (-1.2, -2.6)))
    )
    road = polyline(*(Point(x * reach, y * reach) for x, y in ((-2.5, -1.4), (-0.9, -0.7), (0.5, -1.3), (2.6, -1.5))))
    zone = Point(-0.75 * reach, -0.75 * reach)
    return (
        _blob(hills, reach, _HILL),
        _blob(peaks, reach, _PEAK),
        Path((closed_chain(tuple(Vertex(x * reach, y * reach, -0.12) for x, y in reversed(coast))),), _WATER),
        strokes((river,), _WATER, 0.04 * reach, Cap.ROUND),
        strokes((road,), ink("#6b6f5c"), 0.018 * reach),
        Path(
            (circle(zone, 0.84 * reach),),
            ink("#4f8fe01c"),
            Pen(ink("#5b9bea"), 0.02 * reach, dashes=(0.06 * reach, 0.04 * reach)),
        ),
        *_airfield(zone, 0.05 * reach),
        *_airfield(Point(0.62 * reach, 0.66 * reach), 0.05 * reach),
    )


def _way(points: tuple[tuple[float, float], ...], reach: float) -> Track:
    return polyline(*(Point(x * reach, y * reach) for x, y in points))


def _airfield(at: Point, size: float) -> tuple[Node, ...]:
    return (
        circle_line(at, size, WHITE, 0.28 * size),
        stroke(at.moved(-0.8 * size, -0.8 * size), at.moved(0.8 * size, 0.8 * size), WHITE, 0.3 * size),
    )


def _rings(own: Point, reach: float, flight: Flight) -> tuple[Node, ...]:
    """A range ring with the bearings ahead on it."""
    ticks = [
        line(clock(own, reach, a - flight.heading), clock(own, 0.95 * reach, a - flight.heading))
        for a in range(0, 360, 10)
    ]
    figures = [
        word(f"{a // 10 or 36}", clock(own, 0.88 * reach, a - flight.heading), 0.07 * reach, WHITE)
        for a in range(0, 360, 30)
    ]
    return (
        strokes((arc(own, reach, -179.9, 179.9),), WHITE, 0.012 * reach),
        strokes(ticks, WHITE, 0.012 * reach),
        *figures,
        circle_line(own, 0.5 * reach, WHITE.faded(0.45), 0.01 * reach),
    )


def _route(reach: float, flight: Flight) -> tuple[Node, ...]:
    """The leg being flown in magenta and the next one in white, about the aeroplane, heading up."""
    here = Point(0.0, 0.0)
    fix = clock(here, 0.72 * reach, flight.track - flight.heading)
    behind = clock(here, 1.6 * reach, flight.track - flight.heading + 180)
    after = clock(fix, 1.3 * reach, flight.bearing - flight.heading)
    return (
        strokes((polyline(fix, after),), WHITE, 0.022 * reach),
        strokes((polyline(behind, fix),), MAGENTA, 0.03 * reach),
        *_fix(fix, reach, flight.next_fix),
        *_fix(fix.towards(after, 0.75 * reach), reach, flight.then_fix),
    )


def _fix(at: Point, reach: float, name: str) -> tuple[Node, ...]:
    size = 0.055 * reach
    corners = (at.moved(0, size), at.moved(-size, -0.7 * size), at.moved(size, -0.7 * size))
    label = words_left(name, at.moved(1.7 * size, 0.0), 0.075 * reach, CYAN, Face.BOLD)
    return shape(corners, BLACK, Pen(CYAN, 0.02 * reach)), label
