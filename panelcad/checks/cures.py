"""What would cure a finding: the smallest move to the left, to the right, up or down that does."""

import math
from collections.abc import Callable
from typing import Final

from panelcad.checks.parts import Piece
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, Gap
from panelcad.geometry.placement import Placement
from panelcad.model.finding import Cure

FARTHEST: Final = 150.0
"""A cure that needs a longer move, in mm, is a new layout and is not offered."""
_WAYS: Final = ((-1.0, 0.0), (1.0, 0.0), (0.0, 1.0), (0.0, -1.0))
_TRIES: Final = 40
_CLOSE_ENOUGH: Final = 1e-4

Measuring = Callable[[Piece, Contour], Gap]


def move_apart(a: Piece, b: Piece, required: float, gap_to: Measuring) -> Cure | None:
    """The smallest move of one of two pieces that leaves `required` mm between them; None where none can move."""
    movable = [(one, other) for one, other in ((b, a), (a, b)) if one.part.can_move]
    if not movable:
        return None
    mover, stays = movable[0]

    def left(dx: float, dy: float) -> float:
        return gap_to(stays, Placement(dx, dy).contour(mover.contour)).distance

    return smallest_move(mover.owner, left, required)


def smallest_move(item: str, left: Callable[[float, float], float], required: float) -> Cure | None:
    """The shortest of the moves along the axes after which `left(dx, dy)` is at least `required` mm."""
    missing = required - left(0.0, 0.0)
    reached = [(length, way) for way in _WAYS if (length := _length(left, way, required, missing)) is not None]
    if not reached:
        return None
    length, (x, y) = min(reached, key=lambda found: round(found[0], 6))
    return Cure(item=item, dx=length * x, dy=length * y)


def _length(
    left: Callable[[float, float], float], way: tuple[float, float], required: float, missing: float
) -> float | None:
    """How far to go that way. A move of d changes a gap by at most d, so steps of what is missing never overshoot."""
    low, high, reach = 0.0, math.inf, missing
    for count in range(_TRIES):
        if reach > FARTHEST:
            return None
        short = required - left(reach * way[0], reach * way[1])
        if short <= TIE / 2:
            high = reach
            if short >= -TIE / 2 or high - low < _CLOSE_ENOUGH:
                return high
        else:
            low = reach
        reach = (low + high) / 2 if high < math.inf else reach + short * (1.0 if count < 2 else 2.0)
    return high if high < math.inf else None
