"""What charts share: a look, an axis with round numbers, and a frame that turns values into places; mm on paper."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Across, Along, Bounds, Colour, Face, Node, Path, Pen, Text
from panelcad.drawing.lettering import fitted
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

LETTER: Final = 1.9
"""Height of capitals in a chart, in mm."""
TITLE_LETTER: Final = 2.4
SMALLEST_SPAN: Final = 1e-3
"""An axis spans at least this much, in the reader's unit; smaller differences show nothing."""


@dataclass(frozen=True)
class ChartLook:
    """Colours of a chart. `series` are told apart by lightness too, for print in black and white."""

    ink: Colour
    faint: Colour
    limit: Colour
    inside: Colour
    outside: Colour
    series: tuple[Colour, ...]


def _look(ink: str, faint: str, limit: str, inside: str, *series: str) -> ChartLook:
    first = [Colour.parse(text) for text in (ink, faint, limit, inside)]
    return ChartLook(first[0], first[1], first[2], first[3], first[2], tuple(Colour.parse(text) for text in series))


ON_PAPER: Final = _look("#1c232b", "#c4cad0", "#a3141c", "#205c3f", "#1d4f86", "#9fb9d6", "#5b6770", "#d9b36c")
ON_DARK: Final = _look("#e6eaee", "#4a545e", "#ff8aa4", "#79dcae", "#7ab8ff", "#35587d", "#98a4b0", "#ffb963")
ON_LIGHT: Final = _look("#1c232b", "#b4bcc4", "#a3141c", "#205c3f", "#0b4f9e", "#8fb4dc", "#5c6773", "#d39a3d")


@dataclass(frozen=True)
class Chart:
    """A finished chart: what it draws in a box from (0, 0) to (width, height) mm."""

    title: str
    width: float
    height: float
    nodes: tuple[Node, ...]


@dataclass(frozen=True)
class Scale:
    """Values from `least` to `most` laid along a stretch of the page."""

    least: float
    most: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Where a value lies, in mm."""
        return self.start + (self.end - self.start) * (value - self.least) / (self.most - self.least)


def round_step(span: float, about: int = 5) -> float:
    """A step of 1, 2 or 5 times a power of ten that divides a span into about so many parts.

    >>> round_step(47.0)
    10.0
    """
    rough = span / about
    power: float = 10.0 ** math.floor(math.log10(rough))
    return next(power * times for times in (1.0, 2.0, 5.0, 10.0) if power * times >= rough * 0.999)


def ticks(least: float, most: float, about: int = 5) -> tuple[float, ...]:
    """Round values from the one at or below `least` to the one at or above `most`."""
    step = round_step(max(most - least, SMALLEST_SPAN), about)
    first, last = math.floor(least / step + 1e-9), math.ceil(most / step - 1e-9)
    return tuple(round(i * step, 9) for i in range(first, max(last, first + 1) + 1))


def tick_text(value: float, marks: tuple[float, ...]) -> str:
    """A tick's number with as many decimals as the step needs."""
    step = marks[1] - marks[0]
    return f"{value:,.{max(0, math.ceil(-math.log10(step) - 1e-9))}f}"


def words(  # noqa: PLR0913 - a text has these properties
    text: str,
    x: float,
    y: float,
    look: ChartLook,
    along: Along = Along.LEFT,
    *,
    height: float = LETTER,
    face: Face = Face.REGULAR,
    colour: Colour | None = None,
    rotation: float = 0.0,
    room: float | None = None,
) -> Text:
    """A text set on its middle line; cut short where it is wider than `room`."""
    shown = text if room is None else fitted(text, room, height, face)
    return Text(shown, Point(x, y), height, colour or look.ink, along, Across.MIDDLE, rotation, face)


def bar(box: Bounds, colour: Colour) -> Path:
    return Path((box_outline(box),), fill=colour)


def rule(
    start: tuple[float, float],
    end: tuple[float, float],
    colour: Colour,
    width: float = 0.2,
    dashes: tuple[float, ...] = (),
) -> Path:
    return Path((line(Point(*start), Point(*end)),), pen=Pen(colour, width, dashes=dashes))


def across_grid(marks: tuple[float, ...], scale: Scale, left: float, right: float, look: ChartLook) -> Iterator[Node]:
    """Horizontal lines with their numbers at the left."""
    for mark in marks:
        y = scale.at(mark)
        yield rule((left, y), (right, y), look.faint)
        yield words(tick_text(mark, marks), left - 1.5, y, look, Along.RIGHT)


def upright_grid(marks: tuple[float, ...], scale: Scale, low: float, high: float, look: ChartLook) -> Iterator[Node]:
    """Vertical lines with their numbers below."""
    for mark in marks:
        x = scale.at(mark)
        yield rule((x, low), (x, high), look.faint)
        yield words(tick_text(mark, marks), x, low - 2.6, look, Along.CENTRE)


def key(entries: tuple[tuple[str, Colour], ...], x: float, y: float, look: ChartLook, room: float) -> Iterator[Node]:
    """Squares with their names in a row, each name as wide as its share of the room."""
    share = room / len(entries)
    for i, (name, colour) in enumerate(entries):
        left = x + i * share
        yield bar((left, y - LETTER / 2, left + LETTER, y + LETTER / 2), colour)
        yield words(name, left + LETTER + 1.2, y, look, room=share - LETTER - 3.0)
