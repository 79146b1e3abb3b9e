"""Who stands beside a thing in its row or column, found without looking at the whole panel.

In one row stand things whose spans across the row overlap. Things are kept in bands across the row, each in the order
in which they stand along it, so that a look costs what is in the bands it touches, and there only the next few.
"""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import floor
from statistics import median
from typing import Final, NamedTuple

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.standing import Standing

_MOST_BANDS: Final = 64
_NEXT: Final = 2
"""A gap that is repeated lies between the neighbour and the one after it."""


class _Placed(NamedTuple):
    """`middle` is where it stands along the row; `number` keeps the order of those that stand at the same place."""

    middle: float
    number: int
    thing: Standing


@dataclass(frozen=True)
class Beside:
    """The two nearest on either side in the row, the neighbour first."""

    before: tuple[Standing, ...]
    after: tuple[Standing, ...]


class Rows:
    """Rows along an axis."""

    def __init__(self, things: tuple[Standing, ...], along: Axis) -> None:
        self._along = along
        self._across = Axis.UP if along is Axis.ACROSS else Axis.ACROSS
        spans = [thing.span(self._across) for thing in things]
        self._low = min((low for low, _ in spans), default=0.0)
        reach = max((high for _, high in spans), default=0.0) - self._low
        usual = median([high - low for low, high in spans]) if spans else 0.0
        self._step = max(usual, reach / _MOST_BANDS) or 1.0
        self._last = floor(reach / self._step)
        self._bands: defaultdict[int, list[_Placed]] = defaultdict(list)
        for number, thing in enumerate(things):
            for band in self._touched(thing):
                self._bands[band].append(_Placed(thing.middle(along), number, thing))
        for placed in self._bands.values():
            placed.sort(key=_order)

    def _touched(self, thing: Standing) -> range:
        low, high = thing.span(self._across)
        first = max(0, floor((low - self._low) / self._step))
        return range(first, min(self._last, floor((high - self._low) / self._step)) + 1)

    def beside(self, moving: Standing) -> Beside:
        """Those next to a thing that is none of the row."""
        here = moving.middle(self._along)
        before: dict[int, _Placed] = {}
        after: dict[int, _Placed] = {}
        for band in self._touched(moving):
            row = self._bands.get(band, [])
            at = bisect_right(row, here, key=lambda placed: placed.middle)
            before |= self._next(moving, (row[i] for i in range(at - 1, -1, -1)))
            after |= self._next(moving, (row[i] for i in range(at, len(row))))
        nearest_last, nearest_first = sorted(before.values(), key=_order), sorted(after.values(), key=_order)
        return Beside(_things(reversed(nearest_last)), _things(nearest_first))

    def _next(self, moving: Standing, outward: Iterator[_Placed]) -> dict[int, _Placed]:
        """The first few, going outward, that stand in one row with it."""
        low, high = moving.span(self._across)
        found: dict[int, _Placed] = {}
        for placed in outward:
            its_low, its_high = placed.thing.span(self._across)
            if its_low < high and low < its_high:
                found[placed.number] = placed
                if len(found) == _NEXT:
                    break
        return found


def _order(placed: _Placed) -> tuple[float, int]:
    return placed.middle, placed.number


def _things(placed: Iterable[_Placed]) -> tuple[Standing, ...]:
    return tuple(one.thing for one in placed)[:_NEXT]
