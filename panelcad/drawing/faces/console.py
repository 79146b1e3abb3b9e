"""Audio panel, autopilot controller, engine display, annunciator row."""

from panelcad.drawing.display import Colour, Face, Group, Node
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import (
    AMBER,
    BLACK,
    BLUE,
    CYAN,
    GREEN,
    GREY,
    LIME,
    RED,
    SCREEN,
    WHITE,
    YELLOW,
    ink,
)
from panelcad.drawing.faces.marks import Box, box, disc, ring, word, words_left
from panelcad.drawing.faces.parts import bezel, cutout_knobs, double_knob, knob
from panelcad.drawing.faces.unit import key_row, readout
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

_UPPER = ("COM1", "COM2", "NAV1", "NAV2", "DME", "ADF", "MKR")
_LOWER = ("MIC1", "MIC2", "SPKR", "CREW", "ALL", "TEL", "MUS")
_HEIGHT_MODES = ("ALT", "VS", "LVL")
_MODES = ("AP", "HDG", "NAV", "APR", *_HEIGHT_MODES)
_MARKERS: tuple[tuple[str, Colour], ...] = (("O", BLUE), ("M", AMBER), ("I", WHITE))


def draw_audio(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """Receivers above, microphones and intercom below, three marker lamps, two volume knobs."""
    area = Box.around(frame.outline)
    if frame.width < frame.height:
        return _audio_upright(frame, area)
    left, right = frame.between_knobs(3.0)
    keys = Box(left + 6.0, area.y + 0.12 * area.height, right - left - 6.0, 0.76 * area.height)
    upper, lower = keys.part(0, 0.55, 1, 0.42), keys.part(0, 0.03, 1, 0.42)
    lamps = (
        node
        for i, lamp in enumerate(_MARKERS)
        for node in _marker(Point(left + 1.5, area.at(0, 0.76 - 0.26 * i).y), area, lamp)
    )
    return (
        *bezel(frame),
        *lamps,
        *key_row(upper, _UPPER, 1.9),
        *key_row(lower, _LOWER, 1.9),
        *_lit(upper, len(_UPPER), (0, 2)),
        *_lit(lower, len(_LOWER), (0, 3)),
        *cutout_knobs(frame),
    )


def _audio_upright(frame: Frame, area: Box) -> tuple[Node, ...]:
    names = [*_UPPER[:4], *_LOWER[:4]]
    rows = [area.part(0.14, 0.84 - 0.105 * i, 0.72, 0.085) for i in range(4)]
    r = min(0.2 * area.width, 0.11 * area.height)
    return (
        *bezel(frame),
        *(node for i, row in enumerate(rows) for node in key_row(row, (names[2 * i], names[2 * i + 1]), 1.9)),
        *_lit(rows[0], 2, (0,)),
        *_lit(rows[2], 2, (0,)),
        *(cutout_knobs(frame) or (*double_knob(area.at(0.5, 0.32), r), *knob(area.at(0.5, 0.12), 0.7 * r))),
    )


def _marker(at: Point, area: Box, lamp: tuple[str, Colour]) -> tuple[Node, ...]:
    name, colour = lamp
    r = min(0.09 * area.height, 2.2)
    return (
        ring(at, 1.25 * r, r, ink("#5d6166")),
        disc(at, r, colour.faded(0.55)),
        Group((word(name, at, r, BLACK, Face.BOLD),)),
    )


def _lit(row: Box, count: int, which: tuple[int, ...]) -> tuple[Node, ...]:
    """A small green bar above each key that is on."""
    pitch = row.width / count
    bars = [Box(row.x + (i + 0.3) * pitch, row.top - 0.16 * row.height, 0.4 * pitch, 0.08 * row.height) for i in which]
    return tuple(Group((box(bar, LIME, 0.2),), layer=SCREEN) for bar in bars)


def draw_autopilot(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """Engaged modes in a window, keys to choose them."""
    area = Box.around(frame.outline)
    if frame.width < 1.4 * frame.height:
        return _autopilot_square(frame, area, flight)
    left, right = frame.between_knobs(3.0)
    screen = Box(left, area.y + 0.5 * area.height, right - left, 0.36 * area.height)
    row = Box(left, area.y + 0.12 * area.height, right - left, 0.28 * area.height)
    return (
        *bezel(frame),
        *readout(screen, _engaged(screen, flight)),
        *key_row(row, _MODES, 2.0),
        *_lit(row, len(_MODES), tuple(_MODES.index(mode) for mode in ("AP", "HDG", flight.vertical_mode))),
        *cutout_knobs(frame),
    )


def _autopilot_square(frame: Frame, area: Box, flight: Flight) -> tuple[Node, ...]:
    screen = area.part(0.2, 0.58, 0.6, 0.24)
    rows = (area.part(0.2, 0.38, 0.6, 0.14), area.part(0.2, 0.2, 0.6, 0.14))
    text = (
        word("HDG", screen.at(0.25, 0.5), 0.3 * screen.height, LIME, Face.BOLD),
        word(f"{flight.altitude_bug:.0f}", screen.at(0.68, 0.5), 0.3 * screen.height, CYAN, Face.BOLD),
    )
    return (
        *bezel(frame),
        *readout(screen, text),
        *key_row(rows[0], ("AP", "HDG", "NAV"), 1.9),
        *key_row(rows[1], _HEIGHT_MODES, 1.9),
        *_lit(rows[0], 3, (0, 1)),
        *_lit(rows[1], len(_HEIGHT_MODES), (_HEIGHT_MODES.index(flight.vertical_mode),)),
    )


def _engaged(screen: Box, flight: Flight) -> tuple[Node, ...]:
    height = min(0.4 * screen.height, 0.04 * screen.width)
    return (
        words_left(f"AP  HDG  {flight.vertical_mode}", screen.at(0.05, 0.5), height, LIME, Face.BOLD),
        words_left(f"{flight.heading_bug:03.0f}°", screen.at(0.55, 0.5), height, CYAN, Face.BOLD),
        words_left(f"{flight.altitude_bug:.0f} FT", screen.at(0.75, 0.5), height, CYAN, Face.BOLD),
    )


def draw_annunciators(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """A row of legends that light up: red to act now, amber to know (14 CFR 23.1322)."""
    area = Box.around(frame.outline).inset(0.06 * min(frame.width, frame.height))
    legends = (("OIL", RED), ("VOLTS", RED), ("VAC", YELLOW), ("FUEL", YELLOW), ("PITOT", YELLOW), ("OK", GREEN))
    wide = max(1, min(len(legends), int(area.width // max(area.height * 0.9, 8.0))))
    cells = [area.part(i / wide, 0.0, 1 / wide, 1.0).inset(0.6) for i in range(wide)]
    return (
        *bezel(frame),
        *(node for cell, legend in zip(cells, legends, strict=False) for node in _cell(cell, *legend)),
    )


def _cell(cell: Box, name: str, colour: Colour) -> tuple[Node, ...]:
    dim = Colour(colour.red // 4 + 14, colour.green // 4 + 12, colour.blue // 4 + 10)
    return box(cell, dim, 0.6), word(name, cell.centre, min(0.3 * cell.height, 0.17 * cell.width), GREY, Face.BOLD)
