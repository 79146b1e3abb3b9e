"""Small hardware on the panel: switches, breakers, jacks, outlets, lamps, vents, keys, pull controls."""

import re

from panelcad.drawing.display import Colour, Face, Group, Node, Path, RadialGradient, Stop
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import (
    AMBER,
    BLACK,
    BRASS,
    DARK,
    GLINT,
    GREEN,
    LEGEND,
    RED,
    SCREEN,
    STEEL,
    STEEL_DARK,
    WHITE,
    ink,
)
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, grown, ring, shape, strokes, word
from panelcad.drawing.faces.parts import bezel, knob, raised, slanted, soft_shadow
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

_THROTTLE = ink("#26282b")
_COLOURS = {
    "red": RED,
    "green": GREEN,
    "amber": AMBER,
    "yellow": AMBER,
    "blue": ink("#3f86e6"),
    "white": WHITE,
    "down": GREEN,
    "unsafe": RED,
    "warning": RED,
    "failure": RED,
    "fire": RED,
}
"""Words of a name and their colour: 14 CFR 23.1322 has red for warning, amber for caution, green for safe."""


def reach(frame: Frame) -> float:
    """Half the smaller side of what shows, in mm."""
    return min(frame.width, frame.height) / 2


def nut(centre: Point, half: float) -> tuple[Node, ...]:
    """A washer of radius `half` with a hexagon nut on it."""
    corners = [clock(centre, 0.97 * half, a) for a in range(15, 375, 60)]
    hexagon = closed_chain(tuple(Vertex(*corner) for corner in corners))
    washer = circle(centre, 2 * half)
    return (
        *soft_shadow(washer, 1.2, 20),
        Path((washer,), slanted(washer, ink("#a6aaaf"), ink("#6a6e73"))),
        Path((hexagon,), slanted(hexagon, STEEL, STEEL_DARK)),
        disc(centre, 0.72 * half, ink("#a9adb2")),
    )


def draw_toggle(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A bat-handled switch, up; the lever ends where the room it sweeps ends."""
    c, r = frame.centre, reach(frame)
    guard = () if frame.is_round else raised(frame.outline, ink("#c8372e"), ink("#8e1f18"))
    top = frame.levers[0].bounds[3] if frame.levers else c.y + 1.5 * r
    half = 0.26 * r
    tip = Point(c.x, top - 1.4 * half)
    lever = closed_chain(
        (
            Vertex(c.x - 0.8 * half, c.y),
            Vertex(c.x + 0.8 * half, c.y),
            Vertex(tip.x + 1.4 * half, tip.y, 1.0),
            Vertex(tip.x - 1.4 * half, tip.y),
        )
    )
    return (
        *guard,
        *nut(c, r),
        disc(c, 0.62 * r, ink("#2a2c2f")),
        *soft_shadow(lever, 3.0, 22),
        Path((lever,), slanted(lever, ink("#f2f3f4"), ink("#7b7f84"))),
        disc(tip.moved(-0.4 * half, 0.4 * half), 0.5 * half, GLINT._replace(opacity=120)),
    )


def draw_rocker(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A rocker pressed at its upper end."""
    area = Box.around(frame.outline)
    inner = area.inset(0.1 * min(area.width, area.height))
    upper, lower = inner.part(0.0, 0.5, 1.0, 0.5), inner.part(0.0, 0.0, 1.0, 0.5)
    mark = Group(
        (box(lower.part(0.3, 0.2, 0.4, 0.14), WHITE), circle_line(upper.at(0.5, 0.6), 0.08 * area.width, WHITE, 0.35)),
        layer=LEGEND,
    )
    return (
        *raised(frame.outline),
        box(upper, ink("#17181a"), 0.6),
        box(lower, ink("#35383c"), 0.6),
        box(lower.part(0.0, 0.86, 1.0, 0.14), ink("#4d5156")),
        mark,
    )


def draw_rotary(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A knob with a pointer and marks around it."""
    c = frame.centre
    r = frame.spots[0][1] / 1.55 if frame.knobs else max(reach(frame), 4.0)
    marks = [line(clock(c, 2.05 * r, a), clock(c, 1.75 * r, a)) for a in range(-120, 121, 40)]
    legends = Group((strokes(marks, WHITE, 0.1 * r),), layer=LEGEND)
    return (Path((frame.outline,), ink("#6a6e73")), legends, *knob(c, 1.55 * r))


def draw_push(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A round push button."""
    c, r = frame.centre, reach(frame)
    colour = _named_colour(frame.label, ink("#3a3d42"))
    cap = RadialGradient(c.moved(-0.3 * r, 0.3 * r), 1.3 * r, (Stop(0.0, _lighter(colour)), Stop(1.0, colour)))
    rim = circle(c, 2 * r)
    return (
        *soft_shadow(rim, 1.2, 20),
        Path((rim,), slanted(rim, ink("#8a8e93"), ink("#3c3f43"))),
        disc(c, 0.84 * r, DARK),
        disc(c, 0.78 * r, cap),
    )


def draw_legend_push(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A square push button with a lit legend."""
    area = Box.around(frame.outline)
    colour = _named_colour(frame.label, AMBER)
    face = area.inset(0.1 * area.width)
    text = word(_short(frame.label), face.centre, _fit(_short(frame.label), face), BLACK, Face.BOLD)
    return (*raised(frame.outline), Group((box(face, colour, 0.6), text), layer=SCREEN))


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


def draw_lamp(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A lamp in its bezel, off as in a flight without trouble; its colour is what its name says, else amber."""
    c, r = frame.centre, reach(frame)
    colour = _named_colour(frame.label, AMBER)
    lens = RadialGradient(
        c.moved(-0.2 * r, 0.25 * r), 0.9 * r, (Stop(0.0, _lighter(colour)), Stop(1.0, _darker(colour)))
    )
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


def draw_key_switch(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A key switch with its positions on the plate around it."""
    c, r = frame.centre, reach(frame)
    names = (("OFF", -90), ("R", -40), ("L", 0), ("BOTH", 42), ("START", 92))
    legends = [word(name, clock(c, 0.76 * r, a), 0.105 * r, WHITE, Face.BOLD) for name, a in names]
    slot = [clock(c, 0.4 * r, 42 + s) for s in (-9, 9)] + [clock(c, 0.4 * r, 222 + s) for s in (-9, 9)]
    barrel = circle(c, 1.04 * r)
    return (
        *soft_shadow(circle(c, 2 * r), 1.6, 20),
        disc(c, r, ink("#77797d")),
        disc(c, 0.96 * r, ink("#1a1b1d")),
        Path((barrel,), slanted(barrel, STEEL, STEEL_DARK)),
        shape(slot, DARK),
        Group(tuple(legends), layer=LEGEND),
    )


def draw_pull(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A push-pull control: black for throttle, blue for the propeller, red for mixture."""
    c = frame.centre
    r = frame.spots[0][1] if frame.knobs else max(1.4 * reach(frame), 11.0)
    colour = _control_colour(frame.label)
    grip = circle(c, 2 * r)
    shine = (Stop(0.0, _lighter(colour)), Stop(1.0, _darker(colour)))
    notches = [line(clock(c, 0.99 * r, a), clock(c, 0.86 * r, a)) for a in range(0, 360, 30)]
    return (
        disc(c, reach(frame), ink("#7d8186")),
        *soft_shadow(grip, 9.0, 18),
        Path((grip,), RadialGradient(c.moved(-0.3 * r, 0.35 * r), 1.3 * r, shine)),
        *((strokes(notches, _darker(colour), 0.06 * r),) if colour != _THROTTLE else ()),
        circle_line(c, 0.8 * r, GLINT._replace(opacity=30), 0.4),
    )


def _control_colour(label: str) -> Colour:
    text = label.casefold()
    if "mixture" in text:
        return ink("#b5271f")
    if "prop" in text:
        return ink("#2457a6")
    return _THROTTLE


def _named_colour(label: str, otherwise: Colour) -> Colour:
    said = set(label.casefold().split())
    return next((colour for name, colour in _COLOURS.items() if name in said), otherwise)


def _lighter(colour: Colour) -> Colour:
    return Colour(*(min(255, part + 70) for part in colour[:3]))


def _darker(colour: Colour) -> Colour:
    return Colour(*(round(part * 0.62) for part in colour[:3]))


def _short(label: str) -> str:
    return label.upper().split(",")[0][:10]


def _fit(text: str, area: Box) -> float:
    return min(0.3 * area.height, 1.1 * area.width / max(len(text), 3))
