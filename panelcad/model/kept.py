"""Things made from frozen records, kept by the identity of those records, so that an edit re-makes what it touched."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from functools import lru_cache
from itertools import compress
from operator import is_, is_not
from typing import Any, Final, TypeVar

Made = TypeVar("Made")
Thing = TypeVar("Thing")
Member = TypeVar("Member")
_KEPT: "OrderedDict[tuple[Hashable, ...], tuple[tuple[Any, ...], Any]]" = OrderedDict()
_MOST_KEPT: Final = 50_000
_LATELY: dict[str, "OrderedDict[tuple[Hashable, ...], tuple[tuple[Any, ...], Any]]"] = {}
_LATEST: Final = 4
_BY_VALUE: Final = (str, float, int)


def kept(purpose: str, sources: tuple[Any, ...], make: Callable[[], Made]) -> Made:
    """What was made for this purpose from these very sources before, or make it now; the oldest go first.

    Sources count by identity, save texts and numbers, which count by value.
    """
    key = (purpose, *_key(sources))
    found = _KEPT.get(key)
    if found is None:
        found = _KEPT[key] = (sources, make())
        if len(_KEPT) > _MOST_KEPT:
            _KEPT.popitem(last=False)
    made: Made = found[1]
    return made


def _key(sources: tuple[Any, ...]) -> tuple[Hashable, ...]:
    return tuple([source if isinstance(source, _BY_VALUE) else id(source) for source in sources])


def kept_lately(purpose: str, sources: tuple[Any, ...], make: Callable[[], Made]) -> Made:
    """As `kept`, of the few last sources alone: for what is as large as a whole project."""
    known = _LATELY.setdefault(purpose, OrderedDict())
    key = _key(sources)
    found = known.pop(key, None)
    known[key] = found = (sources, make()) if found is None else found
    if len(known) > _LATEST:
        known.popitem(last=False)
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
    else:
        changed = places_changed(row.things, things)
        if not changed:
            return row.made
        made = _with_places(row.made, {place: make(things[place]) for place in changed})
    _ROWS[purpose] = _Row(sources, things, made)
    if len(_ROWS) > _MOST_ROWS:
        _ROWS.popitem(last=False)
    return made


def kept_choice(
    purpose: tuple[Hashable, ...], things: tuple[Thing, ...], is_wanted: Callable[[Thing], bool]
) -> tuple[Thing, ...]:
    """Those of a row that are wanted, in its order; asked again only of what changed since the last time."""
    return tuple(compress(things, kept_row(purpose, things, (), is_wanted)))


@dataclass(frozen=True)
class Seating:
    """Which members belong to which owner, by their places in a row of owners and a row of members."""

    members: tuple[tuple[int, ...], ...]
    """Of each owner."""
    owner: tuple[int | None, ...]
    """Of each member; None where its owner is not in the row."""


@lru_cache(maxsize=32)
def seating(owners: tuple[str, ...], owner_of: tuple[str | None, ...]) -> Seating:
    """Who belongs to whom, by the owners' names and the name of each member's owner."""
    places = {name: place for place, name in enumerate(owners)}
    owner = tuple(None if name is None else places.get(name) for name in owner_of)
    members: list[list[int]] = [[] for _ in owners]
    for member, place in enumerate(owner):
        if place is not None:
            members[place].append(member)
    return Seating(tuple(map(tuple, members)), owner)


@dataclass(frozen=True)
class _Groups:
    owners: tuple[Any, ...]
    members: tuple[Any, ...]
    seats: Seating
    made: tuple[Any, ...]


_GROUPS: "OrderedDict[tuple[Hashable, ...], _Groups]" = OrderedDict()


def kept_groups(
    purpose: tuple[Hashable, ...],
    owners: tuple[Thing, ...],
    members: tuple[Member, ...],
    seats: Seating,
    make: Callable[[Thing, tuple[Member, ...]], Made],
) -> tuple[Made, ...]:
    """As `kept_row`, of each owner with its members: made again where the owner or one of its members changed."""

    def made_at(place: int) -> Made:
        return make(owners[place], tuple(members[member] for member in seats.members[place]))

    last = _GROUPS.get(purpose)
    if last is None or last.seats is not seats:
        made = tuple(map(made_at, range(len(owners))))
    else:
        changed = {seats.owner[member] for member in places_changed(last.members, members)}
        changed.update(places_changed(last.owners, owners))
        made = _with_places(last.made, {place: made_at(place) for place in changed if place is not None})
    _GROUPS[purpose] = _Groups(owners, members, seats, made)
    if len(_GROUPS) > _MOST_ROWS:
        _GROUPS.popitem(last=False)
    return made


def places_changed(before: tuple[Any, ...], now: tuple[Any, ...]) -> list[int]:
    """Where another thing stands than before in a row of the same length; things count by identity."""
    return list(compress(range(len(now)), map(is_not, before, now)))


def _with_places(row: tuple[Made, ...], changed: dict[int, Made]) -> tuple[Made, ...]:
    made = list(row)
    for place, thing in changed.items():
        made[place] = thing
    return tuple(made)


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
