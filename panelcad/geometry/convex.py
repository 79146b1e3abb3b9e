"""Convex shapes with exact distances, about the middle of their boxes, in mm."""

import math

from panelcad.geometry.contour import Rounded
from panelcad.geometry.point import Point


def chamfered(width: float, height: float, leg: float, radius: float = 0.0) -> Rounded:
    """A rectangle with 45° corners of this leg; the corners that leaves are rounded."""
    x, y, core_leg = width / 2 - radius, height / 2 - radius, _core_leg(leg, radius)
    half = ((x - core_leg, -y), (x, core_leg - y), (x, y - core_leg), (x - core_leg, y))
    return Rounded(tuple(Point(*p) for p in half + tuple((-px, -py) for px, py in half)), radius)


def chamfered_fits(width: float, height: float, leg: float, radius: float) -> bool:
    """Whether chamfers and corners leave a straight piece of each side."""
    core_leg = _core_leg(leg, radius)
    return core_leg > 0.0 and 2 * (radius + core_leg) < min(width, height)


def _core_leg(leg: float, radius: float) -> float:
    """The leg of the chamfer that lies `radius` inside: the sides come in by r each, the chamfer by r·√2 along them."""
    return leg - radius * (2 - math.sqrt(2))


def trapezoid(width: float, height: float, side_angle: float, radius: float) -> Rounded:
    """A trapezoid, its longer side on top; both sides lean in by `side_angle` degrees; corners rounded."""
    top, bottom = _core_widths(width, height, side_angle, radius)
    y = height / 2 - radius
    core = ((-bottom / 2, -y), (bottom / 2, -y), (top / 2, y), (-top / 2, y))
    return Rounded(tuple(Point(*p) for p in core), radius)


def trapezoid_fits(width: float, height: float, side_angle: float, radius: float) -> bool:
    """Whether the corners leave a straight piece of each side."""
    top, bottom = _core_widths(width, height, side_angle, radius)
    return 2 * radius < height and top > 0.0 and bottom > 0.0


def _core_widths(width: float, height: float, side_angle: float, radius: float) -> tuple[float, float]:
    """Widths, on top and below, of the trapezoid that lies `radius` inside on every side.

    A leaning side moved inward by r shifts along x by r / cos(angle); r below the top it has moved r·tan(angle) more.
    """
    angle = math.radians(side_angle)
    slope, inset = math.tan(angle), radius / math.cos(angle)
    top = width - 2 * (radius * slope + inset)
    return top, top - 2 * (height - 2 * radius) * slope
