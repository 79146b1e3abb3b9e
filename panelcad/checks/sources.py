"""The records that a plate's parts are made from. The same records give the same part."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from typing import Any, Final, NamedTuple

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
from panelcad.model.kept import kept_with
from panelcad.model.layout import Feature, PlacedCut, PlacedItem, PlateLayout
from panelcad.model.plate import CutState

_NONE: Final[frozenset[str]] = frozenset()


class Source(NamedTuple):
    """The frozen records of one part, held so that their identity stays theirs, and how to make the part."""

    records: tuple[Any, ...]
    make: Callable[[], Part]
    role: int = 0
    without: frozenset[str] = _NONE
    """Ids of the part's contours that are gone."""

    @property
    def key(self) -> tuple[Any, ...]:
        return (self.role, self.without, *map(id, self.records))


def sources(plate: PlateLayout, setting: Setting) -> Iterator[Source]:
    """A source for each part of the plate and for what stands around it."""
    yield Source((setting.plate.outline,), partial(sheet_part, setting))
    for number, bend in enumerate(setting.plate.bends, 1):
        yield Source((bend,), partial(bend_part, bend, number, setting))
    yield from _fixed(plate, setting)
    gone = gone_features(plate)
    for cut in plate.cuts:
        lost = gone.get(cut.cut.id, _NONE) if gone else _NONE
        yield _source_without(cut, lost) if lost else kept_with(cut, "source of", partial(_source_of, cut))
    yield from _items(plate)
    for fitting in fittings(plate):
        lost = gone.get(fitting.cut.cut.id, _NONE)
        left = Fitting(remaining(fitting.cut, lost), fitting.items)
        yield Source((fitting.cut, *fitting.items), partial(fitting_part, left, setting), role=1, without=lost)
    for thing in setting.surroundings.things:
        if thing.plate == setting.plate.id:
            yield Source((thing,), partial(surrounding_part, thing, setting))


def _fixed(plate: PlateLayout, setting: Setting) -> Iterator[Source]:
    by_screw: dict[str, list[Feature]] = {}
    for feature in plate.attach:
        by_screw.setdefault(feature.owner, []).append(feature)
    for screw in plate.plate.attach_screws:
        attach = Attach(screw, tuple(by_screw[screw.id]))
        yield Source((screw,), partial(attach_part, attach, setting))
    for opening, feature in zip(plate.plate.inner_openings, plate.inner, strict=True):
        yield Source((opening,), partial(inner_part, feature, setting))


def _items(plate: PlateLayout) -> Iterator[Source]:
    """Each item, with the cut it uses: an item in an old cut cannot be moved."""
    old = {placed.cut.id for placed in plate.cuts if placed.cut.state is CutState.EXISTING}
    for item in plate.items:
        if item.item.cut in old:
            yield Source((item,), partial(item_part, item, is_existing=True), role=3)
        else:
            yield kept_with(item, "source of", partial(_item_source, item))


def _source_of(cut: PlacedCut) -> Source:
    return Source((cut,), partial(cut_part, cut))


def _source_without(cut: PlacedCut, lost: frozenset[str]) -> Source:
    return Source((cut,), partial(cut_part, remaining(cut, lost)), without=lost)


def remaining(cut: PlacedCut, gone: frozenset[str]) -> PlacedCut:
    """The cut without the contours that are gone."""
    return replace(cut, features=tuple(f for f in cut.features if f.id not in gone)) if gone else cut


def _item_source(item: PlacedItem) -> Source:
    return Source((item,), partial(item_part, item, is_existing=False), role=2)


def fittings(plate: PlateLayout) -> Iterator[Fitting]:
    """Each cut with the items that use it."""
    users: dict[str | None, list[PlacedItem]] = {}
    for item in plate.items:
        users.setdefault(item.item.cut, []).append(item)
    for cut in plate.cuts:
        yield _fitting(cut, users)


def _fitting(cut: PlacedCut, users: dict[str | None, list[PlacedItem]]) -> Fitting:
    return Fitting(cut, tuple(users.get(cut.cut.id, ())))
