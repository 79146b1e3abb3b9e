"""Things made from frozen records, kept by the identity of those records, so that an edit re-makes what it touched."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import Any, Final, TypeVar

Made = TypeVar("Made")
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


def kept_with(thing: Any, purpose: str, make: Callable[[], Made]) -> Made:
    """What was made of this one frozen thing, kept with it as a cached property is and as long.

    A purpose has a space in it, so that it is never the name of a field.
    """
    store: dict[str, Any] = thing.__dict__
    if purpose not in store:
        store[purpose] = make()
    made: Made = store[purpose]
    return made
