"""The attitude of a flight display, behind its tapes.

Attitude in the middle, airspeed left, altitude right, heading below: the basic T of 14 CFR 23.1321(d). Colours after
AC 25-11B: white scales, cyan for what the pilot set, green for what is engaged, magenta for the way to fly, yellow and
red for caution and limits.
"""

from panelcad.drawing.display import Group, LinearGradient, Node, Stop
from panelcad.drawing.faces.inks import BLACK, EARTH, EARTH_LOW, SKY, SKY_TOP, WHITE, YELLOW
from panelcad.drawing.faces.marks import Box, box, clock, shape, stroke, strokes, word
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line, polyline
from panelcad.model.flight import Flight


def attitude(area: Box, flight: Flight, centre: Point, size: float) -> Group:
    """The attitude behind everything; `size` is the reach of its bank scale."""
    per_degree = size / 24
    lift = -flight.pitch * per_degree
    far = area.width + area.height
    sky = LinearGradient(Point(0, lift + 0.9 * far), Point(0, lift), (Stop(0.0, SKY_TOP), Stop(1.0, SKY)))
    earth = LinearGradient(Point(0, lift), Point(0, lift - 0.9 * far), (Stop(0.0, EARTH), Stop(1.0, EARTH_LOW)))
    moving = Group(
        (
            box(Box(-far, lift, 2 * far, far), sky),
            box(Box(-far, lift - far, 2 * far, far), earth),
            stroke(Point(-far, lift), Point(far, lift), WHITE, 0.016 * size),
            *_ladder(lift, per_degree, size),
        ),
        placement=Placement(centre.x, centre.y, flight.bank),
    )
    return Group((moving, *_bank_scale(centre, size, flight.bank), *_symbol(centre, size)), clip=area.contour())


def _ladder(lift: float, per_degree: float, size: float) -> tuple[Node, ...]:
    """Pitch lines each 5 degrees, those of each 10 longer and numbered."""
    nodes: list[Node] = []
    for pitch in (-20, -15, -10, -5, 5, 10, 15, 20):
        y = lift + pitch * per_degree
        if abs(y) > 0.78 * size:
            continue
        half = (0.2 if pitch % 10 == 0 else 0.1) * size
        nodes.append(stroke(Point(-half, y), Point(half, y), WHITE, 0.014 * size))
        if pitch % 10 == 0:
            figures = (word(f"{abs(pitch)}", Point(s * (half + 0.08 * size), y), 0.055 * size, WHITE) for s in (-1, 1))
            nodes.extend(figures)
    return tuple(nodes)


def _bank_scale(centre: Point, size: float, bank: float) -> tuple[Node, ...]:
    """The scale turns with the horizon, the index stays."""
    angles = [s * a for a in (10, 20, 30, 45, 60) for s in (-1, 1)]
    tracks = [
        line(clock(centre, 0.94 * size, a - bank), clock(centre, (1.02 if a % 30 == 0 else 0.985) * size, a - bank))
        for a in angles
    ]
    zero = [clock(centre, s * size, a - bank) for s, a in ((0.94, 0.0), (1.015, -3.0), (1.015, 3.0))]
    index = [clock(centre, s * size, a) for s, a in ((0.925, 0.0), (0.85, -3.4), (0.85, 3.4))]
    return strokes(tracks, WHITE, 0.014 * size), shape(zero, WHITE), shape(index, YELLOW)


def _symbol(centre: Point, size: float) -> tuple[Node, ...]:
    """The aeroplane: two wing bars and a square dot, yellow edged black."""
    wings = [polyline(*(centre.moved(s * x * size, y * size) for x, y in _WING)) for s in (-1, 1)]
    dot = Box(centre.x - 0.02 * size, centre.y - 0.02 * size, 0.04 * size, 0.04 * size)
    return (
        strokes(wings, BLACK, 0.06 * size),
        strokes(wings, YELLOW, 0.034 * size),
        box(dot.inset(-0.012 * size), BLACK),
        box(dot, YELLOW),
    )


_WING = ((0.62, 0.0), (0.3, 0.0), (0.3, -0.07))
