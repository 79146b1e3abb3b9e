"""Holes for fasteners, and the hardware that goes with them."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.geometry.contour import Contour, circle
from panelcad.geometry.keyed import flatted, keyed
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.base import Angle, Length, Name, NonNegativeLength, Number, PositiveLength, Record
from panelcad.model.source import Source


class HoleKind(StrEnum):
    PLAIN = "plain"
    COUNTERSUNK = "countersunk"
    TAPPED = "tapped"
    NUTPLATE = "nutplate"
    INSERT = "insert"
    KEYED = "keyed"
    FLATTED = "flatted"


class Face(StrEnum):
    FRONT = "front"
    BACK = "back"


class Countersink(Record):
    """A cone of `angle` degrees included, `diameter` at the surface of `face`."""

    angle: Annotated[Number, Field(ge=60, le=140)] = 100.0
    diameter: PositiveLength
    face: Face = Face.FRONT


class Nutplate(Record):
    """Two rivet holes either side of the screw along `angle`, and the flange behind the sheet."""

    rivet_diameter: PositiveLength
    rivet_spacing: PositiveLength
    flange_length: PositiveLength
    flange_width: PositiveLength
    angle: Angle = 0.0


class HoleForm(Record):
    """One hole without its place. `fastener` is the nominal diameter D that edge distances are reckoned with."""

    diameter: PositiveLength
    kind: HoleKind = HoleKind.PLAIN
    fastener: PositiveLength
    head: NonNegativeLength = 0.0
    """Diameter of the fastener's head or washer in front; 0 where it is not known."""
    thread: Name | None = None
    countersink: Countersink | None = None
    nutplate: Nutplate | None = None
    key_depth: NonNegativeLength = 0.0
    """How far a key reaches beyond, or a flat into, the round hole."""
    key_width: NonNegativeLength = 0.0
    key_angle: Angle = 90.0
    """Where the key or flat is, counter-clockwise from the pattern's x axis."""

    @model_validator(mode="after")
    def _carries_its_hardware(self) -> Self:
        if (self.kind is HoleKind.COUNTERSUNK) != (self.countersink is not None):
            raise ValueError("a countersink for each countersunk hole, and for no other, is expected")
        if (self.kind is HoleKind.NUTPLATE) != (self.nutplate is not None):
            raise ValueError("a nutplate for each nutplate hole, and for no other, is expected")
        if self.kind is HoleKind.TAPPED and self.thread is None:
            raise ValueError("the thread of a tapped hole is expected")
        if self.kind in {HoleKind.KEYED, HoleKind.FLATTED} and not 0 < self.key_depth < self.diameter / 2:
            raise ValueError("the depth of the key or flat, less than half the hole, is expected")
        if self.kind is HoleKind.KEYED and not 0 < self.key_width < self.diameter:
            raise ValueError("the width of the key, less than the hole, is expected")
        return self

    def contour(self) -> Contour:
        """The cut contour about the hole's own centre, in mm."""
        radius = self.diameter / 2
        if self.kind is HoleKind.FLATTED:
            return Placement(rotation=self.key_angle).contour(flatted(radius, self.key_depth))
        if self.kind is HoleKind.KEYED:
            return Placement(rotation=self.key_angle).contour(keyed(radius, self.key_depth, self.key_width))
        return circle(Point(0.0, 0.0), self.diameter)


class Spot(Record):
    """A point of a hole pattern, in the pattern's own axes."""

    x: Length
    y: Length


class BoltCircle(Record):
    """`count` places evenly spread on a circle, the first at `first_angle` counter-clockwise from the x axis."""

    diameter: PositiveLength
    count: Annotated[int, Field(ge=1, le=100, strict=True)]
    first_angle: Angle = 0.0


class HoleGroup(Record):
    """Holes of one form, at spots, on a bolt circle, or both."""

    form: HoleForm
    spots: tuple[Spot, ...] = ()
    bolt_circle: BoltCircle | None = None
    purpose: Name = "screw"
    source: Source

    @model_validator(mode="after")
    def _has_places(self) -> Self:
        if not self.spots and self.bolt_circle is None:
            raise ValueError("spots or a bolt circle are expected")
        return self
