"""What would cure a finding: moves to the left, to the right, up or down that part two pieces."""

import math
from collections.abc import Callable
from typing import Final

from panelcad.checks.parts import Piece
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, Gap
from panelcad.geometry.placement import Placement
from panelcad.model.finding import Cure, Finding, Measure
from panelcad.units import LengthUnit

FARTHEST: Final = 150.0
"""A cure that needs a longer move, in mm, is a new layout and is not offered."""
_TIMES: Final = 10.0
_NEAR: Final = 12.7
"""A move of this many mm is offered however little is missing, and one of so many times what is missing; beyond that
it is no cure of a small want but a new layout too (shop setting)."""
_STEP: Final = {LengthUnit.INCH: 0.254, LengthUnit.MM: 0.1}
"""Moves are offered in hundredths of an inch or tenths of a mm, rounded up so that they suffice."""
_WAYS: Final = ((-1.0, 0.0), (1.0, 0.0), (0.0, 1.0), (0.0, -1.0))
_TRIES: Final = 40
_CLOSE_ENOUGH: Final = 1e-4

Measuring = Callable[[Piece, Contour], Gap]


def moves_apart(a: Piece, b: Piece, required: float, gap_to: Measuring) -> tuple[Cure, ...]:
    """The moves of one of two pieces that leave `required` mm between them, the shortest first; () where none can."""
    found: list[Cure] = []
    for mover, stays in ((b, a), (a, b)):
        if mover.part.can_move:

            def left(dx: float, dy: float, mover: Piece = mover, stays: Piece = stays) -> float:
                return gap_to(stays, Placement(dx, dy).contour(mover.contour)).distance

            found += moves(mover.owner, left, required)
    return tuple(sorted(found, key=_length))


def moves(item: str, left: Callable[[float, float], float], required: float) -> list[Cure]:
    """The moves along the axes after which `left(dx, dy)` is at least `required` mm, the shortest first."""
    missing = required - left(0.0, 0.0)
    reached = [(length, way) for way in _WAYS if (length := _reach(left, way, required, missing)) is not None]
    made = [Cure(item=item, dx=length * x, dy=length * y) for length, (x, y) in reached]
    return sorted(made, key=_length)


def missing_of(found: Finding) -> float:
    """What is missing in mm, and never nothing; infinite where it is no length, or one that should be less."""
    if found.measured is None or found.required is None or found.measure is not Measure.LENGTH or found.more_is_worse:
        return math.inf
    return max(found.required - found.measured, 2 * TIE)


def farthest_for(missing: float) -> float:
    """The longest move in mm that is offered where `missing` mm are: a short want is no reason for a long way."""
    return min(FARTHEST, max(_NEAR, _TIMES * missing))


def rounded_up(length: float, unit: LengthUnit) -> float:
    """A move's length in mm as it is offered to somebody who reads this unit."""
    return math.ceil(length / _STEP[unit] - 1e-4) * _STEP[unit]


def _length(cure: Cure) -> float:
    return round(math.hypot(cure.dx, cure.dy), 6)


def _reach(
    left: Callable[[float, float], float], way: tuple[float, float], required: float, missing: float
) -> float | None:
    """How far to go that way. A move of d changes a gap by at most d, so the first steps never overshoot; they grow."""
    low, high, reach = 0.0, math.inf, missing
    if reach > FARTHEST:
        return None
    for count in range(_TRIES):
        short = required - left(reach * way[0], reach * way[1])
        if short <= TIE / 2:
            high = reach
            if short >= -TIE / 2 or high - low < _CLOSE_ENOUGH:
                return high
        elif reach >= FARTHEST:
            return None
        else:
            low = reach
        growing = min(FARTHEST, reach + short * 2.0 ** max(0, count - 1))
        reach = (low + high) / 2 if high < math.inf else growing
    return high if high < math.inf else None
