"""A unit of equipment joins an option: its panel part and its planning part are one item."""

from collections.abc import Collection, Mapping
from typing import Final

from panelcad.editing.carry import carry, carry_unit
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.made import Made
from panelcad.editing.place import names_in, place
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.model.cutout import Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.project import Item, Project

_ONE_THING: Final = frozenset({"outlets", "clocks"})
"""Families of cutouts that hold what they are called, though the pilot reads nothing of it."""


@edit
def add_unit(project: Project, option_id: str, unit: EquipmentUnit, cutout: Cutout | None = None) -> Made:
    """A unit more in an option: mounted elsewhere, or with its cutout and not placed yet. The id made is the item's.

    Raises `EditRefused` where the unit is mounted in another cutout than the one given, `UnknownName`.
    """
    if (cutout.name if cutout else None) != unit.cutout:
        raise EditRefused(f"'{unit.title}' is mounted in {_mounted_in(unit)}.")
    carried = None
    if cutout is not None:
        project, carried = carry(project, cutout)
        unit = unit.revised(cutout=carried)
    project, name = carry_unit(project, unit)
    option = project.option(option_id)
    item = Item(
        id=fresh_id(unit.name, ids_in(project, option)),
        name=fresh_name(unit.title, names_in(option)),
        cutout=carried,
        unit=name,
    )
    return Made(project.with_option(option.revised(items=(*option.items, item))), (item.id,))


@edit
def name_unit(project: Project, option_id: str, item_id: str, unit: EquipmentUnit | None) -> Project:
    """The item known as this unit of equipment, or as none. Raises `EditRefused`, `UnknownName`."""
    option = project.option(option_id)
    item = option.item(item_id)
    if unit is None:
        changed = item.revised(unit=None)
    else:
        if (item.cutout is None) != (unit.cutout is None):
            raise EditRefused(f"'{unit.title}' is mounted in {_mounted_in(unit)}; '{item.name}' is not.")
        project, name = carry_unit(project, unit)
        changed = item.revised(unit=name)
    option = project.option(option_id)
    items = tuple(changed if old.id == item_id else old for old in option.items)
    return project.with_option(option.revised(items=items))


@edit
def say_by_cutout(
    project: Project, option_id: str, item_ids: Collection[str], units: Mapping[str, EquipmentUnit]
) -> Project:
    """The items among these that nobody said anything of known as the unit that goes with their cutout, where one does.

    `units` are by the name of the cutout. Raises `UnknownName`.
    """
    for item in project.option(option_id).items:
        unit = unit_by_cutout(project, item, units)
        if item.id in item_ids and item.unit is None and unit is not None:
            project = name_unit(project, option_id, item.id, unit)
    return project


def unit_by_cutout(project: Project, item: Item, units: Mapping[str, EquipmentUnit]) -> EquipmentUnit | None:
    """The unit that goes with an item's cutout, where the cutout says what it is for.

    A rack, a rail panel or a switch holds one thing as well as another.
    """
    unit = units.get(item.cutout or "")
    if unit is None or item.cutout is None:
        return None
    cutout = project.cutout(item.cutout)
    return unit if cutout.shows or cutout.family in _ONE_THING else None


@edit
def place_unit(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project, option_id: str, item_id: str, plate_id: str, x: float, y: float
) -> Project:
    """An item that is not placed yet put on a plate, x and y in mm; it stays the same item.

    Raises `EditRefused` for one that has its place or belongs on no panel, `UnknownName`.
    """
    option = project.option(option_id)
    item = option.item(item_id)
    if item.cutout is None or item.plate is not None:
        raise EditRefused(f"'{item.name}' is not waiting for a place on the panel.")
    put = place(project, option_id, plate_id, project.cutout(item.cutout), x, y)
    if put.item_id is None:
        raise EditRefused(f"'{item.name}' has nothing that could be placed.")
    option = put.project.option(option_id)
    stands = option.item(put.item_id)
    placed = item.revised(plate=stands.plate, cut=stands.cut, x=stands.x, y=stands.y, rotation=stands.rotation)
    items = tuple(placed if old.id == item_id else old for old in option.items if old.id != put.item_id)
    return put.project.with_option(option.revised(items=items))


def _mounted_in(unit: EquipmentUnit) -> str:
    return f"cutout '{unit.cutout}'" if unit.cutout else f"the {unit.place}, on no panel"
