"""Turn coordinator: a small aeroplane that tilts with the rate of turn, and a ball in a curved tube."""

from panelcad.drawing.display import Face, Group, Node, RadialGradient, Stop
from panelcad.drawing.faces.dial import Dial, Scale, gauge
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, LEGEND, SHADOW, WHITE, ink
from panelcad.drawing.faces.marks import band, clock, disc, shape, strokes, word
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

_STANDARD_RATE = 3.0
"""Degrees a second: a full turn in two minutes."""
_TILT = 20.0
"""Clock degrees by which the aeroplane tilts at the standard rate; common practice."""


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    centre, r = frame.centre, frame.window_radius
    dial = Dial(centre, r, Scale(((-1.0, 0.0), (1.0, 1.0))))
    sides = [a for side in (90, 270) for a in (side, side + (_TILT if side == 90 else -_TILT))]
    marks = (
        strokes([line(clock(centre, 0.95 * r, a), clock(centre, 0.8 * r, a)) for a in sides], WHITE, 0.05 * r),
        word("L", clock(centre, 0.82 * r, 238), 0.13 * r, WHITE, Face.BOLD),
        word("R", clock(centre, 0.82 * r, 122), 0.13 * r, WHITE, Face.BOLD),
        dial.title("TURN COORDINATOR", 0.5, 0.062),
        dial.title("2 MIN", -0.72, 0.075),
        dial.title("NO PITCH INFORMATION", -0.86, 0.042),
    )
    tilt = max(-2.0, min(2.0, flight.turn_rate / _STANDARD_RATE)) * _TILT
    return gauge(frame, marks, (*tube(centre, r, flight.slip), _aeroplane(centre, r, tilt)))


def _aeroplane(centre: Point, r: float, tilt: float) -> Node:
    """An aeroplane seen from behind."""
    half = ((0.0, 0.24), (0.025, 0.085), (0.09, 0.06), (0.76, 0.02), (0.76, -0.02), (0.09, -0.05), (0.05, -0.1))
    points = [Point(x * r, y * r) for x, y in half] + [Point(-x * r, y * r) for x, y in reversed(half[1:])]
    shadow = [p.moved(0.03 * r, -0.04 * r) for p in points]
    tail = shape([Point(x * r, y * r) for x, y in ((-0.2, 0.125), (0.2, 0.125), (0.2, 0.15), (-0.2, 0.15))], WHITE)
    nodes = (shape(shadow, SHADOW._replace(opacity=90)), Group((shape(points, WHITE), tail), layer=LEGEND))
    return Group(nodes, placement=Placement(centre.x, centre.y + 0.06 * r, -tilt))


def tube(centre: Point, r: float, slip: float) -> tuple[Node, ...]:
    """The inclinometer: a curved tube with two lines and a black ball."""
    hub = centre.moved(0.0, 0.75 * r)
    reach = 1.2 * r
    glass = RadialGradient(hub, 1.32 * reach, (Stop(0.84, ink("#8f9a86")), Stop(0.93, ink("#e4e8d8"))))
    at = clock(hub, reach, 180 - slip * 16)
    lines = [line(clock(hub, 1.09 * reach, a), clock(hub, 0.91 * reach, a)) for a in (174, 186)]
    ball = RadialGradient(at.moved(-0.03 * r, 0.03 * r), 0.1 * r, (Stop(0.0, ink("#5a5d62")), Stop(1.0, BLACK)))
    return (
        band(hub, 1.1 * reach, 0.9 * reach, (158, 202), ink("#3a3d40")),
        Group((band(hub, 1.085 * reach, 0.915 * reach, (159, 201), glass),), layer=LEGEND),
        disc(at, 0.085 * r, ball),
        strokes(lines, BLACK, 0.022 * r),
    )
