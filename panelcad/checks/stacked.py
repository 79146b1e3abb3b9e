"""Arrays of many things one under the other; an edit replaces the rows of what it touched."""

from collections import OrderedDict
from collections.abc import Hashable
from dataclasses import dataclass
from itertools import accumulate
from typing import Any, Final

import numpy as np

from panelcad.model.kept import places_changed

Numbers = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True)
class _Stack:
    arrays: tuple[Numbers, ...]
    starts: tuple[int, ...]
    whole: Numbers


_STACKS: "OrderedDict[tuple[Hashable, ...], _Stack]" = OrderedDict()
_MOST_STACKS: Final = 100


def stacked(purpose: tuple[Hashable, ...], arrays: tuple[Numbers, ...]) -> Numbers:
    """All arrays one under the other, in order; not to be written to. At least one array is expected.

    Where few differ, by identity, from those stacked last for this purpose, only their rows are replaced.
    """
    last = _STACKS.get(purpose)
    changed = None if last is None or len(last.arrays) != len(arrays) else places_changed(last.arrays, arrays)
    if last is None or changed is None or any(len(arrays[i]) != len(last.arrays[i]) for i in changed):
        made = _from_all(arrays)
    else:
        made = _with_rows(last, arrays, changed)
    _STACKS[purpose] = made
    if len(_STACKS) > _MOST_STACKS:
        _STACKS.popitem(last=False)
    return made.whole


def _from_all(arrays: tuple[Numbers, ...]) -> _Stack:
    ends = accumulate(len(array) for array in arrays)
    return _Stack(arrays, (0, *ends)[:-1], np.concatenate(arrays))


def _with_rows(last: _Stack, arrays: tuple[Numbers, ...], changed: list[int]) -> _Stack:
    whole = last.whole.copy()
    for place in changed:
        start = last.starts[place]
        whole[start : start + len(arrays[place])] = arrays[place]
    return _Stack(arrays, last.starts, whole)
