"""Course deviation indicator: course card, a vertical and a horizontal bar, dots for full scale, a to-from arrow."""

from panelcad.drawing.display import Face, Group, Node
from panelcad.drawing.faces.altimeter import setting_knob
from panelcad.drawing.faces.card import card
from panelcad.drawing.faces.dial import gauge
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, LEGEND, SHADOW, WHITE, YELLOW, ink
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, shape, stroke, word
from panelcad.drawing.faces.parts import knob
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

_DOTS = 0.1
"""Of the radius, between two of five dots a side."""


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    centre, r = frame.centre, frame.window_radius
    marks = (
        card(centre, 0.9 * r, flight.course, 0.13),
        shape([clock(centre, s * r, a) for s, a in ((0.89, 0.0), (0.985, -3.6), (0.985, 3.6))], YELLOW),
        circle_line(centre, 0.075 * r, WHITE, 0.015 * r),
        *_dots(centre, r),
        *_to(centre, r),
        word("NAV", centre.moved(-0.4 * r, 0.28 * r), 0.065 * r, WHITE),
        word("GS", centre.moved(-0.4 * r, -0.3 * r), 0.065 * r, WHITE),
    )
    hands = (Group((*_bars(centre, r, flight),), layer=LEGEND),)
    return gauge(frame, marks, hands, knob(setting_knob(frame), 0.16 * r))


def _dots(centre: Point, r: float) -> tuple[Node, ...]:
    steps = [side * i * _DOTS for side in (-1, 1) for i in range(1, 6)]
    spots = [centre.moved(s * r, 0.0) for s in steps] + [centre.moved(0.0, s * r) for s in steps]
    return tuple(disc(spot, 0.018 * r, WHITE) for spot in spots)


def _bars(centre: Point, r: float, flight: Flight) -> tuple[Node, ...]:
    """The bars lie where the course and the glide path lie."""
    x, y = flight.course_deviation * 5 * _DOTS * r, flight.glide_deviation * 5 * _DOTS * r
    shadow = SHADOW._replace(opacity=90)
    across, up = 0.56 * r, 0.56 * r
    return (
        stroke(centre.moved(x + 0.02 * r, up), centre.moved(x + 0.02 * r, -up), shadow, 0.03 * r),
        stroke(centre.moved(-across, y - 0.02 * r), centre.moved(across, y - 0.02 * r), shadow, 0.03 * r),
        stroke(centre.moved(x, up), centre.moved(x, -up), YELLOW, 0.03 * r),
        stroke(centre.moved(-across, y), centre.moved(across, y), YELLOW, 0.03 * r),
    )


def _to(centre: Point, r: float) -> tuple[Node, ...]:
    area = Box(centre.x + 0.29 * r, centre.y + 0.2 * r, 0.22 * r, 0.17 * r)
    arrow = (area.at(0.5, 0.9), area.at(0.12, 0.15), area.at(0.88, 0.15))
    label = word("TO", area.at(0.5, -0.35), 0.06 * r, WHITE, Face.BOLD)
    return (box(area.inset(-0.012 * r), ink("#6f7378")), box(area, BLACK), shape(arrow, WHITE), label)
