"""Pens and letters of the sheets: line widths of ISO 128-2, letter heights of ISO 3098, in colour or black alone."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from panelcad.drawing.display import Across, Along, Colour, Face, Pen, Text
from panelcad.drawing.paper import Paper
from panelcad.drawing.style import BLACK_ON_WHITE, NARROW, PAPER, WIDE, Line, Palette
from panelcad.geometry.point import Point

FRAME: Final = 0.7
SMALL: Final = 1.8
PLAIN: Final = 2.5
LARGE: Final = 3.5
TITLE: Final = 5.0
"""Letter heights of ISO 3098-1 in mm."""


@dataclass(frozen=True)
class Letters:
    """Heights of a sheet's plain letters and of its numbers and headings."""

    plain: float
    large: float


_ON_LARGE_SHEETS: Final = 600.0


def letters(paper: Paper) -> Letters:
    """2.5 and 3.5 mm up to A2 and ANSI C, one step of ISO 3098 more on larger sheets."""
    return Letters(LARGE, TITLE) if paper.width > _ON_LARGE_SHEETS else Letters(PLAIN, LARGE)


class Ink(StrEnum):
    COLOUR = "colour"
    BLACK = "black and white"


@dataclass(frozen=True)
class Inks:
    """Colours of what is written around the views, and the palette of the views themselves."""

    palette: Palette
    ink: Colour
    faint: Colour
    note: Colour
    alarm: Colour
    shade: Colour
    draft: Colour

    def pen(self, width: float = NARROW, line: Line = Line.CONTINUOUS, colour: Colour | None = None) -> Pen:
        return Pen(colour or self.ink, width, dashes=tuple(width * share for share in line.dashes))

    @property
    def wide(self) -> Pen:
        return self.pen(WIDE)

    @property
    def narrow(self) -> Pen:
        return self.pen(NARROW)

    @property
    def measure(self) -> Pen:
        """For dimension, extension and leader lines."""
        return self.pen(NARROW, colour=self.note)

    @property
    def centre(self) -> Pen:
        """For centre lines: long dash, short dash."""
        return self.pen(NARROW, Line.CHAIN, self.note)

    def text(  # noqa: PLR0913 - a text has these properties
        self,
        text: str,
        at: tuple[float, float],
        height: float = PLAIN,
        along: Along = Along.LEFT,
        across: Across = Across.BASELINE,
        *,
        rotation: float = 0.0,
        face: Face = Face.REGULAR,
        colour: Colour | None = None,
    ) -> Text:
        return Text(text, Point(*at), height, colour or self.ink, along, across, rotation, face)


def _inks(palette: Palette, **named: str) -> Inks:
    return Inks(palette, **{name: Colour.parse(text) for name, text in named.items()})


INKS: Final = {
    Ink.COLOUR: _inks(
        PAPER,
        ink="#000000",
        faint="#8a8f94",
        note="#1d4f86",
        alarm="#a3141c",
        shade="#eef2f6",
        draft="#a3141c26",
    ),
    Ink.BLACK: _inks(
        BLACK_ON_WHITE,
        ink="#000000",
        faint="#8c8c8c",
        note="#333333",
        alarm="#000000",
        shade="#f0f0f0",
        draft="#00000020",
    ),
}
