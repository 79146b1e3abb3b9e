"""A cutout as the library knows it: the metal it takes away, what covers it in front, and what goes through it."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.model.base import Angle, Id, Length, Name, NonNegativeLength, PositiveLength, Record, Text
from panelcad.model.function import Function
from panelcad.model.hole import HoleGroup
from panelcad.model.pilot import Purpose
from panelcad.model.shape import Shape
from panelcad.model.source import Source
from panelcad.model.travel import Travel
from panelcad.units import LengthUnit


class Mounting(StrEnum):
    """How a thing is held; it decides what shows in front and where depth is reckoned from."""

    FRONT = "front"
    REAR = "rear"
    CLAMP_RING = "clamp ring"
    TRAY = "tray"
    BUSHING = "bushing and nut"


class BodyKind(StrEnum):
    CASE = "case"
    TRAY = "tray"
    CONNECTOR = "connector"
    HARNESS = "harness bend"
    HOSE = "hose"
    COOLING = "cooling air"
    KNOB = "knob"
    LEVER = "lever"
    PLUG = "plug"


IN_FRONT = frozenset({BodyKind.KNOB, BodyKind.LEVER, BodyKind.PLUG})


class Opening(Record):
    """One closed cut of a cutout, in the cutout's own axes."""

    shape: Shape
    x: Length = 0.0
    y: Length = 0.0
    rotation: Angle = 0.0
    purpose: Name = "opening"
    source: Source


class Bezel(Record):
    """What covers the panel from the front; `thickness` stands out toward the pilot."""

    shape: Shape
    x: Length = 0.0
    y: Length = 0.0
    thickness: NonNegativeLength = 0.0
    source: Source


class Body(Record):
    """A prism in front of or behind the sheet.

    `near` and `far` are distances from the face the item is mounted on, away from that face: a case reaches `far` mm
    behind, a knob `far` mm toward the pilot.
    """

    kind: BodyKind
    shape: Shape
    x: Length = 0.0
    y: Length = 0.0
    rotation: Angle = 0.0
    near: NonNegativeLength = 0.0
    far: PositiveLength
    travels: tuple[Travel, ...] = ()
    """Where a lever or knob goes from its place, in the cutout's own axes, z away from the pilot."""
    bundle_diameter: PositiveLength | None = None
    """Outside diameter of the wire bundle or hose that bends here; None where it is not known."""
    source: Source

    @model_validator(mode="after")
    def _has_depth(self) -> Self:
        if self.far <= self.near:
            raise ValueError("a body whose far end lies beyond its near end is expected")
        return self

    @property
    def in_front(self) -> bool:
        return self.kind in IN_FRONT


class RackUnit(Record):
    """A unit that stands in a stack: its height in the stack, its faceplate width, and the rails it slides between."""

    height: PositiveLength
    width: PositiveLength
    rail_distance: PositiveLength
    slide_out: PositiveLength | None = None
    """How far the unit is pulled toward the pilot to leave its tray; None means as far as its tray is deep."""
    source: Source


class SheetRange(Record):
    """The sheet thicknesses a bushing, clamp or snap-in part can grip."""

    least: NonNegativeLength
    most: PositiveLength
    source: Source


class CompassSafe(Record):
    """The distance from which a thing turns a magnetic compass by at most one degree, as its maker states it."""

    distance: PositiveLength
    source: Source


class Control(StrEnum):
    """What a hand does with it; spacing between controls depends on it."""

    TOGGLE = "toggle"
    ROCKER = "rocker"
    PUSH_BUTTON = "push button"
    PUSH_PULL = "push-pull"
    ROTARY = "continuous rotary"
    SELECTOR = "rotary selector"
    KEY = "key"


class Cutout(Record):
    """A generic cutout of the library. Its own unit is the one its source measures in; lengths here are in mm.

    `own_web` is the least metal between its opening and its own screw holes: a standard round instrument has 2.6 mm.
    """

    name: Id
    title: Name
    family: Id
    unit: LengthUnit
    words: tuple[Name, ...] = ()
    mounting: Mounting
    openings: tuple[Opening, ...] = ()
    holes: tuple[HoleGroup, ...] = ()
    own_web: NonNegativeLength = 0.0
    bezel: Bezel | None = None
    bodies: tuple[Body, ...] = ()
    rack: RackUnit | None = None
    grip: SheetRange | None = None
    control: Control | None = None
    purpose: Purpose | None = None
    shows: tuple[Function, ...] = ()
    """What its face tells the pilot, where nothing more is known of the unit behind it."""
    compass_safe: CompassSafe | None = None
    """None where it is not known."""
    prefix: Annotated[str, Field(pattern=r"^[A-Z]{0,3}$")] = ""
    notes: Text = ""

    @model_validator(mode="after")
    def _is_something(self) -> Self:
        if not (self.openings or self.holes or self.bezel or self.bodies):
            raise ValueError("an opening, holes, a bezel or bodies are expected")
        return self
