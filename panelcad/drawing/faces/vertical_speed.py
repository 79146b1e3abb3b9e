"""Vertical speed indicator, in hundreds of feet a minute: zero at the left, climb above."""

from panelcad.drawing.display import Face, Node
from panelcad.drawing.faces.dial import Dial, PointerForm, Scale, gauge
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import WHITE
from panelcad.drawing.faces.marks import clock, shape, word
from panelcad.model.flight import Flight

_SCALE = Scale(
    ((-2000, 98), (-1000, 186), (-500, 226), (0, 270), (500, 314), (1000, 354), (2000, 442)),
)


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    dial = Dial(frame.centre, frame.window_radius, _SCALE)
    marks = (
        dial.ticks([v for v in range(-1000, 1001, 100) if v % 500], 0.95, 0.88, 0.014),
        dial.ticks((-1750, -1250, 1250, 1750), 0.95, 0.9, 0.013),
        dial.ticks((-2000, -1500, -1000, -500, 0, 500, 1000, 1500, 2000), 0.95, 0.81, 0.026),
        *dial.numbers((-1500, -1000, -500, 0, 500, 1000, 1500), 0.65, 0.14, _hundreds),
        word("20", clock(dial.centre, 0.6 * dial.radius, 90), 0.14 * dial.radius, WHITE, Face.BOLD),
        dial.title("VERTICAL SPEED", 0.34, 0.058),
        dial.title("100 FEET A MINUTE", -0.34, 0.048),
        _arrow(dial, 310, 1),
        _arrow(dial, 230, -1),
    )
    return gauge(frame, marks, (dial.pointer(flight.vertical_speed, PointerForm(tip=0.88)),))


def _hundreds(feet: float) -> str:
    return f"{abs(feet) / 100:g}"


def _arrow(dial: Dial, angle: float, way: float) -> Node:
    """A small triangle that points up for climb and down for descent."""
    at, size = clock(dial.centre, 0.4 * dial.radius, angle).moved(-0.22 * dial.radius, 0.0), 0.04 * dial.radius
    up = size if way > 0 else -size
    return shape((at.moved(-size, -up), at.moved(size, -up), at.moved(0.0, up)), WHITE)
