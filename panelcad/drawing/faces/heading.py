"""Heading indicator and bearing indicator: a turning compass card under a fixed aeroplane."""

from panelcad.drawing.display import Group, Node
from panelcad.drawing.faces.altimeter import setting_knob
from panelcad.drawing.faces.card import bug, card, lubber
from panelcad.drawing.faces.dial import PointerForm, pointer
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import DIAL, LEGEND, ORANGE, WHITE, YELLOW
from panelcad.drawing.faces.marks import shape
from panelcad.drawing.faces.parts import bezel, knob, round_glass, window
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """The heading indicator with its bug."""
    r = frame.window_radius
    at = Placement(frame.centre.x, frame.centre.y)
    marks = (
        card(frame.centre, 0.93 * r, flight.heading, 0.17),
        Group((bug(0.93 * r, flight.heading_bug - flight.heading, ORANGE),), placement=at),
        lubber(frame.centre, 0.93 * r, ORANGE),
        aeroplane(frame.centre, 0.4 * r),
    )
    return (*_under_glass(frame, marks), *_knobs(frame, 2))


def draw_bearing(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """The bearing indicator: the same card with a pointer to the station."""
    r = frame.window_radius
    marks = (card(frame.centre, 0.93 * r, flight.heading, 0.17), lubber(frame.centre, 0.93 * r, WHITE))
    form = PointerForm(tip=0.72, waist=0.5, half=0.05, root=0.025, tail=0.62, hub=0.08)
    needle = pointer(frame.centre, r, flight.bearing - flight.heading, form, YELLOW)
    return (*_under_glass(frame, marks, (needle,)), *_knobs(frame, 1))


def _under_glass(frame: Frame, marks: tuple[Node, ...], hands: tuple[Node, ...] = ()) -> tuple[Node, ...]:
    r = frame.window_radius
    return (
        *bezel(frame),
        *window(frame.centre, r, DIAL),
        Group(marks, layer=LEGEND),
        *hands,
        round_glass(frame.centre, r),
    )


def _knobs(frame: Frame, count: int) -> tuple[Node, ...]:
    left = setting_knob(frame)
    spots = [left, Point(2 * frame.centre.x - left.x, left.y)][:count]
    return tuple(node for spot in spots for node in knob(spot, 0.15 * frame.window_radius, None))


def aeroplane(centre: Point, size: float) -> Node:
    """A light aircraft seen from above, nose up."""
    half = (
        (0.0, 1.0),
        (0.09, 0.86),
        (0.1, 0.42),
        (0.92, 0.22),
        (0.92, 0.02),
        (0.1, 0.06),
        (0.07, -0.62),
        (0.34, -0.74),
        (0.34, -0.9),
        (0.0, -0.86),
    )
    right = [centre.moved(x * size, y * size) for x, y in half]
    left = [centre.moved(-x * size, y * size) for x, y in reversed(half[1:-1])]
    return shape([*right, *left], WHITE)
