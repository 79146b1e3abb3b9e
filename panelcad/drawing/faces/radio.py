"""Radios with their frequencies: COM, NAV, both in one, ADF, DME; and the transponder."""

from panelcad.drawing.display import Colour, Face, Node
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import CYAN, GREY, LIME, WHITE
from panelcad.drawing.faces.marks import Box, shape, words_left
from panelcad.drawing.faces.parts import bezel, cutout_knobs, double_knob
from panelcad.drawing.faces.unit import Margins, key_row, readout, screen_area
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

Field = tuple[str, str, Colour]


def number_of(frame: Frame) -> int:
    """0 for the first radio of its kind, 1 for the one whose name ends in 2."""
    return 1 if frame.label.rstrip().endswith("2") else 0


def draw_com(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    active, standby = flight.com[number_of(frame) % len(flight.com)]
    return _radio(frame, (("COM", active, LIME), ("STANDBY", standby, CYAN)))


def draw_nav(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    active, standby = flight.nav[number_of(frame) % len(flight.nav)]
    return _radio(frame, (("NAV", active, LIME), ("STANDBY", standby, CYAN)))


def draw_nav_com(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    i = number_of(frame)
    com, nav = flight.com[i % len(flight.com)], flight.nav[i % len(flight.nav)]
    fields = (("COM", com[0], LIME), ("STANDBY", com[1], CYAN), ("NAV", nav[0], LIME), ("STANDBY", nav[1], CYAN))
    return _radio(frame, fields)


def draw_adf(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    return _radio(frame, (("ADF", flight.adf, LIME), ("TIMER", flight.time[3:], CYAN)))


def draw_dme(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    minutes = flight.distance_nm / max(flight.ground_speed, 1.0) * 60
    fields = (
        ("NM", f"{flight.distance_nm:.1f}", LIME),
        ("KT", f"{flight.ground_speed:.0f}", CYAN),
        ("MIN", f"{minutes:.0f}", CYAN),
    )
    return _radio(frame, fields)


def _radio(frame: Frame, fields: tuple[Field, ...]) -> tuple[Node, ...]:
    """A window with its fields side by side between two knobs; keys below where there is height for them."""
    if frame.width < 1.6 * frame.height:
        return _upright(frame, fields)
    area = Box.around(frame.outline)
    left, right = frame.between_knobs(3.5)
    tall = frame.height > 0.28 * frame.width
    low = area.y + (0.38 if tall else 0.15) * area.height
    screen = Box(left, low, right - left, area.top - 0.15 * area.height - low)
    cells = [screen.part(i / len(fields), 0.0, 1 / len(fields), 1.0) for i in range(len(fields))]
    shown = tuple(node for cell, field in zip(cells, fields, strict=True) for node in _field(cell, field))
    keys = Box(screen.x, area.y + 0.12 * area.height, screen.width, 0.17 * area.height)
    return (
        *bezel(frame),
        *readout(screen, (*shown, *_swaps(screen, fields))),
        *(key_row(keys, ("SWAP", "STORE", "RECALL", "TEST"), 1.9) if tall else ()),
        *cutout_knobs(frame),
    )


def _field(cell: Box, field: Field) -> tuple[Node, ...]:
    name, value, colour = field
    height = min(0.44 * cell.height, 0.72 * cell.width / max(len(value), 4))
    return (
        words_left(name, cell.at(0.1, 0.83), min(0.14 * cell.height, 2.2), GREY),
        words_left(value, cell.at(0.1, 0.38), height, colour, Face.BOLD),
    )


def _swaps(screen: Box, fields: tuple[Field, ...]) -> tuple[Node, ...]:
    places = [i for i, field in enumerate(fields) if field[0] == "STANDBY"]
    return tuple(_swap(screen, i / len(fields)) for i in places)


def _swap(screen: Box, share: float) -> Node:
    """A small two-pointed arrow between active and standby."""
    at, size = screen.at(share, 0.38).moved(-0.01 * screen.width, 0.0), 0.07 * screen.height
    corners = ((-2, 0), (-1, 1), (-1, 0.3), (1, 0.3), (1, 1), (2, 0), (1, -1), (1, -0.3), (-1, -0.3), (-1, -1))
    return shape([at.moved(x * size, y * size) for x, y in corners], WHITE)


def _upright(frame: Frame, fields: tuple[Field, ...]) -> tuple[Node, ...]:
    """A radio in a small square or round place: fields one above the other, one knob below."""
    if frame.is_round or abs(frame.width - frame.height) < 0.1 * frame.width:
        screen = screen_area(frame, Margins(0.16, 0.16, 0.16, 0.4))
    else:
        screen = screen_area(frame, Margins(0.1, 0.1, 0.12, 0.3))
    rows = fields[:2]
    cells = [screen.part(0.0, 0.5 - 0.5 * i, 1.0, 0.5) for i in range(len(rows))]
    area = Box.around(frame.outline)
    r = 0.36 * (screen.y - area.y)
    own = cutout_knobs(frame) or double_knob(Point(frame.centre.x, (screen.y + area.y) / 2), r)
    shown = tuple(node for cell, field in zip(cells, rows, strict=True) for node in _field(cell, field))
    return (*bezel(frame), *readout(screen, shown), *own)


def draw_transponder(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """Code, mode and reported level; keys 0 to 7 where there is room."""
    level = round(flight.altitude / 100)
    if frame.width < 1.6 * frame.height:
        return _upright(frame, (("CODE", flight.squawk, LIME), ("ALT", f"{level:03d}", CYAN)))
    area = Box.around(frame.outline)
    left, right = frame.between_knobs(3.0)
    screen = Box(left + 34.0, area.y + 0.44 * area.height, right - left - 50.0, 0.42 * area.height)
    cells = (screen.part(0.0, 0.0, 0.5, 1.0), screen.part(0.5, 0.0, 0.25, 1.0), screen.part(0.75, 0.0, 0.25, 1.0))
    fields = (("CODE", flight.squawk, LIME), ("MODE", "ALT", WHITE), ("LEVEL", f"{level:03d}", CYAN))
    shown = tuple(node for cell, field in zip(cells, fields, strict=True) for node in _field(cell, field))
    row = Box(screen.x, area.y + 0.13 * area.height, screen.width, 0.22 * area.height)
    modes = (("ALT", "ON", left, screen.y), ("STBY", "OFF", left, row.y))
    pushed = tuple(node for a, b, x, y in modes for node in key_row(Box(x, y + 0.6, 31.0, row.height), (a, b), 1.9))
    beside = Box(screen.right + 2.0, row.y, right - screen.right - 2.0, row.height)
    return (
        *bezel(frame),
        *readout(screen, shown),
        *key_row(row, tuple("01234567"), 2.3),
        *pushed,
        *key_row(beside, ("IDENT",), 1.9),
        *key_row(beside._replace(y=screen.y + 0.6), ("VFR",), 1.9),
        *cutout_knobs(frame),
    )
