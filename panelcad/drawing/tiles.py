"""How a full-size view is cut into the sheets of a printer: columns and rows that overlap, all in mm."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from string import ascii_uppercase
from typing import Final

from panelcad.drawing.box import size
from panelcad.drawing.display import Bounds
from panelcad.errors import UnusableInput
from panelcad.geometry.point import Point
from panelcad.units import MM_PER_INCH

FOOT: Final = 26.0
"""The strip below a tile's window that bears the bars and what the tile is."""
LEAST: Final = (165.0, 80.0)
"""The least window: as wide as the foot's bars, words and code, and high enough to be worth gluing."""


@dataclass(frozen=True)
class Printer:
    """A printer's paper, and the margin it cannot print on."""

    name: str
    width: float
    height: float
    margin: float = 10.0

    @property
    def turned(self) -> "Printer":
        return Printer(self.name, self.height, self.width, self.margin)

    @property
    def window(self) -> tuple[float, float]:
        """Width and height of what one page shows of the part."""
        return self.width - 2 * self.margin, self.height - 2 * self.margin - FOOT


PRINTERS: Final = {
    printer.name: printer
    for printer in (
        Printer("A4", 210.0, 297.0),
        Printer("A3", 297.0, 420.0),
        Printer("A2", 420.0, 594.0),
        Printer("A1", 594.0, 841.0),
        Printer("A0", 841.0, 1189.0),
        Printer("Letter", 8.5 * MM_PER_INCH, 11 * MM_PER_INCH),
        Printer("Legal", 8.5 * MM_PER_INCH, 14 * MM_PER_INCH),
        Printer("Tabloid", 11 * MM_PER_INCH, 17 * MM_PER_INCH),
        Printer("ANSI C", 17 * MM_PER_INCH, 22 * MM_PER_INCH),
        Printer("ANSI D", 22 * MM_PER_INCH, 34 * MM_PER_INCH),
        Printer("ANSI E", 34 * MM_PER_INCH, 44 * MM_PER_INCH),
    )
}


@dataclass(frozen=True)
class Tile:
    """One page: its name such as B2 (row B from the top, second column) and what of the part it shows."""

    name: str
    row: int
    column: int
    window: Bounds


@dataclass(frozen=True)
class Tiling:
    printer: Printer
    overlap: float
    columns: int
    rows: int
    origin: Point
    """The lower left corner of the lowest left window, on the part."""

    @property
    def step(self) -> tuple[float, float]:
        width, height = self.printer.window
        return width - self.overlap, height - self.overlap

    def tiles(self) -> Iterator[Tile]:
        """Row by row from the top."""
        for row in range(self.rows):
            for column in range(self.columns):
                yield Tile(f"{row_name(row)}{column + 1}", row, column, self._window(row, column))

    def _window(self, row: int, column: int) -> Bounds:
        width, height = self.printer.window
        across, up = self.step
        left = self.origin.x + column * across
        bottom = self.origin.y + (self.rows - 1 - row) * up
        return left, bottom, left + width, bottom + height

    def marks(self) -> Iterator[Point]:
        """Where the registration marks are on the part: in the middle of the overlaps' crossings and at the rim."""
        across, up = self.step
        half = self.overlap / 2
        for column in range(self.columns + 1):
            for row in range(self.rows + 1):
                yield self.origin.moved(half + column * across, half + row * up)


def row_name(row: int) -> str:
    """A, B, … for a row counted from 0."""
    head = row_name(row // 26 - 1) if row >= 26 else ""
    return head + ascii_uppercase[row % 26]


def tiling(part: Bounds, printer: Printer, overlap: float) -> Tiling:
    """The fewest pages that show the part whole, the paper upright or lying.

    Raises `UnusableInput` for paper too small to print on.
    """
    ways = [_tiled(part, way, overlap) for way in (printer, printer.turned) if _is_large_enough(way)]
    if not ways:
        problem = f"{printer.width:g} × {printer.height:g} mm is too small for a template"
        raise UnusableInput("", f"paper {printer.name}", problem, "paper of at least A5")
    return min(ways, key=lambda way: way.columns * way.rows)


def _is_large_enough(printer: Printer) -> bool:
    return all(room >= least for room, least in zip(printer.window, LEAST, strict=True))


def _tiled(part: Bounds, printer: Printer, overlap: float) -> Tiling:
    counts = [_count(length, room, overlap) for length, room in zip(size(part), printer.window, strict=True)]
    spans = [count * (room - overlap) + overlap for count, room in zip(counts, printer.window, strict=True)]
    origin = Point((part[0] + part[2] - spans[0]) / 2, (part[1] + part[3] - spans[1]) / 2)
    return Tiling(printer, overlap, counts[0], counts[1], origin)


def _count(length: float, room: float, overlap: float) -> int:
    """Pages along one direction; the outer overlaps' halves bear marks, so the part stays clear of them."""
    return max(1, math.ceil((length + overlap) / (room - overlap) - 1e-9))
