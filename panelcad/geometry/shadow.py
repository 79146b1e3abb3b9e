"""What a solid in front of a plate hides of it from an eye: the prism's central projection on the plate's face.

All in the plate's axes, in mm: the face is z = 0, the eye has z < 0. Curved outlines are circumscribed, so a shadow is
never too small by more than rounding and never too large by more than the chord error grown by the projection.
"""

from typing import Final

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.geometry.contour import Contour
from panelcad.geometry.polygon import Side, polygon
from panelcad.geometry.space import Spot

_CHORD: Final = 0.05
_BEFORE_EYE: Final = 1.0
"""A solid is cut off this many mm in front of the eye."""


def shadow(footprint: Contour, near: float, far: float, eye: Spot) -> BaseGeometry:
    """The part of the face that a prism from `near` to `far` along z hides; empty where it hides nothing."""
    return ring_shadow(list(polygon(footprint, Side.CIRCUMSCRIBED, _CHORD).exterior.coords[:-1]), near, far, eye)


def ring_shadow(ring: list[tuple[float, ...]], near: float, far: float, eye: Spot) -> BaseGeometry:
    """As `shadow`, for a polygon's corners: both ends and every side of the prism, projected and joined."""
    near, far = max(near, eye.z + _BEFORE_EYE), min(far, 0.0)
    if near >= far:
        return shapely.Polygon()
    ends = [[_projected(x, y, z, eye) for x, y in ring] for z in (near, far)]
    sides = [
        shapely.MultiPoint([ends[0][i - 1], ends[0][i], ends[1][i], ends[1][i - 1]]).convex_hull
        for i in range(len(ring))
    ]
    faces = [shapely.make_valid(shapely.Polygon(end)) for end in ends]
    return shapely.union_all([face for face in (*faces, *sides) if face.area > 0.0])


def _projected(x: float, y: float, z: float, eye: Spot) -> tuple[float, float]:
    """Where the ray from the eye through a point meets the face z = 0."""
    reach = eye.z / (eye.z - z)
    return eye.x + reach * (x - eye.x), eye.y + reach * (y - eye.y)
