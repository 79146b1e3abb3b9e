"""How an option's panel looks to its owner: finish and colour of the sheet, trim, glareshield and yokes.

Nothing here is metal: no check reads it and no fingerprint holds it.
"""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from panelcad.model.base import Record
from panelcad.model.photograph import Photograph

HexColour = Annotated[str, Field(pattern=r"^#[0-9a-f]{6}$")]


class Finish(StrEnum):
    """What covers the sheet."""

    POWDER_COAT = "powder coat"
    WRINKLE = "wrinkle"
    BRUSHED = "brushed metal"
    VENEER = "wood veneer"
    CARBON = "carbon look"
    BARE_PAINT = "old paint"


class Trim(StrEnum):
    """What runs along the panel's edge."""

    NONE = "none"
    RUBBER = "rubber edge"
    BRIGHT = "bright edge"


class Shield(StrEnum):
    """Whether the glareshield is drawn above the panel."""

    NONE = "none"
    PADDED = "padded"


class Yokes(StrEnum):
    """Whether the yokes are drawn in outline, where the project has moving shafts."""

    NONE = "none"
    OUTLINE = "outline"


class Appearance(Record):
    finish: Finish = Finish.POWDER_COAT
    colour: HexColour = "#4a4e53"
    placard: HexColour = "#f2f2ee"
    """Colour of engravings and placards."""
    trim: Trim = Trim.RUBBER
    shield: Shield = Shield.PADDED
    yokes: Yokes = Yokes.OUTLINE
    photograph: Photograph | None = None
    """Takes the place of the finish on its plate."""
