"""What is to be written on a view, and where it had best stand."""

import math
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import Final

from panelcad.drawing.box import grown, middle, nearest_in, size
from panelcad.drawing.display import Bounds, Colour, Face
from panelcad.drawing.inks import PLAIN, Letters
from panelcad.drawing.lettering import DESCENT, fitted, text_width
from panelcad.geometry.point import Point, distance

AIR: Final = 0.5
"""Free space in mm around each text."""
LONGEST: Final = 60.0
"""Width in mm that a name on a view may take."""

_UP: Final = Point(0.0, 1.0)


class Stand(Enum):
    """Where a text had best stand.

    Beside its spot, in the middle of what it names, beside its centre lines, or at the end of an arc's radius.
    """

    BESIDE = "beside"
    MIDDLE = "middle"
    QUARTER = "quarter"
    RADIAL = "radial"


@dataclass(frozen=True)
class Wish:
    """A text and the spot it names; it stands within its room where there is one, else `radius` or more away.

    `thing` is the box of what is named where that is no circle about the spot, `way` a unit vector along an arc's
    radius. It is written `least` high where it would cross an edge else; one that is optional is left out there.
    """

    text: str
    spot: Point
    radius: float
    stand: Stand = Stand.BESIDE
    room: Bounds = (0.0, 0.0, 0.0, 0.0)
    height: float = PLAIN
    face: Face = Face.REGULAR
    colour: Colour | None = None
    thing: Bounds | None = None
    way: Point = _UP
    is_optional: bool = False
    least: float = math.inf
    fill: Colour | None = None
    """The colour of the room."""

    @cached_property
    def half_width(self) -> float:
        return text_width(self.text, self.height, self.face) / 2

    def box_at(self, spot: Point) -> Bounds:
        """What the text covers when its middle is there."""
        half_height = self.height / 2
        low = spot.y - half_height - DESCENT * self.height
        return spot.x - self.half_width, low, spot.x + self.half_width, spot.y + half_height

    def rim(self, toward: Point) -> Point:
        """The point of what is named that is nearest to a point."""
        if self.thing is not None:
            return nearest_in(self.thing, toward)
        return self.spot.towards(toward, min(self.radius, distance(self.spot, toward)))

    def gap(self, box: Bounds) -> float:
        """How far a box is from what is named."""
        near = nearest_in(box, self.spot if self.thing is None else nearest_in(self.thing, middle(box)))
        return distance(near, self.rim(near))


def number_in(text: str, box: Bounds, letters: Letters, fill: Colour | None = None) -> Wish:
    """A bold number in the middle of a box, large where there is room."""
    width, height = size(box)
    fits_large = width >= text_width(text, letters.large, Face.BOLD) + 2.0 and height >= letters.large + 2.0
    tall = letters.large if fits_large else letters.plain
    room = grown(box, -AIR)
    return Wish(text, middle(box), min(width, height) / 2, Stand.MIDDLE, room, tall, Face.BOLD, fill=fill)


def name_in(text: str, box: Bounds, height: float, colour: Colour, fill: Colour | None = None) -> Wish:
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
        thing=box,
        fill=fill,
    )
