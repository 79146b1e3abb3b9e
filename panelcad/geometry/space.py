"""Points in space and the frame of a plate in the aircraft. Axes: x right, y up, z forward; lengths in mm."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from panelcad.geometry.point import Point, direction


class Spot(NamedTuple):
    """A point in space."""

    x: float
    y: float
    z: float

    def to(self, other: "Spot") -> "Spot":
        """The way from here to there."""
        return Spot(other.x - self.x, other.y - self.y, other.z - self.z)

    @property
    def length(self) -> float:
        return math.sqrt(self.x**2 + self.y**2 + self.z**2)


@dataclass(frozen=True)
class PlateFrame:
    """Where a plate's axes stand in the aircraft: tilted about its own x axis, then canted about the vertical.

    Positive tilt leans the top forward, away from the pilot; positive cant turns the right side forward.
    """

    origin: Spot
    tilt: float = 0.0
    cant: float = 0.0

    @cached_property
    def axes(self) -> tuple[Spot, Spot, Spot]:
        """The plate's x, y and z directions in aircraft axes."""
        (ct, st), (cc, sc) = direction(self.tilt), direction(self.cant)
        return Spot(cc, 0.0, sc), Spot(st * -sc, ct, st * cc), Spot(ct * -sc, -st, ct * cc)

    def to_aircraft(self, local: Spot) -> Spot:
        ex, ey, ez = self.axes
        o = self.origin
        return Spot(
            o.x + local.x * ex.x + local.y * ey.x + local.z * ez.x,
            o.y + local.x * ex.y + local.y * ey.y + local.z * ez.y,
            o.z + local.x * ex.z + local.y * ey.z + local.z * ez.z,
        )

    def to_plate(self, spot: Spot) -> Spot:
        way = self.origin.to(spot)
        return Spot(*(way.x * axis.x + way.y * axis.y + way.z * axis.z for axis in self.axes))

    def on_face(self, point: Point) -> Spot:
        """A point of the plate's front face in aircraft axes."""
        return self.to_aircraft(Spot(point.x, point.y, 0.0))


def azimuth(way: Spot) -> float:
    """Degrees to the right of straight ahead."""
    return math.degrees(math.atan2(way.x, way.z))


def elevation(way: Spot) -> float:
    """Degrees above the horizontal."""
    return math.degrees(math.atan2(way.y, math.hypot(way.x, way.z)))


def angle_between(a: Spot, b: Spot) -> float:
    """Degrees between two ways, 0 to 180."""
    cosine = (a.x * b.x + a.y * b.y + a.z * b.z) / (a.length * b.length)
    return math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
