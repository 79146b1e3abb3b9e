"""What people put on an option beside metal and equipment: dimensions, notes and groups. No fingerprint holds it."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.model.base import Id, Length, Name, PositiveLength, Record


class Hold(StrEnum):
    """The point of a part's extent that a hook holds on to; a part's centre is its own origin."""

    CENTRE = "centre"
    LEFT = "left edge"
    RIGHT = "right edge"
    TOP = "top edge"
    BOTTOM = "bottom edge"


class Hook(Record):
    """A point that follows a part: where the part is held, and how far from there.

    `part` is an item, a cut, an attach screw, an engraving or the plate itself; without one, x and y are the place on
    the plate.
    """

    part: Id | None = None
    hold: Hold = Hold.CENTRE
    x: Length = 0.0
    y: Length = 0.0


class Along(StrEnum):
    """Which distance of two points a dimension gives."""

    ACROSS = "across"
    UP = "up"
    STRAIGHT = "straight"


class Dimension(Record):
    """A distance that stays on the drawing; `offset` is how far its line stands off the first point, in mm."""

    id: Id
    plate: Id
    start: Hook
    end: Hook
    along: Along = Along.STRAIGHT
    offset: Length = 10.0

    @model_validator(mode="after")
    def _spans_something(self) -> Self:
        if self.start == self.end:
            raise ValueError("two different points are expected")
        return self

    @property
    def parts(self) -> tuple[Id, ...]:
        """The parts it holds on to."""
        return tuple(hook.part for hook in (self.start, self.end) if hook.part is not None)


class DrawingNote(Record):
    """Words on the drawing at a place of the plate, with a leader to `to` where one is given."""

    id: Id
    plate: Id
    text: Annotated[str, Field(min_length=1, max_length=500)]
    x: Length
    y: Length
    height: PositiveLength = 3.0
    to: Hook | None = None

    @property
    def parts(self) -> tuple[Id, ...]:
        """The part it points at, if any."""
        return (self.to.part,) if self.to is not None and self.to.part is not None else ()


class Group(Record):
    """Things that are picked and moved as one."""

    id: Id
    name: Name
    members: Annotated[tuple[Id, ...], Field(min_length=1)]
