"""Plates and small instruments without a face of their own: blanks, placards, rail panels, connectors, panel meters."""

from panelcad.drawing.display import Face, Group, Node, Path, Text
from panelcad.drawing.faces.dial import Dial, Scale, gauge
from panelcad.drawing.faces.frame import Frame, ScrewSpot
from panelcad.drawing.faces.inks import (
    AMBER,
    BLACK,
    BRASS,
    DARK,
    GREEN,
    GREY,
    LEGEND,
    LIME,
    RED,
    SCREEN,
    STEEL,
    STEEL_DARK,
    WHITE,
    ink,
)
from panelcad.drawing.faces.marks import Box, box, disc, grown, ring, word
from panelcad.drawing.faces.parts import bezel, cutout_knobs, raised, screw, slanted
from panelcad.drawing.faces.turn import tube
from panelcad.drawing.faces.unit import Margins, key_row, readout, screen_area
from panelcad.drawing.lettering import text_width, wrapped
from panelcad.model.flight import Flight


def draw_blank(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A plate over an unused hole."""
    face = raised(frame.outline, ink("#4a4d52"), ink("#303236"))
    return (*face, *(node for spot in frame.screws for node in screw(spot)))


def draw_placard(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A small engraved plate: white on black, its words fitted to its size."""
    area = Box.around(frame.outline)
    return (
        Path((frame.outline,), slanted(frame.outline, ink("#2d2f32"), ink("#161719"))),
        Path((grown(frame.outline, -0.05 * area.height),), BLACK),
        Group(lettering(frame.label, area.inset(0.1 * area.height)), layer=LEGEND),
    )


def lettering(text: str, area: Box) -> tuple[Text, ...]:
    """The words in as many lines as fill the box best, centred."""
    for height in (0.42, 0.34, 0.27, 0.2, 0.16, 0.12, 0.09, 0.06):
        high = height * area.height
        lines = wrapped(text, area.width, high)
        fits = all(text_width(line, high) <= area.width for line in lines)
        if fits and len(lines) * 1.6 * high <= area.height:
            break
    top = (len(lines) - 1) * 0.8 * high
    return tuple(word(line, area.centre.moved(0.0, top - 1.6 * i * high), high, WHITE) for i, line in enumerate(lines))


def draw_rail_panel(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A control panel with quarter-turn fasteners at its sides."""
    area = Box.around(frame.outline)
    spots = frame.screws or tuple(ScrewSpot(area.at(x, y), 7.0) for x in (0.04, 0.96) for y in (0.18, 0.82))
    text = Group((word(frame.label.upper(), area.at(0.5, 0.84), min(2.6, 0.08 * area.height), WHITE),), layer=LEGEND)
    return (
        *raised(frame.outline, ink("#34363a"), ink("#202225")),
        *(node for spot in spots for node in screw(spot, ink("#9b9fa4"))),
        text,
    )


def draw_connector(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A row connector in its metal shell."""
    area = Box.around(frame.outline)
    inner = area.inset(0.18 * area.height)._replace(x=area.x + 0.2 * area.width, width=0.6 * area.width)
    count = max(4, int(inner.width // 2.77))
    pins = [inner.at((i + 0.5) / count, y) for y in (0.66, 0.34) for i in range(count - (0 if y > 0.5 else 1))]
    return (
        Path((frame.outline,), slanted(frame.outline, STEEL, STEEL_DARK)),
        box(inner, ink("#1d2b45"), 1.4),
        *(disc(pin, 0.5, BRASS) for pin in pins),
        *(node for spot in frame.screws for node in screw(spot)),
    )


def draw_coaxial(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    r = min(frame.width, frame.height) / 2
    c = frame.centre
    return (
        Path((frame.outline,), slanted(frame.outline, STEEL, STEEL_DARK)),
        ring(c, 0.7 * r, 0.5 * r, ink("#9fa3a8")),
        disc(c, 0.5 * r, WHITE),
        disc(c, 0.12 * r, BRASS),
    )


def draw_meter(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A digital panel meter; the clock shows the time, the hour meter its hours, any other the bus voltage."""
    text = frame.label.casefold()
    value, unit = f"{flight.volts:.1f}", "V"
    if "clock" in text:
        value, unit = flight.time[:5], "UTC"
    elif "hour" in text:
        value, unit = "2416.3", "H"
    screen = screen_area(frame, Margins(0.09, 0.09, 0.16, 0.16))
    size = min(0.5 * screen.height, 12.0, 0.9 * screen.width / max(len(value) + 1, 4))
    shown = (
        word(value, screen.at(0.46, 0.5), size, LIME, Face.BOLD),
        word(unit, screen.at(0.9, 0.28), 0.4 * size, GREY),
    )
    return (*bezel(frame), *readout(screen, shown), *cutout_knobs(frame))


def draw_clock(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A round digital clock: time above, elapsed time below, two keys."""
    area = Box.around(frame.outline)
    screen = area.part(0.2, 0.42, 0.6, 0.32)
    shown = (
        word(flight.time[:5], screen.at(0.5, 0.62), 0.36 * screen.height, LIME, Face.BOLD),
        word(f"ET {flight.time[3:]}", screen.at(0.5, 0.18), 0.15 * screen.height, GREY),
    )
    keys = key_row(area.part(0.24, 0.22, 0.52, 0.11), ("SEL", "CTL"), 1.9)
    return (*bezel(frame), *readout(screen, shown), *keys)


def draw_gear(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """Landing gear position: three green lamps for down, a red one for in between."""
    c, r = frame.centre, 0.5 * min(frame.width, frame.height)
    spots = (c.moved(0.0, 0.42 * r), c.moved(-0.42 * r, -0.08 * r), c.moved(0.42 * r, -0.08 * r))
    lamps = tuple(node for at in spots for node in (disc(at, 0.2 * r, DARK), disc(at, 0.17 * r, GREEN)))
    moving = (disc(c.moved(0.0, -0.5 * r), 0.17 * r, DARK), disc(c.moved(0.0, -0.5 * r), 0.14 * r, ink("#5a1412")))

    return (*bezel(frame), Group((*lamps, *moving), layer=SCREEN))


def draw_slip(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A slip indicator of its own."""
    r = 0.62 * min(frame.width, 2.2 * frame.height)
    return (*bezel(frame), *tube(frame.centre.moved(0.0, 0.45 * r), r, flight.slip))


def draw_indicator(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """An instrument nobody has named: its name on a plain dial or plate."""
    if abs(frame.width - frame.height) > 0.2 * frame.width:
        return draw_plain(frame, flight)
    dial = Dial(frame.centre, frame.window_radius, Scale(((0.0, -130.0), (10.0, 130.0))))
    r = frame.window_radius
    area = Box(frame.centre.x - 0.6 * r, frame.centre.y - 0.25 * r, 1.2 * r, 0.5 * r)
    return gauge(frame, (dial.ticks(range(11), 0.95, 0.84, 0.02, GREY), *lettering(frame.label.upper(), area)))


def draw_plain(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A unit nobody has named: its bezel with its name."""
    area = Box.around(frame.outline)
    left, right = frame.between_knobs(2.0)
    field = Box(left, area.y + 0.3 * area.height, right - left, 0.4 * area.height)
    text = Group(lettering(frame.label.upper(), field), layer=LEGEND)
    return (*bezel(frame), text, *cutout_knobs(frame))


def draw_small_switch_plate(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A remote switch with three positions and a lamp, as for an emergency locator transmitter."""
    area = Box.around(frame.outline)
    names = ("ON", "ARMED", "TEST")
    height = min(0.1 * area.height, 0.11 * area.width, 2.4)
    legends = (word(n, area.at(0.72, 0.72 - 0.22 * i), height, WHITE) for i, n in enumerate(names))
    slot = area.part(0.28, 0.2, 0.16, 0.6)
    lamp = disc(area.at(0.72, 0.9), 0.5 * height, RED)
    title = word("ELT", area.at(0.36, 0.9), height, AMBER, Face.BOLD)
    return (
        *bezel(frame),
        box(slot.inset(-0.5), ink("#5a5e63"), 0.8),
        box(slot, DARK, 0.5),
        box(slot.part(-0.25, 0.38, 1.5, 0.24), ink("#c9ccd0"), 0.5),
        Group((*legends, title), layer=LEGEND),
        lamp,
    )
