"""A clock with hands, and a magnetic compass."""

from panelcad.drawing.display import Face, Group, LinearGradient, Node, Stop
from panelcad.drawing.faces.altimeter import setting_knob
from panelcad.drawing.faces.card import card
from panelcad.drawing.faces.dial import Dial, PointerForm, Scale, gauge, pointer
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.heading import aeroplane
from panelcad.drawing.faces.inks import BLACK, DIAL, LEGEND, ORANGE, WHITE, ink
from panelcad.drawing.faces.marks import Box, box, grown, strokes, word
from panelcad.drawing.faces.parts import box_glass, knob, raised, screw
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

_TURN = Scale(((0.0, 0.0), (60.0, 360.0)))


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    hours, minutes, seconds = (int(part) for part in flight.time.split(":"))
    c, r = frame.centre, frame.window_radius
    dial = Dial(c, r, _TURN)
    marks = (
        dial.ticks([m for m in range(60) if m % 5], 0.95, 0.9, 0.014),
        dial.ticks(range(0, 60, 5), 0.95, 0.84, 0.03),
        *dial.numbers(range(0, 60, 5), 0.67, 0.16, lambda minute: f"{int(minute / 5) or 12}"),
    )
    hour = PointerForm(tip=0.5, waist=0.36, half=0.06, root=0.03, tail=0.14, hub=0.09)
    minute = PointerForm(tip=0.82, waist=0.64, half=0.04, root=0.025, tail=0.14, hub=0.08)
    sweep = PointerForm(tip=0.9, waist=0.5, half=0.009, root=0.009, tail=0.24, hub=0.05)
    hands = (
        pointer(c, r, (hours % 12 + minutes / 60) * 30, hour),
        pointer(c, r, (minutes + seconds / 60) * 6, minute),
        pointer(c, r, seconds * 6, sweep, ORANGE),
    )
    return gauge(frame, marks, hands, knob(setting_knob(frame), 0.15 * r, None))


def draw_compass(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A vertical card in a round window, or a floating card seen through a flat one."""
    if abs(frame.width - frame.height) < 0.15 * frame.width:
        r = frame.window_radius
        marks: tuple[Node, ...] = (
            card(frame.centre, 0.95 * r, flight.heading, 0.18),
            aeroplane(frame.centre, 0.36 * r),
        )
        top = Dial(frame.centre, r, _TURN).ticks((0,), 1.0, 0.8, 0.03, ORANGE)
        return gauge(frame, (*marks, top))
    return _floating(frame, flight.heading)


def _floating(frame: Frame, heading: float) -> tuple[Node, ...]:
    area = Box.around(grown(frame.outline, -0.14 * frame.height))
    bowl = LinearGradient(
        area.at(0, 0.5), area.at(1, 0.5), (Stop(0.0, BLACK), Stop(0.5, ink("#2b2d30")), Stop(1.0, BLACK))
    )
    per_degree = area.width / 90
    steps = [int(heading) // 5 * 5 + d for d in range(-45, 50, 5)]
    spots = {a: area.centre.moved((a - heading) * -per_degree, 0.0) for a in steps}
    ticks = [
        line(p.moved(0, (0.12 if a % 10 else 0.02) * area.height), p.moved(0, 0.28 * area.height))
        for a, p in spots.items()
    ]
    figures = [
        word(_figure(a), spots[a].moved(0, -0.1 * area.height), 0.24 * area.height, WHITE, Face.BOLD)
        for a in steps
        if a % 30 == 0
    ]
    card_strip = Group((strokes(ticks, WHITE, 0.4), *figures), layer=LEGEND)
    lubber_line = strokes((line(area.at(0.5, 0.0), area.at(0.5, 1.0)),), ORANGE, 0.5)
    window = area.contour(0.12 * area.height)
    return (
        *raised(frame.outline),
        *(node for spot in frame.screws for node in screw(spot)),
        box(area.inset(-0.6), DIAL, 0.14 * area.height),
        Group((box(area, bowl), card_strip, lubber_line, box_glass(window)), clip=window),
    )


def _figure(angle: int) -> str:
    return {0: "N", 90: "E", 180: "S", 270: "W"}.get(angle % 360, f"{angle % 360 // 10}")
