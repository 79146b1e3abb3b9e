"""Contours as shapely geometries, with a stated error.

A circumscribed polygon holds its contour whole, an inscribed one is held by it. Cuts and bodies are circumscribed, so
that a pass on polygons is a true pass; the outline is the other way round. Polygons only pick candidates and draw: each
reported value comes from the true lines and arcs (`panelcad.geometry.gap`).
"""

import math
from enum import Enum
from typing import Final

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment

CHORD_ERROR: Final = 0.005
"""Greatest distance in mm between an arc and its polygon."""


class Side(Enum):
    """On which side of a true arc its polygon runs."""

    INSCRIBED = "inscribed"
    CIRCUMSCRIBED = "circumscribed"


def core_geometry(contour: Rounded) -> BaseGeometry:
    """The core as a shapely point, line or polygon: exact. Made once for each contour, as a cached property would."""
    made: BaseGeometry | None = contour.__dict__.get("_core_geometry")
    if made is None:
        made = contour.__dict__["_core_geometry"] = _core_geometry(contour)
    return made


def _core_geometry(contour: Rounded) -> BaseGeometry:
    if len(contour.core) == 1:
        return shapely.Point(contour.core[0])
    if len(contour.core) == 2:
        return shapely.LineString(contour.core)
    return shapely.Polygon(contour.core)


def polygon(contour: Contour, side: Side = Side.INSCRIBED, error: float = CHORD_ERROR) -> shapely.Polygon:
    """A polygon at most `error` mm from the contour.

    Inscribed means that the polygon lies inside the contour (concave arcs are then circumscribed), and the reverse.
    """
    return shapely.Polygon([p for segment in contour.segments for p in corners(segment, side, error)])


def corners(segment: Segment, side: Side, error: float = CHORD_ERROR) -> list[Point]:
    """The polygon's corners for one segment of a counter-clockwise contour, its end left out."""
    if not isinstance(segment, Arc):
        return [segment.start]
    convex = segment.sweep > 0
    outside = (side is Side.CIRCUMSCRIBED) == convex
    return _tangent_corners(segment, error) if outside else _chord_corners(segment, error)


def _pieces(arc: Arc, error: float) -> int:
    """Chords needed: half angle 2 asin √(e / 2R), at least one for each eighth turn."""
    half = 2 * math.asin(min(1.0, math.sqrt(error / (2 * arc.radius))))
    return max(1, math.ceil(abs(arc.sweep) / (2 * half)), math.ceil(abs(arc.sweep) / (math.pi / 4) - 1e-9))


def _chord_corners(arc: Arc, error: float) -> list[Point]:
    count = _pieces(arc, error)
    return [arc.start, *(arc.at(i / count) for i in range(1, count))]


def _tangent_corners(arc: Arc, error: float) -> list[Point]:
    """Start, then where the tangents of neighbouring points meet: at R / cos(half step)."""
    count = _pieces(arc, error)
    reach = arc.radius / math.cos(abs(arc.sweep) / count / 2)
    tips = []
    for i in range(count):
        angle = arc.start_angle + arc.sweep * (i + 0.5) / count
        tips.append(Point(arc.centre.x + reach * math.cos(angle), arc.centre.y + reach * math.sin(angle)))
    return [arc.start, *tips]
