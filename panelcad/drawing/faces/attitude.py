"""Attitude indicator with a moving card: blue above, brown below, bank marks at 10, 20, 30, 60 and 90 degrees."""

from panelcad.drawing.display import Group, LinearGradient, Node, Stop
from panelcad.drawing.faces.altimeter import setting_knob
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import DIAL, EARTH, EARTH_LOW, LEGEND, ORANGE, SHADOW, SKY, SKY_TOP, WHITE
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, ring, shape, stroke, strokes
from panelcad.drawing.faces.parts import bezel, knob, round_glass, window
from panelcad.geometry.contour import circle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line, polyline
from panelcad.model.flight import Flight

_PITCH = 0.0195
"""Of the radius, for one degree."""
_BANKS = (10, 20, 30, 60, 90)


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    centre, r = frame.centre, frame.window_radius
    return (
        *bezel(frame),
        *window(centre, r, DIAL),
        Group((card(centre, r, flight),), layer=LEGEND, clip=circle(centre, 2 * r)),
        Group(bank_ring(centre, r, flight), layer=LEGEND),
        Group(aeroplane(centre, r)),
        round_glass(centre, r),
        *knob(setting_knob(frame), 0.14 * r, None),
    )


def card(centre: Point, r: float, flight: Flight) -> Group:
    """Sky, earth and pitch marks, turned against the bank and moved down as the nose goes up."""
    lift = -flight.pitch * _PITCH * r
    sky = LinearGradient(Point(0, lift + 1.1 * r), Point(0, lift), (Stop(0.0, SKY_TOP), Stop(1.0, SKY)))
    earth = LinearGradient(Point(0, lift), Point(0, lift - 1.1 * r), (Stop(0.0, EARTH), Stop(1.0, EARTH_LOW)))
    reach = 2.2 * r
    ladder = [
        line(Point(-half * r, lift + pitch * _PITCH * r), Point(half * r, lift + pitch * _PITCH * r))
        for pitch in (-20, -15, -10, -5, 5, 10, 15, 20)
        for half in ((0.26,) if pitch % 10 == 0 else (0.13,))
    ]
    nodes = (
        box(Box(-reach, lift, 2 * reach, reach), sky),
        box(Box(-reach, lift - reach, 2 * reach, reach), earth),
        strokes(ladder, WHITE, 0.022 * r),
        stroke(Point(-reach, lift), Point(reach, lift), WHITE, 0.03 * r),
    )
    return Group(nodes, placement=Placement(centre.x, centre.y, flight.bank))


def bank_ring(centre: Point, r: float, flight: Flight) -> tuple[Node, ...]:
    """The ring that turns with the card and bears the bank marks, and the fixed index above it."""
    turn = -flight.bank
    both = [a * side for a in _BANKS for side in (-1, 1)]
    long = [line(clock(centre, 0.97 * r, turn + a), clock(centre, 0.83 * r, turn + a)) for a in both if abs(a) >= 30]
    short = [line(clock(centre, 0.97 * r, turn + a), clock(centre, 0.88 * r, turn + a)) for a in both if abs(a) < 30]
    zero = [clock(centre, radius * r, turn + a) for radius, a in ((0.83, 0.0), (0.97, -4.5), (0.97, 4.5))]
    index = [clock(centre, radius * r, a) for radius, a in ((0.815, 0.0), (0.69, -5.0), (0.69, 5.0))]
    return (
        ring(centre, r, 0.82 * r, SHADOW._replace(opacity=70)),
        circle_line(centre, 0.82 * r, SHADOW._replace(opacity=120), 0.012 * r),
        strokes(long, WHITE, 0.026 * r),
        strokes(short, WHITE, 0.02 * r),
        shape(zero, WHITE),
        shape(index, ORANGE),
    )


def aeroplane(centre: Point, r: float) -> tuple[Node, ...]:
    """The fixed aeroplane: two wings and a dot, with the post that holds them."""
    wings = [
        polyline(*(centre.moved(s * x * r, y * r) for x, y in ((0.62, 0.0), (0.24, 0.0), (0.14, -0.09))))
        for s in (-1, 1)
    ]
    low = [polyline(*(Point(v.x + 0.02 * r, v.y - 0.035 * r) for v in wing.vertices)) for wing in wings]
    return (
        strokes(low, SHADOW._replace(opacity=80), 0.055 * r),
        shape(
            [clock(centre, 0.99 * r, a) for a in (166, 194)]
            + [centre.moved(-0.05 * r, -0.6 * r), centre.moved(0.05 * r, -0.6 * r)],
            DIAL,
        ),
        Group((strokes(wings, ORANGE, 0.055 * r), disc(centre, 0.045 * r, ORANGE)), layer=LEGEND),
    )
