"""Breakers, jacks, outlets, power sockets, lamps, vents and push-pull controls."""

import re

from panelcad.drawing.display import Colour, Face, Group, Node, Path, RadialGradient, Stop
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import (
    BRASS,
    DARK,
    GLINT,
    GREEN,
    LEGEND,
    SCREEN,
    WHITE,
    ink,
)
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, grown, ring, strokes, word
from panelcad.drawing.faces.parts import bezel, knob, slanted, soft_shadow
from panelcad.drawing.faces.small_parts import darker, light_colour, lighter, nut, reach
from panelcad.geometry.contour import circle
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

_THROTTLE = ink("#26282b")


def draw_breaker(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A push-pull breaker with its rating in amperes."""
    c, r = frame.centre, reach(frame)
    cap = frame.spots[0][1] if frame.knobs else 0.6 * r
    shine = (Stop(0.0, ink("#4a4d52")), Stop(1.0, ink("#141517")))
    text = rating(frame.label)
    return (
        *nut(c, r),
        *soft_shadow(circle(c, 2 * cap), 1.5, 20),
        ring(c, cap, 0.9 * cap, WHITE),
        disc(c, 0.9 * cap, RadialGradient(c.moved(-0.25 * cap, 0.3 * cap), 1.1 * cap, shine)),
        Group((word(text, c, (0.62 if len(text) < 3 else 0.42) * cap, WHITE, Face.BOLD),), layer=LEGEND),
    )


def rating(label: str) -> str:
    """The amperes that a label states ('COM 1, 7.5 A'); empty where it states none."""
    found = re.search(r"(\d+(?:[.,]\d+)?)\s*A\b", label)
    return found.group(1).replace(",", ".") if found else ""


def draw_jack(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    c, r = frame.centre, reach(frame)
    return (
        *nut(c, r),
        ring(c, 0.6 * r, 0.4 * r, BRASS),
        disc(c, 0.4 * r, DARK),
        ring(c.moved(0.04 * r, -0.05 * r), 0.39 * r, 0.33 * r, GLINT._replace(opacity=40)),
    )


def draw_outlet(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A charging outlet with two sockets, in a round or a rectangular plate."""
    area, c = Box.around(frame.outline), frame.centre
    w = 0.5 * min(area.width, 1.2 * area.height)
    high = 0.17 * min(area.height, area.width)
    rows = (c.y + 0.6 * high, c.y - 1.6 * high)
    sockets = [Box(c.x - w / 2, y, w, high) for y in rows]
    tongues = [s.part(0.14, 0.36, 0.72, 0.28) for s in sockets]
    lamp = Group((disc(c.moved(0.0, 0.74 * reach(frame)), 0.06 * reach(frame), GREEN),), layer=SCREEN)
    return (
        *bezel(frame),
        *(box(s.inset(-0.4), ink("#6c7075"), 0.5) for s in sockets),
        *(box(s, DARK, 0.3) for s in sockets),
        *(box(t, ink("#e8e8e4")) for t in tongues),
        lamp,
    )


def draw_power_socket(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A round auxiliary power socket, its lid closed: a plain dark disc with a hinge above and a lip below."""
    c, r = frame.centre, reach(frame)
    lid = circle(c, 1.5 * r)
    shine = (Stop(0.0, ink("#43464a")), Stop(1.0, ink("#191a1c")))
    hinge = Box(c.x - 0.34 * r, c.y + 0.7 * r, 0.68 * r, 0.16 * r)
    lip = Box(c.x - 0.26 * r, c.y - 0.9 * r, 0.52 * r, 0.2 * r)
    return (
        *bezel(frame),
        *soft_shadow(lid, 1.2, 20),
        box(lip, ink("#2c2e31"), 0.06 * r),
        Path((lid,), RadialGradient(c.moved(-0.2 * r, 0.25 * r), 1.1 * r, shine)),
        circle_line(c, 0.6 * r, GLINT._replace(opacity=36), 0.4),
        box(hinge, ink("#5c6065"), 0.06 * r),
    )


def draw_lamp(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A lamp in its bezel, off as in a flight without trouble; the lens has the colour of its light."""
    c, r = frame.centre, reach(frame)
    colour = light_colour(frame)
    lens = RadialGradient(c.moved(-0.2 * r, 0.25 * r), 0.9 * r, (Stop(0.0, lighter(colour)), Stop(1.0, darker(colour))))
    return (
        *soft_shadow(circle(c, 2 * r), 1.2, 20),
        disc(c, r, ink("#9a9ea3")),
        ring(c, r, 0.86 * r, ink("#5c6065")),
        disc(c, 0.78 * r, DARK),
        disc(c, 0.72 * r, lens),
        disc(c.moved(-0.26 * r, 0.3 * r), 0.16 * r, GLINT._replace(opacity=110)),
    )


def draw_vent(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A round air vent with vanes around a movable eye, or slats in a long one."""
    if not frame.is_round:
        return _slats(frame)
    c, r = frame.centre, reach(frame)
    rim = circle(c, 2 * r)
    vanes = [line(clock(c, 0.8 * r, a), clock(c, 0.36 * r, a + 22)) for a in range(0, 360, 24)]
    return (
        Path((rim,), slanted(rim, ink("#4a4d52"), ink("#111214"))),
        disc(c, 0.86 * r, DARK),
        strokes(vanes, ink("#3b3e43"), 0.07 * r),
        ring(c, 0.86 * r, 0.8 * r, ink("#2a2c30")),
        *knob(c, 0.36 * r, None),
    )


def _slats(frame: Frame) -> tuple[Node, ...]:
    inner = grown(frame.outline, -2.0)
    area = Box.around(inner)
    count = max(2, int(area.height // 5))
    bars = [line(area.at(0.0, (i + 0.5) / count), area.at(1.0, (i + 0.5) / count)) for i in range(count)]
    pitch = area.height / count
    return (
        Path((frame.outline,), slanted(frame.outline, ink("#4a4d52"), ink("#111214"))),
        Path((inner,), DARK),
        Group((strokes(bars, ink("#34373b"), 0.5 * pitch),), clip=inner),
    )


def draw_pull(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A push-pull control: black for throttle, blue for the propeller, red for mixture."""
    c = frame.centre
    r = frame.spots[0][1] if frame.knobs else max(1.4 * reach(frame), 11.0)
    colour = _control_colour(frame.label)
    grip = circle(c, 2 * r)
    shine = (Stop(0.0, lighter(colour)), Stop(1.0, darker(colour)))
    notches = [line(clock(c, 0.99 * r, a), clock(c, 0.86 * r, a)) for a in range(0, 360, 30)]
    return (
        disc(c, reach(frame), ink("#7d8186")),
        *soft_shadow(grip, 9.0, 18),
        Path((grip,), RadialGradient(c.moved(-0.3 * r, 0.35 * r), 1.3 * r, shine)),
        *((strokes(notches, darker(colour), 0.06 * r),) if colour != _THROTTLE else ()),
        circle_line(c, 0.8 * r, GLINT._replace(opacity=30), 0.4),
    )


def _control_colour(label: str) -> Colour:
    text = label.casefold()
    if "mixture" in text:
        return ink("#b5271f")
    if "prop" in text:
        return ink("#2457a6")
    return _THROTTLE
