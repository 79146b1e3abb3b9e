"""Navigators, compact and large: a moving map, what comes next, keys and knobs; some with radios on top."""

from panelcad.drawing.display import Face, Node
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import CYAN, GREY, LIME, MAGENTA, WHITE, ink
from panelcad.drawing.faces.marks import Box, box, word, words_left, words_right
from panelcad.drawing.faces.parts import cutout_knobs
from panelcad.drawing.faces.screen_map import moving_map
from panelcad.drawing.faces.unit import key_row, lit_screen
from panelcad.model.flight import Flight

_PLATE = ink("#14191e")


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """Map and radios between the knobs; a large navigator has its keys in a row below, a compact one beside."""
    area = Box.around(frame.outline)
    left, right = frame.between_knobs(2.5)
    tall = area.height > 0.5 * area.width
    low = area.y + (0.16 if tall else 0.08) * area.height
    screen = Box(left, low, right - left, area.top - 0.07 * area.height - low)
    keys = _below(area, screen) if tall else _beside(frame, screen)
    return (*lit_screen(frame, screen, _picture(screen, flight)), *keys, *cutout_knobs(frame))


def _picture(screen: Box, flight: Flight) -> tuple[Node, ...]:
    """Radios on the left, the way to go on the right, the map between, where the screen is wide."""
    wide = screen.width > 1.15 * screen.height
    side = 0.24 if wide else 0.0
    bar = screen.part(0.0, 0.0, 1.0, 0.13)
    chart = Box(screen.x + side * screen.width, bar.top, (1 - 2 * side) * screen.width, screen.height - bar.height)
    if not wide:
        chart = chart.part(0.0, 0.0, 1.0, 0.8)
    reach = 0.55 * min(chart.width, 1.2 * chart.height)
    nodes: list[Node] = [moving_map(chart, flight, chart.at(0.5, 0.34), reach)]
    if wide:
        nodes += radios(Box(screen.x, bar.top, chart.x - screen.x, chart.height), flight)
        nodes += way(Box(chart.right, bar.top, screen.right - chart.right, chart.height), flight)
    else:
        nodes += _way_row(Box(screen.x, chart.top, screen.width, screen.top - chart.top), flight)
    return (*nodes, *_pages(bar))


def radios(area: Box, flight: Flight) -> tuple[Node, ...]:
    """COM and NAV, active over standby."""
    (com, com_next), (nav, nav_next) = flight.com[0], flight.nav[0]
    nodes: list[Node] = [box(area, _PLATE)]
    for y, name, active, standby in ((0.52, "COM", com, com_next), (0.02, "NAV", nav, nav_next)):
        cell = area.part(0.08, y, 0.84, 0.46)
        height = min(0.2 * cell.height, 0.17 * cell.width)
        nodes += [
            words_left(name, cell.at(0.0, 0.88), 0.6 * height, GREY),
            words_left(active, cell.at(0.0, 0.56), height, LIME, Face.BOLD),
            words_left(standby, cell.at(0.0, 0.18), 0.85 * height, CYAN),
        ]
    return tuple(nodes)


def way(area: Box, flight: Flight) -> tuple[Node, ...]:
    """Where to, how far, which way, how fast."""
    rows = (
        ("TO", flight.next_fix, MAGENTA),
        ("NM", f"{flight.distance_nm:.1f}", WHITE),
        ("TRK", f"{flight.track:03.0f}°", WHITE),
        ("GS", f"{flight.ground_speed:.0f}", WHITE),
    )
    nodes: list[Node] = [box(area, _PLATE)]
    for i, (name, value, colour) in enumerate(rows):
        cell = area.part(0.08, 0.76 - 0.245 * i, 0.84, 0.22)
        height = min(0.42 * cell.height, 0.15 * cell.width)
        nodes += [
            words_left(name, cell.at(0.0, 0.5), 0.75 * height, GREY),
            words_right(value, cell.at(1.0, 0.5), height, colour, Face.BOLD),
        ]
    return tuple(nodes)


def _way_row(area: Box, flight: Flight) -> tuple[Node, ...]:
    height = min(0.3 * area.height, 0.06 * area.width)
    return (
        box(area, _PLATE),
        words_left(flight.next_fix, area.at(0.05, 0.5), height, MAGENTA, Face.BOLD),
        word(f"{flight.distance_nm:.1f} NM", area.at(0.52, 0.5), height, WHITE),
        words_right(f"{flight.ground_speed:.0f} KT", area.at(0.96, 0.5), height, WHITE),
    )


def _pages(bar: Box) -> tuple[Node, ...]:
    """The names of the pages along the bottom of the screen; the map is open."""
    names = ("MAP", "ROUTE", "NEAREST", "SETUP")
    nodes: list[Node] = [box(bar, ink("#232a31"))]
    for i, name in enumerate(names):
        cell = bar.part(i / len(names), 0.0, 1 / len(names), 1.0)
        if i == 0:
            nodes.append(box(cell, ink("#3d5f86")))
        nodes.append(word(name, cell.centre, min(0.36 * bar.height, 0.1 * cell.width), WHITE))
    return tuple(nodes)


_KEYS = ("DIRECT", "PAGE", "CLEAR", "ENTER")


def _below(area: Box, screen: Box) -> tuple[Node, ...]:
    high = min(0.6 * (screen.y - area.y), 9.0)
    wide = min(0.8 * screen.width, 110.0)
    return key_row(Box(screen.centre.x - wide / 2, (area.y + screen.y - high) / 2, wide, high), _KEYS, 2.0)


def _beside(frame: Frame, screen: Box) -> tuple[Node, ...]:
    """Two keys above and two below the knobs, on either side."""
    area = Box.around(frame.outline)
    columns = ((area.x, screen.x), (screen.right, area.right))
    spots = [(x1, x2, y) for y in (0.76, 0.12) for x1, x2 in columns]
    rows = [
        Box(x1 + 0.14 * (x2 - x1), area.y + y * area.height, 0.72 * (x2 - x1), 0.12 * area.height)
        for x1, x2, y in spots
    ]
    return tuple(node for row, name in zip(rows, _KEYS, strict=True) for node in key_row(row, (name,), 1.6))
