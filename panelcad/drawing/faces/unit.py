"""What rectangular units share: where the screen is in the bezel, its sunken frame, digits, rows of keys."""

from dataclasses import dataclass

from panelcad.drawing.display import Colour, Face, Group, LinearGradient, Node, Stop
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, DARK, LEGEND, SCREEN, SHADOW, WHITE, ink
from panelcad.drawing.faces.marks import Box, box, word
from panelcad.drawing.faces.parts import bezel, box_glass, key

LCD = ink("#0a0d0c")


@dataclass(frozen=True)
class Margins:
    """What the bezel keeps at each side of its screen, as shares of its width and height."""

    left: float
    right: float
    top: float
    bottom: float


def screen_area(frame: Frame, margins: Margins) -> Box:
    area = Box.around(frame.outline)
    m = margins
    return area.part(m.left, m.bottom, 1 - m.left - m.right, 1 - m.top - m.bottom)


def screen_frame(screen: Box) -> tuple[Node, ...]:
    """The sunken edge around a screen."""
    rim = screen.inset(-0.7)
    fill = LinearGradient(rim.at(0, 1), rim.at(1, 0), (Stop(0.0, DARK), Stop(1.0, ink("#4b4f55"))))
    return box(rim, fill, 1.4), box(screen, BLACK, 1.0)


def readout(screen: Box, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """A small dark screen with what shines on it."""
    glass = screen.contour(0.8)
    shade = SHADOW._replace(opacity=60)
    return (
        *screen_frame(screen),
        box(screen, LCD, 0.8),
        Group(nodes, layer=SCREEN, clip=glass),
        box(Box(screen.x, screen.top - 0.5, screen.width, 0.5), shade),
        box_glass(glass),
    )


def screen_above_knobs(frame: Frame) -> Box:
    """The screen of a display: above the row of its knobs, or most of the bezel where it has none."""
    area = Box.around(frame.outline)
    side = min(0.06 * area.width, 0.1 * area.height)
    tops = [at.y + r for at, r in frame.spots if at.y < frame.centre.y]
    bottom = max(tops) + 2.0 if tops else area.y + 0.13 * area.height
    return Box(area.x + side, bottom, area.width - 2 * side, area.top - 0.85 * side - bottom)


def lit_screen(frame: Frame, screen: Box, picture: tuple[Node, ...]) -> tuple[Node, ...]:
    """Bezel and sunken screen with a picture that shines."""
    glass = screen.contour(1.0)
    shown = Group((box(screen, BLACK), *picture), layer=SCREEN, clip=glass)
    return (*bezel(frame), *screen_frame(screen), shown, box_glass(glass))


def display_keys(frame: Frame, screen: Box) -> tuple[Node, ...]:
    """Four keys below the screen, between the knobs."""
    low = Box.around(frame.outline).y
    y = frame.spots[0][0].y if frame.knobs else (low + screen.y) / 2
    left, right = frame.between_knobs(4.0)
    wide = min(right - left, 110.0)
    high = min(7.0, 1.1 * (screen.y - y))
    names = ("SET", "TIMER", "PAGE", "MENU") if wide > 40 else ("PAGE", "SET")
    return key_row(Box((left + right - wide) / 2, y - high / 2, wide, high), names, 1.9)


def digits(text: str, at: Box, colour: Colour, label: str = "") -> tuple[Node, ...]:
    """Large figures in a field with a small word above them."""
    if not label:
        return (word(text, at.centre, 0.52 * at.height, colour, Face.BOLD),)
    return (
        word(text, at.at(0.5, 0.38), 0.44 * at.height, colour, Face.BOLD),
        word(label, at.at(0.5, 0.84), 0.13 * at.height, WHITE),
    )


def key_row(area: Box, legends: tuple[str, ...], height: float) -> tuple[Node, ...]:
    """Push keys side by side that fill a box."""
    pitch = area.width / len(legends)
    gap = min(0.12 * pitch, 1.2)
    keys = [Box(area.x + i * pitch + gap / 2, area.y, pitch - gap, area.height) for i in range(len(legends))]
    return tuple(
        node
        for k, legend in zip(keys, legends, strict=True)
        for node in key(k.contour(0.7), legend, min(height, 0.36 * k.height))
    )


def legend(text: str, at: Box, height: float) -> Group:
    """A painted word on the bezel."""
    return Group((word(text, at.centre, height, WHITE),), layer=LEGEND)
