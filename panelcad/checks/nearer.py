"""Moves along a plate's axes that bring a control within an arm's reach."""

import math

from panelcad.checks.pilot_sight import Seen, plate_frame
from panelcad.geometry.space import Spot
from panelcad.model.finding import Cure


def moves_nearer(seen: Seen, shoulder: Spot, reach: float) -> tuple[Cure, ...]:
    """The moves after which its middle is `reach` mm from the shoulder, the shortest first; none along an axis on which
    no place is that near.
    """
    at, here = plate_frame(seen.plate).to_plate(shoulder), seen.item.centre
    across, up = at.x - here.x, at.y - here.y
    lengths = _needed(across, up, at.z, reach), _needed(up, across, at.z, reach)
    ways = (math.copysign(1.0, across), 0.0), (0.0, math.copysign(1.0, up))
    known = sorted((length, way) for length, way in zip(lengths, ways, strict=True) if length is not None)
    return tuple(Cure(item=seen.id, dx=length * x, dy=length * y) for length, (x, y) in known)


def _needed(along: float, aside: float, deep: float, reach: float) -> float | None:
    """How far to go along one axis, in mm, to come within reach of what is so far along it, aside and before."""
    left = reach * reach - aside * aside - deep * deep
    return abs(along) - math.sqrt(left) if left >= 0.0 else None
