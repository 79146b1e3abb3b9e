"""Which control a line of lettering stands for: the one it is put below or above of, else the nearest one."""

import math
from collections.abc import Iterable
from typing import Final, NamedTuple

from panelcad.geometry.boxes import box_gap
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, gap
from panelcad.geometry.point import Point
from panelcad.model.layout import PlacedItem

_CENTRED: Final = 0.05
"""mm by which words may stand off a control's middle and still be centred on it."""
_CLOSE: Final = 8.0
"""mm; words that are put at a control stand no farther from its face, though clear of its lever: shop setting."""


class _Standing(NamedTuple):
    """How words stand to a control; the least is what they stand for."""

    is_elsewhere: bool
    """Whether they are not put right below or above it, as labels are."""
    lies_across: bool
    apart: float
    """mm."""


def nearest_controls(words: Contour, turn: float, controls: Iterable[PlacedItem], limit: float) -> list[str]:
    """The ids of the controls that words in this box, turned by these degrees, stand for; none beyond the limit in mm.

    Words centred on a control and close to it are its label, however near their ends come to another; a control that
    they lie across comes after one that they stand beside; else the nearest counts, several where they are as near.
    """
    near = (placed for placed in controls if box_gap(placed.face.bounds, words.bounds) <= limit + TIE)
    standing = {placed.item.id: _standing(words, turn, placed) for placed in near}
    within = {one: each for one, each in standing.items() if each.apart <= limit + TIE}
    if not within:
        return []
    best = min(within.values())
    return sorted(one for one, each in within.items() if each[:2] == best[:2] and each.apart <= best.apart + TIE)


def _standing(words: Contour, turn: float, placed: PlacedItem) -> _Standing:
    apart = gap(placed.face, words).distance
    across = apart < -TIE
    return _Standing(across or apart > _CLOSE or not _is_centred(words, turn, placed), across, apart)


def _is_centred(words: Contour, turn: float, placed: PlacedItem) -> bool:
    """Whether the line's middle is on the control's middle as one reads along the line."""
    (x, y), along = _middle(words), math.radians(turn)
    dx, dy = placed.centre.x - x, placed.centre.y - y
    return abs(dx * math.cos(along) + dy * math.sin(along)) <= _CENTRED


def _middle(words: Contour) -> Point:
    left, bottom, right, top = words.bounds
    return Point((left + right) / 2, (bottom + top) / 2)
