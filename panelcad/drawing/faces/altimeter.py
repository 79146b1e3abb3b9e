"""Altimeter with three pointers and a setting window: 100 ft a division, 20 ft a mark."""

from panelcad.drawing.display import Face, Group, Node
from panelcad.drawing.faces.dial import Dial, PointerForm, Scale, gauge, pointer
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, LEGEND, WHITE, ink
from panelcad.drawing.faces.marks import Box, box, clock, shape, word
from panelcad.drawing.faces.parts import knob
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

_TURN = Scale(((0.0, 0.0), (10.0, 360.0)))


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    radius = frame.window_radius
    dial = Dial(frame.centre, radius, _TURN)
    marks = (
        dial.ticks([i / 5 for i in range(50) if i % 5], 0.95, 0.885, 0.013),
        dial.ticks(range(10), 0.95, 0.83, 0.024),
        *dial.numbers(range(10), 0.69, 0.17),
        dial.title("ALT", 0.42, 0.085),
        dial.title("FEET", 0.27, 0.06),
        *_setting(dial, flight),
    )
    hands = (
        _ten_thousands(dial, flight.altitude),
        pointer(frame.centre, radius, _turned(flight.altitude, 10_000), _SHORT),
        pointer(frame.centre, radius, _turned(flight.altitude, 1_000), _LONG),
    )
    return gauge(frame, marks, hands, knob(setting_knob(frame), 0.15 * radius, None))


_SHORT = PointerForm(tip=0.55, waist=0.42, half=0.075, root=0.03, tail=0.2, hub=0.1)
_LONG = PointerForm(tip=0.9, waist=0.8, half=0.028, root=0.02, tail=0.26, hub=0.09)


def _turned(altitude: float, feet_a_turn: float) -> float:
    """The clock angle of a pointer that turns once in so many feet."""
    return altitude % feet_a_turn / feet_a_turn * 360.0


def _ten_thousands(dial: Dial, altitude: float) -> Node:
    """The small triangle at the rim that turns once in 100,000 ft."""
    angle = _turned(altitude, 100_000)
    rim = 0.955 * dial.radius
    corners = (clock(dial.centre, radius, angle + a) for radius, a in ((rim * 0.9, 0), (rim, -4), (rim, 4)))
    return Group((shape(corners, WHITE),), layer=LEGEND)


def _setting(dial: Dial, flight: Flight) -> tuple[Node, ...]:
    """The altimeter setting, in inches of mercury, in its window on the right."""
    r = dial.radius
    area = Box(dial.centre.x + 0.36 * r, dial.centre.y - 0.075 * r, 0.31 * r, 0.15 * r)
    return (
        box(area.inset(-0.012 * r), ink("#777b80"), 0.02 * r),
        box(area, BLACK, 0.01 * r),
        word(f"{flight.setting_in_hg:.2f}", area.centre, 0.075 * r, WHITE, Face.BOLD),
    )


def setting_knob(frame: Frame) -> Point:
    """Where the setting knob stands: the first knob of the cutout, else over the screw at the lower left."""
    if frame.knobs:
        return frame.spots[0][0]
    lower_left = [spot.at for spot in frame.screws if spot.at.x < frame.centre.x and spot.at.y < frame.centre.y]
    if lower_left:
        return lower_left[0]
    x1, y1, _, _ = frame.outline.bounds
    reach = 0.13 * frame.width
    return Point(x1 + reach, y1 + reach)
