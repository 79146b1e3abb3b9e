"""A row of like things: switches, breakers, lamps one pitch after the other."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, Literal

from panelcad.model.project import Item, Option

_ALIKE: Final = 0.05
"""mm by which places and pitches of one row may differ."""
_PAIR, _FEWEST = 2, 3

Axis = Literal["x", "y"]
_ACROSS_OF: Final[dict[Axis, Axis]] = {"x": "y", "y": "x"}


@dataclass(frozen=True)
class LikeRow:
    """Items of one kind in one line along x or y of the plate, in order, one pitch in mm after the other."""

    ids: tuple[str, ...]
    axis: Axis
    pitch: float

    def shifts(self, pitch: float) -> Iterator[tuple[str, float, float]]:
        """How far each item moves in x and y to another pitch in mm, the row's middle where it is."""
        for place, item_id in enumerate(self.ids):
            by = (place - (len(self.ids) - 1) / 2) * (pitch - self.pitch)
            yield (item_id, by, 0.0) if self.axis == "x" else (item_id, 0.0, by)


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


def _kind(item: Item) -> tuple[str | None, str | None, float]:
    return item.cutout, item.plate, item.rotation


def _axis(a: Item, b: Item) -> Axis | None:
    if abs(a.y - b.y) <= _ALIKE < abs(a.x - b.x):
        return "x"
    return "y" if abs(a.x - b.x) <= _ALIKE < abs(a.y - b.y) else None


def _at(item: Item, axis: Axis) -> float:
    return item.x if axis == "x" else item.y


def _line(option: Option, one: Item, axis: Axis) -> list[Item]:
    """All of its kind that stand in one line with it, in order."""
    across = _ACROSS_OF[axis]
    mine = (item for item in option.items if item.plate is not None and _kind(item) == _kind(one))
    in_line = (each for each in mine if abs(_at(each, across) - _at(one, across)) <= _ALIKE)
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
