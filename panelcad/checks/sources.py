"""The records that a plate's parts are made from. The same records give the same source, and a source gives one part.

Sources are kept between edits, so that what an edit left alone is recognised without a look at it.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, Final

from panelcad.checks.gone import gone_features
from panelcad.checks.parts import Fitting, Part
from panelcad.checks.parts_fitted import item_part, surrounding_part
from panelcad.checks.parts_metal import (
    Attach,
    attach_part,
    bend_part,
    cut_part,
    fitting_part,
    inner_part,
    sheet_part,
)
from panelcad.checks.setting import Setting
from panelcad.model.kept import kept, kept_row, kept_while
from panelcad.model.layout import PlacedCut, PlacedItem, PlateLayout
from panelcad.model.plate import CutState

Gone = dict[str, frozenset[str]]
"""The ids of contours that are gone, by the id of their cut."""
_NONE: Final[frozenset[str]] = frozenset()


@dataclass(frozen=True, eq=False)
class Source:
    """How to make one part, in whatever setting it stands. Two sources are never equal: each stands for its records."""

    make: Callable[[Setting], Part]


def sources(plate: PlateLayout, setting: Setting) -> Iterator[Source]:
    """A source for each part of the plate and for what stands around it."""
    yield _kept("sheet", (setting.plate.outline,), sheet_part)
    for number, bend in enumerate(setting.plate.bends, 1):
        yield _kept("bend", (bend, number), partial(bend_part, bend, number))
    yield from _fixed(plate)
    gone = gone_features(plate)
    yield from _cuts(plate, gone)
    yield from _items(plate)
    yield from _fittings(plate, gone)
    for thing in setting.surroundings.things:
        if thing.plate == setting.plate.id:
            yield _kept("around", (thing,), partial(surrounding_part, thing))


def _kept(role: str, records: tuple[Any, ...], make: Callable[[Setting], Part]) -> Source:
    return kept(f"source of {role}", records, partial(Source, make))


def _fixed(plate: PlateLayout) -> Iterator[Source]:
    for screw in plate.plate.attach_screws:
        attach = Attach(screw, tuple(feature for feature in plate.attach if feature.owner == screw.id))
        yield _kept("screw", (screw,), partial(attach_part, attach))
    for feature in plate.inner:
        yield _kept("inner opening", (feature,), partial(inner_part, feature))


def _cuts(plate: PlateLayout, gone: Gone) -> tuple[Source, ...]:
    def source(cut: PlacedCut) -> Source:
        lost = gone.get(cut.cut.id, _NONE)
        return _kept("cut", (cut, *sorted(lost)), partial(cut_part, remaining(cut, lost)))

    return kept_row(("sources of cuts", plate.plate.id, frozenset(gone.items())), plate.cuts, (), source)


def _items(plate: PlateLayout) -> tuple[Source, ...]:
    """Each item, with the cut it uses: an item in an old cut cannot be moved."""
    old = frozenset(placed.cut.id for placed in plate.cuts if placed.cut.state is CutState.EXISTING)

    def source(item: PlacedItem) -> Source:
        is_existing = item.item.cut in old
        return _kept(f"item {is_existing}", (item,), partial(item_part, item, is_existing))

    return kept_row(("sources of items", plate.plate.id, old), plate.items, (), source)


def _fittings(plate: PlateLayout, gone: Gone) -> Iterator[Source]:
    for cut, items in _uses(plate):
        if cut.cut.id in gone:
            lost = gone[cut.cut.id]
            left = Fitting(remaining(cut, lost), items)
            yield _kept("fitting", (cut, *items, *sorted(lost)), partial(fitting_part, left))
        else:
            yield kept_while(cut, "source of fitting", items, partial(_fitting, cut, items))


def _fitting(cut: PlacedCut, items: tuple[PlacedItem, ...]) -> Source:
    return Source(partial(fitting_part, Fitting(cut, items)))


def remaining(cut: PlacedCut, gone: frozenset[str]) -> PlacedCut:
    """The cut without the contours that are gone."""
    return replace(cut, features=tuple(f for f in cut.features if f.id not in gone)) if gone else cut


def fittings(plate: PlateLayout) -> Iterator[Fitting]:
    """Each cut with the items that use it."""
    return (Fitting(cut, items) for cut, items in _uses(plate))


def _uses(plate: PlateLayout) -> Iterator[tuple[PlacedCut, tuple[PlacedItem, ...]]]:
    users: dict[str | None, list[PlacedItem]] = {}
    for item in plate.items:
        users.setdefault(item.item.cut, []).append(item)
    for cut in plate.cuts:
        yield cut, tuple(users.get(cut.cut.id, ()))
