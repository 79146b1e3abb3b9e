"""Switches: toggles, rockers, rotary controls, push buttons, the key switch."""

from panelcad.drawing.display import Face, Group, Node, Path, RadialGradient, Stop
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import (
    BLACK,
    DARK,
    GLINT,
    LEGEND,
    SCREEN,
    STEEL,
    STEEL_DARK,
    WHITE,
    ink,
)
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, shape, strokes, word
from panelcad.drawing.faces.parts import knob, raised, slanted, soft_shadow
from panelcad.drawing.faces.small_parts import light_colour, lighter, named_colour, nut, reach
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.flight import Flight


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
    colour = named_colour(frame.label, ink("#3a3d42"))
    cap = RadialGradient(c.moved(-0.3 * r, 0.3 * r), 1.3 * r, (Stop(0.0, lighter(colour)), Stop(1.0, colour)))
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
    colour = light_colour(frame)
    face = area.inset(0.1 * area.width)
    text = word(_short(frame.label), face.centre, _fit(_short(frame.label), face), BLACK, Face.BOLD)
    return (*raised(frame.outline), Group((box(face, colour, 0.6), text), layer=SCREEN))


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


def _short(label: str) -> str:
    return label.upper().split(",")[0][:10]


def _fit(text: str, area: Box) -> float:
    return min(0.3 * area.height, 1.1 * area.width / max(len(text), 3))
