"""The records that a plate's parts are made from. The same records give the same source, and a source gives one part.

Sources are kept between edits, so that what an edit left alone is recognised without a look at it.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial
from operator import attrgetter
from typing import Any, Final

from panelcad.checks.gone import existing_cuts, gone_features
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
from panelcad.model.kept import kept, kept_groups, kept_row, seating
from panelcad.model.layout import PlacedCut, PlacedItem, PlateLayout
from panelcad.model.plate import Plate

Gone = dict[str, frozenset[str]]
"""The ids of contours that are gone, by the id of their cut."""
_NONE: Final[frozenset[str]] = frozenset()


@dataclass(frozen=True, eq=False)
class Source:
    """How to make one part, in whatever setting it stands. Two sources are never equal: each stands for its records."""

    make: Callable[[Setting], Part]


def sources(plate: PlateLayout, setting: Setting) -> tuple[Source, ...]:
    """A source for each part of the plate and for what stands around it, none of them twice."""
    gone = gone_features(plate)
    return (
        *_of_the_sheet(setting.plate),
        *_fixed(plate),
        *_cuts(plate, gone),
        *_items(plate),
        *_fittings(plate, gone),
        *_around(setting),
    )


def _of_the_sheet(plate: Plate) -> Iterator[Source]:
    yield _kept("sheet", (plate.outline,), sheet_part)
    for number, bend in enumerate(plate.bends, 1):
        yield _kept("bend", (bend, number), partial(bend_part, bend, number))


def _around(setting: Setting) -> Iterator[Source]:
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
    old = frozenset(placed.cut.id for placed in existing_cuts(plate))

    def source(item: PlacedItem) -> Source:
        is_existing = item.item.cut in old
        return _kept(f"item {is_existing}", (item,), partial(item_part, item, is_existing))

    return kept_row(("sources of items", plate.plate.id, old), plate.items, (), source)


def _fittings(plate: PlateLayout, gone: Gone) -> tuple[Source, ...]:
    def source(fitting: Fitting) -> Source:
        lost = gone.get(fitting.cut.cut.id, _NONE)
        left = replace(fitting, cut=remaining(fitting.cut, lost))
        return _kept("fitting", (fitting.cut, *fitting.items, *sorted(lost)), partial(fitting_part, left))

    return kept_row(("sources of fittings", plate.plate.id, frozenset(gone.items())), fittings(plate), (), source)


def remaining(cut: PlacedCut, gone: frozenset[str]) -> PlacedCut:
    """The cut without the contours that are gone."""
    return replace(cut, features=tuple(f for f in cut.features if f.id not in gone)) if gone else cut


def fittings(plate: PlateLayout) -> tuple[Fitting, ...]:
    """Each cut with the items that use it; the very same fitting as long as neither the cut nor the items change."""
    cuts = kept_row(("ids of cuts", plate.plate.id), plate.cuts, (), attrgetter("cut.id"))
    used = kept_row(("cuts used", plate.plate.id), plate.items, (), attrgetter("item.cut"))
    return kept_groups(("fittings", plate.plate.id), plate.cuts, plate.items, seating(cuts, used), Fitting)
