"""Engine displays: two arcs for power, bars for temperatures and pressures, cylinders as columns, fuel."""

from panelcad.drawing.display import Colour, Face, Group, Node
from panelcad.drawing.faces.dial import Dial, Scale
from panelcad.drawing.faces.engine_gauges import (
    FUEL_FLOW,
    FUEL_LEFT,
    FUEL_RIGHT,
    MANIFOLD,
    OIL_PRESSURE,
    OIL_TEMPERATURE,
    TACHOMETER,
    VOLTS,
    Kind,
)
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, CYAN, GREEN, GREY, LIME, RED, SCREEN, WHITE, YELLOW, ink
from panelcad.drawing.faces.marks import Box, box, shape, stroke, word, words_left, words_right
from panelcad.drawing.faces.parts import bezel, cutout_knobs, round_glass, window
from panelcad.drawing.faces.unit import display_keys, lit_screen, screen_above_knobs
from panelcad.geometry.contour import circle
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

_BARS = (OIL_TEMPERATURE, OIL_PRESSURE, FUEL_FLOW, VOLTS, FUEL_LEFT, FUEL_RIGHT)


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A rectangular engine display, upright, wide or a narrow strip."""
    screen = screen_above_knobs(frame)
    if screen.width > 1.15 * screen.height:
        parts = (screen.part(0, 0, 0.36, 1), screen.part(0.36, 0, 0.34, 1), screen.part(0.7, 0, 0.3, 1))
    else:
        parts = (screen.part(0, 0.66, 1, 0.34), screen.part(0, 0.3, 1, 0.36), screen.part(0, 0, 1, 0.3))
    picture = (*_power(parts[0], flight), *_bars(parts[1], flight), *_columns(parts[2], flight))
    return (*lit_screen(frame, screen, picture), *display_keys(frame, screen), *cutout_knobs(frame))


def draw_round(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A round engine monitor: cylinders as columns, the rest in figures."""
    r, c = frame.window_radius, frame.centre
    area = Box(c.x - 0.66 * r, c.y - 0.62 * r, 1.32 * r, 1.3 * r)
    picture = (*_columns(area.part(0, 0.3, 1, 0.7), flight), *_figures(area.part(0, 0, 1, 0.3), flight))
    return (
        *bezel(frame),
        *window(c, r, BLACK),
        Group(picture, layer=SCREEN, clip=circle(c, 2 * r)),
        round_glass(c, r),
        *cutout_knobs(frame),
    )


def _figures(area: Box, flight: Flight) -> tuple[Node, ...]:
    engine = flight.engine
    rows = (("RPM", f"{engine.rpm:.0f}"), ("GAL/H", f"{engine.fuel_flow_gph:.1f}"))
    return tuple(
        node
        for i, (name, value) in enumerate(rows)
        for node in (
            words_left(name, area.at(0.06, 0.72 - 0.44 * i), 0.18 * area.height, GREY),
            words_right(value, area.at(0.94, 0.72 - 0.44 * i), 0.25 * area.height, LIME, Face.BOLD),
        )
    )


def _power(area: Box, flight: Flight) -> tuple[Node, ...]:
    """Manifold pressure and engine speed as arcs, side by side or one above the other."""
    across = area.width > area.height
    if across:
        halves = (area.part(0, 0, 0.5, 1), area.part(0.5, 0, 0.5, 1))
    else:
        halves = (area.part(0, 0.5, 1, 0.5), area.part(0, 0, 1, 0.5))
    texts = (f"{flight.engine.manifold_in_hg:.1f}", f"{flight.engine.rpm:.0f}")
    return tuple(
        node
        for half, kind, text in zip(halves, (MANIFOLD, TACHOMETER), texts, strict=True)
        for node in _arc(half, kind, text, flight)
    )


def _arc(area: Box, kind: Kind, text: str, flight: Flight) -> tuple[Node, ...]:
    r = 0.42 * min(area.width, area.height)
    centre = area.at(0.5, 0.47)
    dial = Dial(centre, r, Scale(((kind.numbered[0], -115), (kind.numbered[-1], 115))))
    at = dial.scale.angle(kind.value(flight))
    tip = Dial(centre, r, Scale(((0, at - 6), (1, at), (2, at + 6))))
    return (
        dial.band(kind.numbered[0], kind.numbered[-1], 1.0, 0.86, ink("#3b4046")),
        *(dial.band(low, high, 1.0, 0.86, GREEN) for low, high in kind.green),
        dial.ticks(kind.red, 1.05, 0.8, 0.06, RED),
        shape((tip.at(1, 0.9), tip.at(0, 0.66), tip.at(2, 0.66)), WHITE),
        word(text, centre, 0.32 * r, LIME, Face.BOLD),
        word(f"{kind.title} {kind.unit}".replace(" × 100", ""), centre.moved(0.0, -0.62 * r), 0.16 * r, GREY),
    )


def _bars(area: Box, flight: Flight) -> tuple[Node, ...]:
    """One row a value: its name, a bar with its ranges, a pointer, the figure."""
    pitch = area.height / (len(_BARS) + 0.3)
    rows = [Box(area.x, area.top - (i + 1.1) * pitch, area.width, pitch) for i in range(len(_BARS))]
    return tuple(node for row, kind in zip(rows, _BARS, strict=True) for node in _bar(row, kind, flight))


def _bar(row: Box, kind: Kind, flight: Flight) -> tuple[Node, ...]:
    low, high = kind.numbered[0], kind.numbered[-1]
    track = row.part(0.06, 0.12, 0.88, 0.16)

    def x(value: float) -> float:
        return track.x + (min(max(value, low), high) - low) / (high - low) * track.width

    def piece(a: float, b: float, colour: Colour) -> Node:
        return box(Box(x(a), track.y, x(b) - x(a), track.height), colour)

    value = kind.value(flight)
    tip, size = x(value), 0.2 * row.height
    height = min(0.26 * row.height, 0.05 * row.width)
    pointer = (
        Point(tip, track.y + 0.2 * size),
        Point(tip - size, track.top + size),
        Point(tip + size, track.top + size),
    )
    return (
        box(track, ink("#3b4046")),
        *(piece(a, b, GREEN) for a, b in kind.green),
        *(piece(a, b, YELLOW) for a, b in kind.yellow),
        *(stroke(Point(x(v), track.y - 0.3), Point(x(v), track.top + 0.3), RED, 0.7) for v in kind.red),
        shape(pointer, WHITE),
        words_left(kind.title, row.at(0.06, 0.72), height, GREY),
        words_right(_value(kind, value, flight), row.at(0.94, 0.72), 1.15 * height, WHITE, Face.BOLD),
    )


def _value(kind: Kind, value: float, flight: Flight) -> str:
    if kind in {FUEL_LEFT, FUEL_RIGHT}:
        return f"{value * flight.fuel_tank_gal:.1f} GAL"
    digits = 0 if kind.numbered[-1] > 60 else 1
    return f"{value:.{digits}f} {kind.unit}"


def _columns(area: Box, flight: Flight) -> tuple[Node, ...]:
    """Cylinder head and exhaust temperatures, a pair of columns for each cylinder."""
    engine = flight.engine
    count = max(len(engine.cylinder_f), 1)
    field = area.part(0.08, 0.2, 0.84, 0.6)
    pitch = field.width / count
    height = min(0.055 * area.height, 0.045 * area.width)
    nodes: list[Node] = [
        words_left("EXHAUST °F", area.at(0.08, 0.92), height, CYAN),
        words_right("CYL HEAD °F", area.at(0.92, 0.92), height, LIME),
    ]
    for i, (head, gas) in enumerate(zip(engine.cylinder_f, engine.exhaust_f, strict=False)):
        x = field.x + i * pitch
        for j, (share, colour) in enumerate((((gas - 800) / 800, CYAN), ((head - 100) / 400, LIME))):
            column = Box(x + (0.14 + 0.38 * j) * pitch, field.y, 0.32 * pitch, field.height)
            nodes.append(box(column, ink("#24282d")))
            nodes.append(box(column._replace(height=max(0.02, min(1.0, share)) * column.height), colour))
        nodes.append(word(f"{i + 1}", Point(x + 0.48 * pitch, area.at(0, 0.1).y), 1.2 * height, WHITE))
    limit = field.y + 0.9 * field.height
    nodes.append(stroke(Point(field.x, limit), Point(field.right, limit), RED, 0.4))
    return tuple(nodes)
