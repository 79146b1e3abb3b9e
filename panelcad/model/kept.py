"""Things made from frozen records, kept by the identity of those records, so that an edit re-makes what it touched."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from operator import is_
from typing import Any, Final, TypeVar

Made = TypeVar("Made")
Thing = TypeVar("Thing")
_KEPT: "OrderedDict[tuple[Hashable, ...], tuple[tuple[Any, ...], Any]]" = OrderedDict()
_MOST_KEPT: Final = 50_000
_BY_VALUE: Final = (str, float, int)


def kept(purpose: str, sources: tuple[Any, ...], make: Callable[[], Made]) -> Made:
    """What was made for this purpose from these very sources before, or make it now; the oldest go first.

    Sources count by identity, save texts and numbers, which count by value.
    """
    key = (purpose, *[source if isinstance(source, _BY_VALUE) else id(source) for source in sources])
    found = _KEPT.get(key)
    if found is None:
        found = _KEPT[key] = (sources, make())
        if len(_KEPT) > _MOST_KEPT:
            _KEPT.popitem(last=False)
    made: Made = found[1]
    return made


@dataclass(frozen=True)
class _Row:
    sources: tuple[Any, ...]
    things: tuple[Any, ...]
    made: tuple[Any, ...]


_ROWS: "OrderedDict[tuple[Hashable, ...], _Row]" = OrderedDict()
_MOST_ROWS: Final = 500


def kept_row(
    purpose: tuple[Hashable, ...],
    things: tuple[Thing, ...],
    sources: tuple[Any, ...],
    make: Callable[[Thing], Made],
) -> tuple[Made, ...]:
    """What is made of each thing of a row; an edit leaves most of a row as it was, and that is taken over.

    Taken over is what the same thing in the same place gave when the row was last asked for with the same purpose and
    sources: sources and things count by identity. A row that stayed the same gives the very same tuple.
    """
    row = _ROWS.get(purpose)
    if row is None or not _same(row.sources, sources) or len(row.things) != len(things):
        made = tuple(map(make, things))
    elif _same(row.things, things):
        return row.made
    else:
        made = tuple(
            [
                was if thing is before else make(thing)
                for thing, before, was in zip(things, row.things, row.made, strict=True)
            ]
        )
    _ROWS[purpose] = _Row(sources, things, made)
    if len(_ROWS) > _MOST_ROWS:
        _ROWS.popitem(last=False)
    return made


def _same(some: tuple[Any, ...], others: tuple[Any, ...]) -> bool:
    return some is others or (len(some) == len(others) and all(map(is_, some, others)))


def kept_with(thing: Any, purpose: str, make: Callable[[], Made]) -> Made:
    """What was made of this one frozen thing, kept with it as a cached property is and as long.

    A purpose has a space in it, so that it is never the name of a field.
    """
    store: dict[str, Any] = thing.__dict__
    if purpose not in store:
        store[purpose] = make()
    made: Made = store[purpose]
    return made


def kept_while(thing: Any, purpose: str, sources: tuple[Any, ...], make: Callable[[], Made]) -> Made:
    """As `kept_with`, and made again where it was made from other sources; sources count by identity."""
    store: dict[str, Any] = thing.__dict__
    found = store.get(purpose)
    if found is None or not _same(found[0], sources):
        found = store[purpose] = (sources, make())
    made: Made = found[1]
    return made
