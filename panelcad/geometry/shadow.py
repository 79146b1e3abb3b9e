"""What a solid hides of a plate's face from an eye: the solid's central projection on the face, in mm.

The face is z = 0 of its plate, the eye has z < 0 there. A solid may be given in another plate's axes. Curved outlines
are circumscribed, so a shadow is never too small by more than rounding and never too large by more than the chord
error grown by the projection.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.geometry.contour import Contour
from panelcad.geometry.polygon import Side, polygon
from panelcad.geometry.space import PlateFrame, Spot

_CHORD: Final = 0.05
_BEFORE_EYE: Final = 1.0
"""A solid is cut off this many mm in front of the eye."""
_CONVEX: Final = 1e-9

Face = tuple[Spot, ...]


@dataclass(frozen=True)
class Solid:
    """A prism by its faces."""

    faces: tuple[Face, ...]
    is_convex: bool

    def carried(self, here: PlateFrame, there: PlateFrame) -> "Solid":
        """The same solid, from one plate's axes to another's."""
        faces = tuple(tuple(there.to_plate(here.to_aircraft(corner)) for corner in face) for face in self.faces)
        return Solid(faces, self.is_convex)


def prism(footprint: Contour, near: float, far: float) -> Solid:
    """A footprint from `near` to `far` along z."""
    drawn = polygon(footprint, Side.CIRCUMSCRIBED, _CHORD)
    ring = drawn.exterior.coords[:-1]
    ends = [tuple(Spot(x, y, z) for x, y in ring) for z in (near, far)]
    walls = [(ends[0][i - 1], ends[0][i], ends[1][i], ends[1][i - 1]) for i in range(len(ring))]
    return Solid((*ends, *walls), drawn.convex_hull.area - drawn.area < _CONVEX * drawn.area)


def shadow(solid: Solid, eye: Spot) -> BaseGeometry:
    """The part of the face that a solid hides; solid and eye in the face's axes. Empty where it hides nothing."""
    if eye.z + _BEFORE_EYE >= 0.0:
        return shapely.Polygon()
    between = [cut for face in solid.faces if (cut := _between(face, eye.z + _BEFORE_EYE, 0.0))]
    rings = [[_projected(corner, eye) for corner in face] for face in between]
    if solid.is_convex:
        hull = shapely.MultiPoint([corner for ring in rings for corner in ring]).convex_hull
        return hull if hull.area > 0.0 else shapely.Polygon()
    return _union(rings)


def _union(rings: Iterable[list[tuple[float, float]]]) -> BaseGeometry:
    faces = [shapely.make_valid(shapely.Polygon(ring)) for ring in rings]
    return shapely.union_all([face for face in faces if face.area > 0.0])


def _between(face: Face, near: float, far: float) -> Face:
    """What of a face lies between two depths; fewer than three corners are nothing."""
    kept = _beyond(_beyond(face, near, 1.0), far, -1.0)
    return kept if len(kept) > 2 else ()


def _beyond(face: Face, depth: float, sign: float) -> Face:
    """What of a face lies on one side of a depth: where z is more (sign 1) or less (sign -1)."""
    return tuple(_walked(face, depth, sign)) if face else ()


def _walked(face: Face, depth: float, sign: float) -> Iterator[Spot]:
    for a, b in pairwise((*face, face[0])):
        before, after = sign * (a.z - depth), sign * (b.z - depth)
        if before >= 0.0:
            yield a
        if before * after < 0.0:
            share = before / (before - after)
            yield Spot(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), depth)


def _projected(corner: Spot, eye: Spot) -> tuple[float, float]:
    """Where the ray from the eye through a point meets the face z = 0."""
    reach = eye.z / (eye.z - corner.z)
    return eye.x + reach * (corner.x - eye.x), eye.y + reach * (corner.y - eye.y)
