"""What belongs together: an item and its cut are one; the items of a shared cut follow the cut."""

from collections import defaultdict
from collections.abc import Collection
from dataclasses import dataclass

from panelcad.editing.parts import plate_parts
from panelcad.errors import UnknownName
from panelcad.model.cutout import Cutout
from panelcad.model.kept import kept_lately
from panelcad.model.plate import Cut, Plate
from panelcad.model.project import Item, Option, Project


@dataclass(frozen=True)
class Bundle:
    """Ids that move as one; `anchor` is the id whose place stands for the whole."""

    anchor: str
    ids: frozenset[str]


def sharers(option: Option) -> dict[str, tuple[Item, ...]]:
    """The items of each cut, by the cut's id; a cut without items is left out."""
    found: defaultdict[str, list[Item]] = defaultdict(list)
    for item in option.items:
        if item.cut is not None:
            found[item.cut].append(item)
    return {cut: tuple(items) for cut, items in found.items()}


def together(option: Option, ids: Collection[str]) -> frozenset[str]:
    """These ids and all that moves with them.

    A cut takes all its items along. An item takes its cut along, unless it shares the cut with one that stays. A
    dimension has no place of its own: it follows what it measures and is left out.
    """
    wanted = without_dimensions(option, ids)
    shared = kept_lately("sharers", (option,), lambda: sharers(option))
    cut_of = kept_lately("cuts used", (option,), lambda: {item.id: item.cut for item in option.items})
    touched = wanted | {cut for one in wanted if (cut := cut_of.get(one)) is not None}
    for cut_id in touched & shared.keys():
        members = {item.id for item in shared[cut_id]}
        if cut_id in wanted or members <= wanted:
            wanted |= members | {cut_id}
    return frozenset(wanted)


def without_dimensions(option: Option, ids: Collection[str]) -> set[str]:
    """Those of these ids that can have a place of their own."""
    return set(ids) - {dimension.id for dimension in option.dimensions}


def bundles(option: Option, ids: Collection[str]) -> tuple[Bundle, ...]:
    """The things among these ids that each move as one, in the order of `ids`."""
    wanted = together(option, ids)
    shared = sharers(option)
    of_item = {item.id: item.cut for item in option.items if item.cut in wanted}
    made: dict[str, Bundle] = {}
    for one in (*(i for i in ids if i in wanted), *sorted(wanted)):
        cut = one if one in shared else of_item.get(one)
        members = shared[cut] if cut is not None else ()
        anchor = members[0].id if len(members) == 1 else cut or one
        whole = frozenset({item.id for item in members} | {cut or one})
        made.setdefault(anchor, Bundle(anchor, whole))
    return tuple(made.values())


def plate_holding(option: Option, part_id: str) -> Plate:
    """The plate that this item, cut, attach screw or engraving is on. Raises `UnknownName`."""
    for item in option.items:
        if item.id == part_id and item.plate is not None:
            return option.plate(item.plate)
    for plate in option.plates:
        if any(part.id == part_id for part in plate_parts(plate)):
            return plate
    raise UnknownName("part", part_id, (*(item.id for item in option.items), *option.cut_ids()))


def carried_cutout(project: Project, option: Option, part_id: str) -> Cutout | None:
    """The cutout that an item or a cut is made from, as the project carries it; None for any other part."""
    things: tuple[Item | Cut, ...] = (*option.items, *(cut for plate in option.plates for cut in plate.cuts))
    name = next((thing.cutout for thing in things if thing.id == part_id), None)
    return project.cutout(name) if name is not None else None
