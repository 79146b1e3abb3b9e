"""Airspeed and altitude as arcs along the rim of a round display, with their values in boxes."""

from panelcad.drawing.display import Colour, Face, Node, Pen
from panelcad.drawing.faces.airspeed import arcs, lines
from panelcad.drawing.faces.dial import Dial, Scale
from panelcad.drawing.faces.inks import BLACK, CYAN, SHADOW, WHITE
from panelcad.drawing.faces.marks import Box, band, box, clock, frame_line, shape, word
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

_VEIL = SHADOW._replace(opacity=150)


def speed_arc(centre: Point, r: float, flight: Flight) -> tuple[Node, ...]:
    """The coloured arcs of 14 CFR 23.1545 on the left, rising clockwise."""
    top = flight.airspeeds.vne + 12
    dial = Dial(centre, r, Scale(((30.0, 218.0), (top, 328.0))))
    numbered = range(40, int(top), 40)
    return (
        band(centre, r, 0.64 * r, (214, 332), _VEIL),
        *arcs(dial, flight.airspeeds),
        *lines(dial, flight.airspeeds),
        dial.ticks(range(40, int(top), 10), 0.96, 0.88, 0.012),
        *dial.numbers(numbered, 0.705, 0.075),
        _index(centre, r, dial.scale.angle(flight.airspeed)),
        *_value(centre.moved(-0.46 * r, 0.06 * r), 0.12 * r, f"{flight.airspeed:.0f}"),
    )


def height_arc(centre: Point, r: float, flight: Flight) -> tuple[Node, ...]:
    """One thousand feet along the right rim, rising counter-clockwise, the height in figures beside it."""
    dial = Dial(centre, r, Scale(((0.0, 136.0), (1000.0, 32.0))))
    return (
        band(centre, r, 0.64 * r, (28, 140), _VEIL),
        dial.ticks(range(0, 1001, 100), 0.96, 0.88, 0.016),
        *dial.numbers(range(0, 1000, 200), 0.76, 0.08, lambda feet: f"{feet / 100:g}"),
        _index(centre, r, dial.scale.angle(flight.altitude % 1000)),
        *_value(centre.moved(0.46 * r, 0.06 * r), 0.12 * r, f"{round(flight.altitude / 10) * 10}"),
        *_value(centre.moved(0.43 * r, 0.235 * r), 0.085 * r, f"{flight.altitude_bug:.0f}", CYAN),
    )


def _index(centre: Point, r: float, angle: float) -> Node:
    corners = [clock(centre, share * r, angle + a) for share, a in ((0.97, 0.0), (0.8, -4.0), (0.8, 4.0))]
    return shape(corners, WHITE, Pen(BLACK, 0.012 * r))


def _value(at: Point, height: float, text: str, colour: Colour = WHITE) -> tuple[Node, ...]:
    wide = (0.62 * len(text) + 0.5) * height
    area = Box(at.x - wide / 2, at.y - 0.75 * height, wide, 1.5 * height)
    return (
        box(area, BLACK),
        frame_line(area, Pen(colour, 0.08 * height)),
        word(text, at, 0.8 * height, colour, Face.BOLD),
    )
