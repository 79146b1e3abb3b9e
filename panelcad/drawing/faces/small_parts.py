"""What small hardware is made of: nuts and washers, and colours that words stand for."""

from panelcad.drawing.display import Colour, Node, Path
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import (
    AMBER,
    GREEN,
    RED,
    STEEL,
    STEEL_DARK,
    WHITE,
    ink,
)
from panelcad.drawing.faces.marks import clock, disc
from panelcad.drawing.faces.parts import slanted, soft_shadow
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point

_COLOURS = {
    "red": RED,
    "green": GREEN,
    "amber": AMBER,
    "yellow": AMBER,
    "blue": ink("#3f86e6"),
    "white": WHITE,
    "down": GREEN,
    "unsafe": RED,
    "warning": RED,
    "failure": RED,
    "fire": RED,
}
"""Words of a name and their colour: 14 CFR 23.1322 has red for warning, amber for caution, green for safe."""


def reach(frame: Frame) -> float:
    """Half the smaller side of what shows, in mm."""
    return min(frame.width, frame.height) / 2


def nut(centre: Point, half: float) -> tuple[Node, ...]:
    """A washer of radius `half` with a hexagon nut on it."""
    corners = [clock(centre, 0.97 * half, a) for a in range(15, 375, 60)]
    hexagon = closed_chain(tuple(Vertex(*corner) for corner in corners))
    washer = circle(centre, 2 * half)
    return (
        *soft_shadow(washer, 1.2, 20),
        Path((washer,), slanted(washer, ink("#a6aaaf"), ink("#6a6e73"))),
        Path((hexagon,), slanted(hexagon, STEEL, STEEL_DARK)),
        disc(centre, 0.72 * half, ink("#a9adb2")),
    )


def named_colour(label: str, otherwise: Colour) -> Colour:
    said = set(label.casefold().split())
    return next((colour for name, colour in _COLOURS.items() if name in said), otherwise)


def light_colour(frame: Frame) -> Colour:
    """The colour its light is said to have; where nobody said one, the colour its name stands for, else amber."""
    return _COLOURS[frame.light] if frame.light else named_colour(frame.label, AMBER)


def lighter(colour: Colour) -> Colour:
    return Colour(*(min(255, part + 70) for part in colour[:3]))


def darker(colour: Colour) -> Colour:
    return Colour(*(round(part * 0.62) for part in colour[:3]))
