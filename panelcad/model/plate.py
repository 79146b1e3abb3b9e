"""A plate: a sheet with its outline, what is bent, drilled and cut in it, and how it stands in the aircraft."""

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from panelcad.model.base import (
    Angle,
    Id,
    Length,
    Name,
    NonNegativeLength,
    Number,
    PositiveLength,
    Record,
    Text,
    Tilt,
)
from panelcad.model.cutout import Opening
from panelcad.model.hole import HoleForm, HoleGroup
from panelcad.model.shape import Shape


class PlateRole(StrEnum):
    STRUCTURAL = "structural sheet"
    SUB_PANEL = "floating sub-panel"
    OVERLAY = "overlay"
    PEDESTAL = "pedestal face"


class PlateState(StrEnum):
    """A kept plate is not touched, a reworked one gets new cuts beside its old ones, a new one is made whole."""

    KEPT = "kept"
    REWORKED = "reworked"
    NEW = "new"


class Frame(Record):
    """A plate's place in the aircraft: origin in aircraft axes in mm, tilt about x (top forward), cant about y, in °.

    Aircraft axes are the front view's: x right, y up, z forward, from the project's stated datum.
    """

    x: Length = 0.0
    y: Length = 0.0
    z: Length = 0.0
    tilt: Tilt = 0.0
    cant: Tilt = 0.0


class Sway(Record):
    """How far a shock-mounted plate moves each way; added to its clearance from all that is fixed."""

    x: NonNegativeLength = 0.0
    y: NonNegativeLength = 0.0
    z: NonNegativeLength = 0.0


class Bend(Record):
    """A bend line between two points of the sheet; `inside_radius` in mm, `angle` in degrees, as seen in front.

    `flange` is the height of a straight flange from the bend's mould line to its edge; 0 where it is not known or the
    outline is a flat pattern. A flange's bend line is the edge it stands on; in a flat pattern, the bend's middle.
    """

    x1: Length
    y1: Length
    x2: Length
    y2: Length
    angle: Annotated[Number, Field(gt=0, le=180)]
    inside_radius: NonNegativeLength
    direction: Literal["toward the pilot", "away from the pilot"]
    flange: NonNegativeLength = 0.0


class Backing(Record):
    """What an attach screw needs behind the sheet: a shock mount, a bracket, a nut and the room for its spanner."""

    diameter: PositiveLength
    depth: PositiveLength
    purpose: Name = "shock mount"


class AttachScrew(Record):
    """A screw that holds the plate itself."""

    id: Id
    x: Length
    y: Length
    form: HoleForm
    backing: Backing | None = None


class CutState(StrEnum):
    EXISTING = "existing"
    ENLARGED = "enlarged"
    NEW = "new"


class Cut(Record):
    """Metal removed from a plate at one place: a library cutout's opening and holes, or openings of its own."""

    id: Id
    name: Name
    x: Length
    y: Length
    rotation: Angle = 0.0
    mirrored: bool = False
    state: CutState = CutState.NEW
    cutout: Id | None = None
    openings: tuple[Opening, ...] = ()
    holes: tuple[HoleGroup, ...] = ()

    @model_validator(mode="after")
    def _takes_metal_away(self) -> Self:
        if (self.cutout is None) == (not self.openings and not self.holes):
            raise ValueError("either a cutout or openings and holes of its own are expected")
        return self


class Engraving(Record):
    """A line of lettering cut into or printed on the plate, centred on its place."""

    id: Id
    text: Annotated[str, Field(min_length=1, max_length=200)]
    x: Length
    y: Length
    height: PositiveLength
    rotation: Angle = 0.0


class Plate(Record):
    id: Id
    name: Name
    role: PlateRole = PlateRole.STRUCTURAL
    state: PlateState = PlateState.REWORKED
    over: Id | None = None
    """The plate an overlay lies on."""
    frame: Frame = Frame()
    sway: Sway | None = None
    outline: Shape
    inner_openings: tuple[Opening, ...] = ()
    bends: tuple[Bend, ...] = ()
    is_flat_pattern: bool = False
    thickness: PositiveLength
    alloy: Name
    attach_screws: tuple[AttachScrew, ...] = ()
    cuts: tuple[Cut, ...] = ()
    engravings: tuple[Engraving, ...] = ()
    notes: Text = ""

    @model_validator(mode="after")
    def _overlay_lies_on_another(self) -> Self:
        if (self.role is PlateRole.OVERLAY) != (self.over is not None):
            raise ValueError("the plate below for an overlay, and for no other plate, is expected")
        return self
