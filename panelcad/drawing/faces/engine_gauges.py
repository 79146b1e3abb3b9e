"""Round engine gauges: tachometer, manifold pressure, temperatures, pressures, fuel, electrical.

Coloured ranges as 14 CFR 23.1549 has them: green for normal, yellow for caution, a red line at a limit. The values are
invented for the demo; the aircraft's own limits come from its flight manual.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from panelcad.drawing.display import Face, Node
from panelcad.drawing.faces.dial import Dial, PointerForm, Scale, gauge, pointer
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, GREEN, RED, WHITE, YELLOW, ink
from panelcad.drawing.faces.marks import Box, box, stroke, word
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight

Range = tuple[float, float]


@dataclass(frozen=True)
class Kind:
    """What one gauge measures: title, unit, the values numbered, green, yellow and red, and what it shows."""

    title: str
    unit: str
    numbered: tuple[float, ...]
    value: Callable[[Flight], float]
    green: tuple[Range, ...] = ()
    yellow: tuple[Range, ...] = ()
    red: tuple[float, ...] = ()
    divisions: int = 2
    words: tuple[str, ...] = ()
    """What stands at the numbered values in place of their numbers."""


def _mean(values: tuple[float, ...]) -> float:
    return sum(values) / len(values) if values else 0.0


TACHOMETER = Kind(
    "RPM", "× 100", (0, 5, 10, 15, 20, 25, 30, 35), lambda f: f.engine.rpm / 100, ((19, 27),), (), (27,), 5
)
MANIFOLD = Kind(
    "MANIFOLD", "IN HG", (10, 15, 20, 25, 30, 35), lambda f: f.engine.manifold_in_hg, ((15, 25),), (), (), 5
)
FUEL_FLOW = Kind("FUEL FLOW", "GAL/H", (0, 5, 10, 15, 20), lambda f: f.engine.fuel_flow_gph, ((5, 14),), (), (18,), 5)
OIL_TEMPERATURE = Kind(
    "OIL TEMP", "°F", (50, 100, 150, 200, 250), lambda f: f.engine.oil_temperature_f, ((100, 245),), (), (245,), 2
)
OIL_PRESSURE = Kind(
    "OIL PRESS",
    "PSI",
    (0, 25, 50, 75, 100, 125),
    lambda f: f.engine.oil_pressure_psi,
    ((55, 95),),
    ((25, 55),),
    (25, 115),
)
FUEL_PRESSURE = Kind(
    "FUEL PRESS", "PSI", (0, 2, 4, 6, 8, 10), lambda f: f.engine.fuel_pressure_psi, ((0.5, 8),), (), (0.5, 8)
)
CYLINDER = Kind(
    "CYL HEAD", "°F", (100, 200, 300, 400, 500), lambda f: _mean(f.engine.cylinder_f), ((200, 460),), (), (500,), 4
)
EXHAUST = Kind("EXHAUST", "°F", (800, 1000, 1200, 1400, 1600), lambda f: _mean(f.engine.exhaust_f), (), (), (), 4)
LOAD = Kind("LOAD FACTOR", "G", (-2, 0, 2, 4, 6), lambda f: 1 / math.cos(math.radians(f.bank)), (), (), (-1.5, 3.8), 2)
COOLANT = Kind("COOLANT", "°C", (40, 60, 80, 100, 120, 140), lambda _f: 92.0, ((60, 115),), ((115, 120),), (120,))
FUEL = Kind("FUEL", "QTY", (0, 0.25, 0.5, 0.75, 1), lambda f: f.fuel_left, (), (), (0,), 2, ("E", "¼", "½", "¾", "F"))
FUEL_RIGHT = replace(FUEL, title="FUEL R", value=lambda f: f.fuel_right)
FUEL_LEFT = replace(FUEL, title="FUEL L")
SUCTION = Kind("SUCTION", "IN HG", (3, 4, 5, 6, 7), lambda _f: 5.0, ((4.5, 5.4),), (), (), 5)
VOLTS = Kind("VOLTS", "DC", (10, 12, 14, 16), lambda f: f.volts, ((13, 15),), ((12, 13),), (16,), 4)
AMPERES = Kind("AMPERES", "", (-60, -30, 0, 30, 60), lambda f: f.amperes, (), (), (), 3)
OUTSIDE_AIR = Kind("OUTSIDE AIR", "°C", (-40, -20, 0, 20, 40), lambda f: f.outside_c, (), (), (), 2)
CARBURETTOR = Kind("CARB TEMP", "°C", (-30, -15, 0, 15, 30), lambda _f: 11.0, ((5, 30),), ((-15, 5),), (), 3)


def draw(kind: Kind) -> Callable[[Frame, Flight], tuple[Node, ...]]:
    """A single gauge that fills its window."""

    def face(frame: Frame, flight: Flight) -> tuple[Node, ...]:
        dial = Dial(frame.centre, frame.window_radius, _sweep(kind, -130, 130))
        marks = (*_marks(dial, kind), dial.title(kind.title, -0.42, 0.085), dial.title(kind.unit, -0.6, 0.075))
        return gauge(frame, marks, (dial.pointer(kind.value(flight), PointerForm(tip=0.88)),))

    return face


def draw_pair(left: Kind, right: Kind) -> Callable[[Frame, Flight], tuple[Node, ...]]:
    """Two gauges in one window, back to back."""

    def face(frame: Frame, flight: Flight) -> tuple[Node, ...]:
        r = frame.window_radius
        halves = (_half(frame.centre, r, left, (212, 328)), _half(frame.centre, r, right, (148, 32)))
        marks = tuple(
            node for dial, kind in zip(halves, (left, right), strict=True) for node in _half_marks(dial, kind)
        )
        form = PointerForm(tip=0.82, waist=0.6, half=0.03, tail=0.12, hub=0.07)
        hands = tuple(
            pointer(d.centre, r * 0.9, d.scale.angle(k.value(flight)), form)
            for d, k in zip(halves, (left, right), strict=True)
        )
        middle = stroke(frame.centre.moved(0.0, 0.8 * r), frame.centre.moved(0.0, -0.8 * r), ink("#55595e"), 0.012 * r)
        return gauge(frame, (middle, *marks), hands)

    return face


def draw_four(kinds: tuple[Kind, Kind, Kind, Kind]) -> Callable[[Frame, Flight], tuple[Node, ...]]:
    """Four small gauges in one window."""

    def face(frame: Frame, flight: Flight) -> tuple[Node, ...]:
        r, c = frame.window_radius, frame.centre
        spots = [c.moved(x * 0.45 * r, (0.42 * y - 0.02) * r) for y in (1, -1) for x in (-1, 1)]
        dials = [Dial(spot, 0.38 * r, _sweep(kind, -75, 75)) for spot, kind in zip(spots, kinds, strict=True)]
        marks = tuple(node for dial, kind in zip(dials, kinds, strict=True) for node in _small_marks(dial, kind))
        form = PointerForm(tip=0.86, waist=0.6, half=0.045, root=0.03, tail=0.0, hub=0.13)
        hands = tuple(
            pointer(d.centre.moved(0.0, -0.2 * d.radius), d.radius, d.scale.angle(k.value(flight)), form)
            for d, k in zip(dials, kinds, strict=True)
        )
        return gauge(frame, marks, hands)

    return face


def draw_hours(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    """An hour meter: six drums in a window; what it counts is invented for the demo."""
    r, c = frame.window_radius, frame.centre
    drums = [Box(c.x + (i - 2.5) * 0.27 * r - 0.12 * r, c.y - 0.18 * r, 0.24 * r, 0.36 * r) for i in range(6)]
    digits = "002416"
    nodes: list[Node] = [box(Box(c.x - 0.84 * r, c.y - 0.24 * r, 1.68 * r, 0.48 * r), ink("#6d7176"), 0.04 * r)]
    for i, drum in enumerate(drums):
        last = i == len(drums) - 1
        nodes.append(box(drum, WHITE if last else BLACK))
        nodes.append(word(digits[i], drum.centre, 0.22 * r, BLACK if last else WHITE, Face.BOLD))
    nodes += [
        word("HOURS", c.moved(0, 0.5 * r), 0.12 * r, WHITE),
        word("1/10", c.moved(0.62 * r, -0.4 * r), 0.09 * r, WHITE),
    ]
    return gauge(frame, tuple(nodes))


def _sweep(kind: Kind, start: float, end: float) -> Scale:
    return Scale(((kind.numbered[0], start), (kind.numbered[-1], end)))


def _half(centre: Point, r: float, kind: Kind, ends: Range) -> Dial:
    """A dial a little to the side that the clock angles `ends` lie on."""
    side = -1 if ends[0] > 180 else 1
    scale = Scale(((kind.numbered[0], ends[0]), (kind.numbered[-1], ends[1])))
    return Dial(centre.moved(side * 0.1 * r, 0.0), 0.9 * r, scale)


def _between(kind: Kind) -> list[float]:
    steps = kind.divisions
    pairs = zip(kind.numbered, kind.numbered[1:], strict=False)
    return [a + (b - a) * i / steps for a, b in pairs for i in range(1, steps)]


def _bands(dial: Dial, kind: Kind) -> tuple[Node, ...]:
    return (
        *(dial.band(low, high, 0.96, 0.87, GREEN) for low, high in kind.green),
        *(dial.band(low, high, 0.96, 0.87, YELLOW) for low, high in kind.yellow),
    )


def _marks(dial: Dial, kind: Kind) -> tuple[Node, ...]:
    return (
        *_bands(dial, kind),
        dial.ticks(_between(kind), 0.96, 0.88, 0.014),
        dial.ticks(kind.numbered, 0.96, 0.83, 0.024),
        dial.ticks(kind.red, 0.975, 0.78, 0.045, RED),
        *dial.numbers(kind.numbered, 0.64, 0.15, lambda value: _text(kind, value)),
    )


def _half_marks(dial: Dial, kind: Kind) -> tuple[Node, ...]:
    side = -1 if dial.scale.pairs[0][1] > 180 else 1
    title = dial.centre.moved(side * 0.24 * dial.radius, 0.26 * dial.radius)
    lines = [*kind.title.split(), kind.unit]
    return (
        *_bands(dial, kind),
        dial.ticks(_between(kind), 0.96, 0.9, 0.012),
        dial.ticks(kind.numbered, 0.96, 0.85, 0.022),
        dial.ticks(kind.red, 0.975, 0.8, 0.04, RED),
        *dial.numbers(kind.numbered, 0.68, 0.115, lambda value: _text(kind, value)),
        *(
            word(text, title.moved(0.0, -0.1 * i * dial.radius), 0.055 * dial.radius, WHITE)
            for i, text in enumerate(lines)
        ),
    )


def _small_marks(dial: Dial, kind: Kind) -> tuple[Node, ...]:
    low = replace(dial, centre=dial.centre.moved(0.0, -0.2 * dial.radius))
    ends = (kind.numbered[0], kind.numbered[-1])
    return (
        *_bands(low, kind),
        low.ticks(kind.numbered, 0.96, 0.82, 0.04),
        low.ticks(kind.red, 0.975, 0.74, 0.08, RED),
        word(kind.title, low.centre.moved(0.0, -0.4 * dial.radius), 0.16 * dial.radius, WHITE, Face.BOLD),
        *_end_words(low, kind, ends),
    )


def _end_words(dial: Dial, kind: Kind, ends: Range) -> tuple[Node, ...]:
    spots = [dial.centre.moved(side * 0.74 * dial.radius, -0.08 * dial.radius) for side in (-1, 1)]
    return tuple(
        word(_text(kind, value), spot, 0.15 * dial.radius, WHITE) for value, spot in zip(ends, spots, strict=True)
    )


def _text(kind: Kind, value: float) -> str:
    if kind.words:
        return kind.words[kind.numbered.index(value)]
    return f"{value:g}"
