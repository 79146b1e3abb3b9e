"""A row of like things that stand too near each other is spread about its middle, all by one pitch."""

from collections.abc import Collection
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from panelcad.editing.extents import Axis, bodies
from panelcad.editing.move import move_each
from panelcad.editing.refusal import edit
from panelcad.model.project import Item, Option, Project

_ALIKE: Final = 0.05
"""mm by which places and pitches of one row may differ."""
_PAIR, _FEWEST = 2, 3


@dataclass(frozen=True)
class LikeRow:
    """Items of one kind in one line along an axis, in order, one pitch in mm after the other."""

    ids: tuple[str, ...]
    axis: Axis
    pitch: float


def row_with(option: Option, ids: Collection[str]) -> LikeRow | None:
    """The row of three or more in which these two items, or cuts of items, are neighbours; None where there is none."""
    two = [item for item in option.items if {item.id, item.cut} & set(ids)]
    if len(two) != len(set(ids)) or len(two) != _PAIR or _kind(two[0]) != _kind(two[1]):
        return None
    axis = _axis(*two)
    if axis is None:
        return None
    row = _run(_line(option, two[0], axis), two, axis)
    if len(row) < _FEWEST:
        return None
    return LikeRow(tuple(item.id for item in row), axis, abs(_at(two[1], axis) - _at(two[0], axis)))


@edit
def spread_row(project: Project, option_id: str, row: LikeRow, pitch: float) -> Project:
    """The row at another pitch in mm, its middle where it was.

    Raises `EditRefused` for what is locked or cut already, `UnknownName`.
    """
    shifts: dict[str, tuple[float, float]] = {}
    for place, item_id in enumerate(row.ids):
        by = (place - (len(row.ids) - 1) / 2) * (pitch - row.pitch)
        (body,) = bodies(project, project.option(option_id), [item_id])
        shifts |= dict.fromkeys(body.ids, (by, 0.0) if row.axis is Axis.ACROSS else (0.0, by))
    return move_each(project, option_id, shifts)


def _kind(item: Item) -> tuple[str | None, str | None, float]:
    return item.cutout, item.plate, item.rotation


def _axis(a: Item, b: Item) -> Axis | None:
    if abs(a.y - b.y) <= _ALIKE < abs(a.x - b.x):
        return Axis.ACROSS
    return Axis.UP if abs(a.x - b.x) <= _ALIKE < abs(a.y - b.y) else None


def _at(item: Item, axis: Axis) -> float:
    return item.x if axis is Axis.ACROSS else item.y


def _line(option: Option, one: Item, axis: Axis) -> list[Item]:
    """All of its kind that stand in one line with it, in order."""
    level = one.y if axis is Axis.ACROSS else one.x
    mine = (item for item in option.items if item.plate is not None and _kind(item) == _kind(one))
    in_line = (each for each in mine if abs((each.y if axis is Axis.ACROSS else each.x) - level) <= _ALIKE)
    return sorted(in_line, key=lambda item: _at(item, axis))


def _run(line: list[Item], two: list[Item], axis: Axis) -> list[Item]:
    """Those that follow each other at the pitch of these two, which are neighbours."""
    low, high = sorted(line.index(item) for item in two)
    if high - low != 1:
        return []
    gaps = [_at(after, axis) - _at(before, axis) for before, after in pairwise(line)]
    pitch = gaps[low]
    while low > 0 and abs(gaps[low - 1] - pitch) <= _ALIKE:
        low -= 1
    while high < len(gaps) and abs(gaps[high] - pitch) <= _ALIKE:
        high += 1
    return line[low : high + 1]
