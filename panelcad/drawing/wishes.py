"""What is to be written on a view, and where it had best stand."""

from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import Final

from panelcad.drawing.box import grown, middle, size
from panelcad.drawing.display import Bounds, Colour, Face
from panelcad.drawing.inks import PLAIN, Letters
from panelcad.drawing.lettering import DESCENT, fitted, text_width
from panelcad.geometry.point import Point

AIR: Final = 0.5
"""Free space in mm around each text."""
LONGEST: Final = 60.0
"""Width in mm that a name on a view may take."""


class Stand(Enum):
    """Where a text had best stand: beside its spot, in the middle of what it names, or beside its centre lines."""

    BESIDE = "beside"
    MIDDLE = "middle"
    QUARTER = "quarter"


@dataclass(frozen=True)
class Wish:
    """A text and the spot it names; it stands within its room where there is one, else `radius` or more away."""

    text: str
    spot: Point
    radius: float
    stand: Stand = Stand.BESIDE
    room: Bounds = (0.0, 0.0, 0.0, 0.0)
    height: float = PLAIN
    face: Face = Face.REGULAR
    colour: Colour | None = None

    @cached_property
    def half_width(self) -> float:
        return text_width(self.text, self.height, self.face) / 2

    def box_at(self, spot: Point) -> Bounds:
        """What the text covers when its middle is there."""
        half_height = self.height / 2
        low = spot.y - half_height - DESCENT * self.height
        return spot.x - self.half_width, low, spot.x + self.half_width, spot.y + half_height


def number_in(text: str, box: Bounds, letters: Letters) -> Wish:
    """A bold number in the middle of a box, large where there is room."""
    width, height = size(box)
    fits_large = width >= text_width(text, letters.large, Face.BOLD) + 2.0 and height >= letters.large + 2.0
    tall = letters.large if fits_large else letters.plain
    return Wish(text, middle(box), min(width, height) / 2, Stand.MIDDLE, grown(box, -AIR), tall, Face.BOLD)


def name_in(text: str, box: Bounds, height: float, colour: Colour) -> Wish:
    """A name in the middle of a box, or beside it; a very long one is shortened."""
    return Wish(
        fitted(text, LONGEST, height),
        middle(box),
        min(size(box)) / 2,
        Stand.MIDDLE,
        grown(box, -AIR),
        height,
        Face.REGULAR,
        colour,
    )
