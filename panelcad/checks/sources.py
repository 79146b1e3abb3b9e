"""The records that a plate's parts are made from. The same records give the same part."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from panelcad.checks.parts import (
    Fitting,
    Part,
    attach_part,
    cut_part,
    fitting_part,
    inner_part,
    item_part,
    sheet_part,
    surrounding_part,
)
from panelcad.checks.setting import Setting
from panelcad.model.layout import Feature, PlacedItem, PlateLayout
from panelcad.model.plate import PlateState


@dataclass(frozen=True, eq=False)
class Source:
    """The frozen records of one part, held so that their identity stays theirs, and how to make the part."""

    records: tuple[Any, ...]
    make: Callable[[], Part]
    role: int = 0

    @property
    def key(self) -> tuple[int, ...]:
        return (self.role, *map(id, self.records))


def sources(plate: PlateLayout, setting: Setting) -> Iterator[Source]:
    """A source for each part of the plate and for what stands around it."""
    yield Source((setting.plate.outline,), lambda: sheet_part(plate.plate.id, plate.outline))
    yield from _fixed(plate)
    for cut in plate.cuts:
        yield Source((cut,), lambda cut=cut: cut_part(cut))  # type: ignore[misc]
    for item in plate.items:
        yield Source((item,), lambda item=item: item_part(item))  # type: ignore[misc]
    yield from _fittings(plate)
    yield from _around(setting)


def _fixed(plate: PlateLayout) -> Iterator[Source]:
    """Attach screws and inner openings, which are old metal unless the plate is new."""
    is_existing = plate.plate.state is not PlateState.NEW
    by_screw: dict[str, list[Feature]] = {}
    for feature in plate.attach:
        by_screw.setdefault(feature.owner, []).append(feature)
    for screw in plate.plate.attach_screws:
        features = tuple(by_screw[screw.id])
        yield Source(
            (screw,),
            lambda screw=screw, features=features: attach_part(screw, features, is_existing=is_existing),  # type: ignore[misc]
        )
    for opening, feature in zip(plate.plate.inner_openings, plate.inner, strict=True):
        yield Source((opening,), lambda feature=feature: inner_part(feature, is_existing=is_existing))  # type: ignore[misc]


def _fittings(plate: PlateLayout) -> Iterator[Source]:
    """Each cut with the items that use it."""
    users: dict[str, list[PlacedItem]] = {}
    for item in plate.items:
        if item.item.cut is not None:
            users.setdefault(item.item.cut, []).append(item)
    for cut in plate.cuts:
        fitting = Fitting(cut, tuple(users.get(cut.cut.id, ())))
        yield Source((cut, *fitting.items), lambda fitting=fitting: fitting_part(fitting), role=1)  # type: ignore[misc]


def _around(setting: Setting) -> Iterator[Source]:
    for thing in setting.surroundings.things:
        if thing.plate == setting.plate.id:
            yield Source((thing,), lambda thing=thing: surrounding_part(thing))  # type: ignore[misc]
