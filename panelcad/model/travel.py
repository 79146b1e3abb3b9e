"""How something moves: straight ways and turns, in the plate's axes unless its record says otherwise."""

from typing import Annotated

from pydantic import Field

from panelcad.model.base import Length, Number, Record


class Travel(Record):
    """A straight way that a moving part goes, both ends included."""

    dx: Length = 0.0
    dy: Length = 0.0
    dz: Length = 0.0


class Turn(Record):
    """A turn in the plate's plane about a point, from one stop to the other; degrees counter-clockwise."""

    x: Length
    y: Length
    least: Annotated[Number, Field(ge=-360, le=0)]
    most: Annotated[Number, Field(ge=0, le=360)]
