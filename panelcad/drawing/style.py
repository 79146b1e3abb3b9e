"""How the technical views look: colours, and lines as ISO 128 has them (two widths, 2 : 1, dashes in line widths)."""

from dataclasses import dataclass, replace
from enum import Enum
from functools import cache
from typing import Final

from panelcad.drawing.display import Colour, Measured, Pen


@dataclass(frozen=True)
class Palette:
    """Colours by what they show. A fill may be translucent; an edge stands out from what it lies on."""

    background: Colour
    ink: Colour
    faint: Colour
    metal: Colour
    metal_edge: Colour
    void: Colour
    cut_edge: Colour
    existing_edge: Colour
    bezel: Colour
    bezel_edge: Colour
    knob: Colour
    engraving: Colour
    body: Colour
    body_edge: Colour
    obstacle: Colour
    obstacle_edge: Colour
    moving: Colour
    moving_edge: Colour
    limit: Colour
    limit_edge: Colour


class Line(Enum):
    """Line types of ISO 128-2."""

    CONTINUOUS = "continuous"
    DASHED = "dashed"
    CHAIN = "long-dashed dotted"
    PHANTOM = "long-dashed double-dotted"

    @property
    def dashes(self) -> tuple[float, ...]:
        """Lengths on and off in line widths."""
        return _DASHES[self]


_DASHES: Final = {
    Line.CONTINUOUS: (),
    Line.DASHED: (12.0, 3.0),
    Line.CHAIN: (24.0, 3.0, 0.5, 3.0),
    Line.PHANTOM: (24.0, 3.0, 0.5, 3.0, 0.5, 3.0),
}


@dataclass(frozen=True)
class ViewStyle:
    """A palette, and two line widths and a letter's height in mm of the panel or in pixels of the screen."""

    palette: Palette
    wide: float
    narrow: float
    measured: Measured
    letter: float = 9.0

    def wide_pen(self, colour: Colour, line: Line = Line.CONTINUOUS) -> Pen:
        return self._pen(self.wide, colour, line)

    def narrow_pen(self, colour: Colour, line: Line = Line.CONTINUOUS) -> Pen:
        return self._pen(self.narrow, colour, line)

    def _pen(self, width: float, colour: Colour, line: Line) -> Pen:
        return Pen(colour, width, self.measured, tuple(width * share for share in line.dashes))


def _colours(**named: str) -> Palette:
    return Palette(**{name: Colour.parse(text) for name, text in named.items()})


LIGHT: Final = _colours(
    background="#eef0f2",
    ink="#1c232b",
    faint="#5c6773",
    metal="#c9cfd6",
    metal_edge="#2b333c",
    void="#f8f9fa",
    cut_edge="#0b4f9e",
    existing_edge="#5a6570",
    bezel="#3a43501f",
    bezel_edge="#3c4652",
    knob="#3a434e40",
    engraving="#1c232b",
    body="#b26a0026",
    body_edge="#8a4f00",
    obstacle="#8b1e3f38",
    obstacle_edge="#7d1837",
    moving="#6a3fa02e",
    moving_edge="#5b3591",
    limit="#2f6d4f1f",
    limit_edge="#205c3f",
)
DARK: Final = _colours(
    background="#171b20",
    ink="#e6eaee",
    faint="#98a4b0",
    metal="#39424c",
    metal_edge="#c4ccd4",
    void="#0e1114",
    cut_edge="#7ab8ff",
    existing_edge="#98a4b0",
    bezel="#dfe6ee1f",
    bezel_edge="#c2ccd6",
    knob="#dfe6ee38",
    engraving="#eef2f6",
    body="#ffb14f2b",
    body_edge="#ffb963",
    obstacle="#ff6f8f33",
    obstacle_edge="#ff8aa4",
    moving="#b794f63a",
    moving_edge="#c6abf9",
    limit="#63d3a024",
    limit_edge="#79dcae",
)
PAPER: Final = _colours(
    background="#ffffff",
    ink="#000000",
    faint="#595959",
    metal="#ffffff00",
    metal_edge="#000000",
    void="#ffffff00",
    cut_edge="#000000",
    existing_edge="#595959",
    bezel="#ffffff00",
    bezel_edge="#1f5fa8",
    knob="#ffffff00",
    engraving="#000000",
    body="#eef3f9",
    body_edge="#1f5fa8",
    obstacle="#ece4e4",
    obstacle_edge="#8c2f2f",
    moving="#f1ecf8",
    moving_edge="#5b3591",
    limit="#ffffff00",
    limit_edge="#205c3f",
)

SCREEN_LIGHT: Final = ViewStyle(LIGHT, wide=1.8, narrow=1.0, measured=Measured.PIXELS)
SCREEN_DARK: Final = ViewStyle(DARK, wide=1.8, narrow=1.0, measured=Measured.PIXELS)
BLACK_ON_WHITE: Final = replace(
    PAPER,
    bezel_edge=Colour.parse("#404040"),
    body=Colour.parse("#f2f2f2"),
    body_edge=Colour.parse("#000000"),
    obstacle=Colour.parse("#d0d0d0"),
    obstacle_edge=Colour.parse("#000000"),
    moving=Colour.parse("#e4e4e4"),
    moving_edge=Colour.parse("#000000"),
    limit_edge=Colour.parse("#000000"),
)
WIDE: Final = 0.5
NARROW: Final = 0.25
"""Line widths on paper in mm: line group 0.5 of ISO 128-2."""
LETTER: Final = 2.5
"""Height of a capital on paper in mm (ISO 3098-1)."""


@cache
def paper_style(scale: float, palette: Palette = PAPER, wide: float = WIDE, narrow: float = NARROW) -> ViewStyle:
    """The style of a view that will be drawn at this scale, so that its lines come out in the widths of ISO 128."""
    return ViewStyle(palette, wide / scale, narrow / scale, Measured.MM, LETTER / scale)
