"""The colours of faces by day, and the layers that say how light changes them (`panelcad.drawing.appearance_light`)."""

from typing import Final

from panelcad.drawing.display import Colour

LEGEND: Final = "legend"
"""Paint that instrument lighting makes glow at night: numbers, marks, pointers."""
SCREEN: Final = "screen"
"""Shines by itself: displays and lamps."""
GLASS: Final = "glass"
"""A reflection of the surroundings, which goes when they are dark."""


def ink(text: str) -> Colour:
    return Colour.parse(text)


WHITE: Final = ink("#f4f4f0")
GREY: Final = ink("#9a9ea3")
BLACK: Final = ink("#101113")
DIAL: Final = ink("#151618")
DARK: Final = ink("#08090a")
RED: Final = ink("#e0302a")
YELLOW: Final = ink("#f2c418")
GREEN: Final = ink("#2fae4e")
BLUE: Final = ink("#2f7fe0")
ORANGE: Final = ink("#f08a24")
CYAN: Final = ink("#35d6e6")
MAGENTA: Final = ink("#f055d8")
LIME: Final = ink("#38e060")
AMBER: Final = ink("#ffb020")
SKY_TOP: Final = ink("#1c5fb0")
SKY: Final = ink("#4f9be0")
EARTH: Final = ink("#8a5a2b")
EARTH_LOW: Final = ink("#5a3818")
STEEL: Final = ink("#c9ccd0")
STEEL_DARK: Final = ink("#6d7176")
BRASS: Final = ink("#b8974e")
SHADOW: Final = Colour(0, 0, 0, 255)
GLINT: Final = Colour(255, 255, 255, 255)
