"""Directions on a plate in words: along its axes where they are, else as an angle counter-clockwise from +X.

Angles are as seen from the front, by the pilot.
"""

import math
from typing import Final

from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.units import format_angle

LEGEND: Final = "Angles are counter-clockwise from +X, seen from the front."
_AXES: Final = {0.0: "+X", 90.0: "+Y", 180.0: "−X", 270.0: "−Y"}
_LINES: Final = {0.0: "X", 90.0: "Y"}


def bearing(at: Placement, local: float = 0.0) -> float:
    """Where a direction of a shape's own axes points on the plate, in degrees from +X, 0 to 360."""
    away = math.radians(local)
    origin, end = at.point(Point(0.0, 0.0)), at.point(Point(math.cos(away), math.sin(away)))
    return round(math.degrees(math.atan2(end.y - origin.y, end.x - origin.x)) % 360.0, 6) % 360.0


def toward(degrees: float) -> str:
    """'toward +Y', or 'toward 30° from +X'."""
    return f"toward {_AXES.get(degrees) or f'{format_angle(degrees)} from +X'}"


def along(degrees: float) -> str:
    """'along Y', or 'along 30° from +X': a line has no sense, so that 0 to 180° are enough."""
    line = degrees % 180.0
    return f"along {_LINES.get(line) or f'{format_angle(line)} from +X'}"
