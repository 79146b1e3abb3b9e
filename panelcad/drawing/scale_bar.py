"""Bars that prove a printer's scale: 100 mm and 4 in, drawn from the same numbers as the part."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Across, Along, Node, Path
from panelcad.drawing.inks import PLAIN, Inks
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line
from panelcad.units import MM_PER_INCH

HUNDRED: Final = 100.0
FOUR_INCHES: Final = 4 * MM_PER_INCH
HEIGHT: Final = 16.0
_TICK: Final = 3.0


def scale_bars(at: Point, inks: Inks) -> tuple[Node, ...]:
    """Both bars, one above the other, from their common left end at `at`, the lower one's line."""
    return (
        *_bar(at.moved(0.0, 8.0), HUNDRED, 10, "100 mm", inks),
        *_bar(at, FOUR_INCHES, 4, "4 in", inks),
    )


def _bar(at: Point, length: float, parts: int, words: str, inks: Inks) -> Iterator[Node]:
    yield Path((line(at, at.moved(length, 0.0)),), pen=inks.pen(0.35))
    yield Path(tuple(_ticks(at, length, parts)), pen=inks.narrow)
    middle = at.moved(length + 3.0, 0.0)
    yield inks.text(words, middle, PLAIN, Along.LEFT, Across.MIDDLE)


def _ticks(at: Point, length: float, parts: int) -> Iterator[Track]:
    for i in range(parts + 1):
        tall = _TICK if i in {0, parts} else _TICK / 2
        foot = at.moved(length * i / parts, 0.0)
        yield line(foot, foot.moved(0.0, tall))
