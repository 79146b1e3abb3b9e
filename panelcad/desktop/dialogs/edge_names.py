"""What an edge of the sheet is called in a chooser."""

import math
from typing import Final

from panelcad.geometry.segment import Arc, Segment
from panelcad.units import LengthUnit, format_length

_SIDES: Final = ("right", "upper", "left", "lower")


def side(edge: Segment) -> str:
    """Which side of the sheet an edge of a counter-clockwise outline is on."""
    outward = math.atan2(-(edge.end.x - edge.start.x), edge.end.y - edge.start.y)
    return _SIDES[round(outward / (math.pi / 2)) % 4]


def edge_name(edge: Segment, unit: LengthUnit) -> str:
    """'lower edge, 36.000 in', or 'upper edge, 38.150 in, radius 60.000 in'."""
    words = f"{side(edge)} edge, {format_length(edge.length, unit)}"
    return f"{words}, radius {format_length(edge.radius, unit)}" if isinstance(edge, Arc) else words
