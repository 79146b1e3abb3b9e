"""What stands around the panel: obstacles, depth limits, moving parts, keep-outs in front, and the pilot.

Each is given in the axes of the plate it names; z points away from the pilot and the front face is z = 0.
"""

from enum import StrEnum
from typing import Self

from pydantic import model_validator

from panelcad.model.base import Angle, Id, Length, Name, Number, Record
from panelcad.model.shape import Shape
from panelcad.model.source import Source
from panelcad.model.travel import Travel, Turn


class ObstacleKind(StrEnum):
    RIB = "rib"
    TUBE = "tube"
    DUCT = "duct"
    BRACE = "brace"
    LINE = "line"
    FLUID_LINE = "fuel, fluid or oxygen line"
    CABLE = "control cable"
    SUPPORT = "tray support"
    OTHER = "other"


class Volume(Record):
    """A prism: footprint on the plate's plane, from `near` to `far` along z."""

    shape: Shape
    x: Length
    y: Length
    rotation: Angle = 0.0
    near: Length
    far: Length

    @model_validator(mode="after")
    def _has_depth(self) -> Self:
        if self.far <= self.near:
            raise ValueError("a volume whose far end lies beyond its near end is expected")
        return self


class Obstacle(Record):
    id: Id
    name: Name
    kind: ObstacleKind
    plate: Id
    volume: Volume


class DepthLimit(Record):
    """The firewall or a sloping floor: nothing reaches beyond z = at_origin + slope_x·x + slope_y·y over its shape."""

    id: Id
    name: Name
    plate: Id
    shape: Shape
    x: Length
    y: Length
    rotation: Angle = 0.0
    at_origin: Length
    slope_x: Number = 0.0
    slope_y: Number = 0.0

    def depth_at(self, x: float, y: float) -> float:
        """The limit in mm behind the front face at a point of the plate."""
        return self.at_origin + self.slope_x * x + self.slope_y * y


class MovingPart(Record):
    """Something that moves, such as a control shaft, a yoke or a throttle: its volume and each way it goes."""

    id: Id
    name: Name
    plate: Id
    volume: Volume
    travels: tuple[Travel, ...] = ()
    turn: Turn | None = None
    """How it turns, such as a yoke from stop to stop, at each place of its travel."""


class KeepOut(Record):
    """A space in front of the panel that must stay free: the yoke at full travel, a glareshield's overhang."""

    id: Id
    name: Name
    plate: Id
    volume: Volume
    is_solid: bool = False
    """True for what hides the panel behind it, such as a glareshield; False for a space that is only kept free."""


class Eye(Record):
    """The pilot's eye in aircraft axes in mm, and the x of the vertical plane of forward vision."""

    x: Length
    y: Length
    z: Length
    centre_line: Length
    source: Source


class Compass(Record):
    """The magnetic compass in aircraft axes, in mm."""

    x: Length
    y: Length
    z: Length
    source: Source


class Surroundings(Record):
    obstacles: tuple[Obstacle, ...] = ()
    depth_limits: tuple[DepthLimit, ...] = ()
    moving_parts: tuple[MovingPart, ...] = ()
    keep_outs: tuple[KeepOut, ...] = ()
    eye: Eye | None = None
    compass: Compass | None = None

    @property
    def things(self) -> tuple[Obstacle | DepthLimit | MovingPart | KeepOut, ...]:
        """Everything that stands around the panel."""
        return (*self.obstacles, *self.depth_limits, *self.moving_parts, *self.keep_outs)
