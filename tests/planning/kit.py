"""Units, options and projects for tests of planning, made in one line each."""

from panelcad.model.equipment import EquipmentUnit
from panelcad.model.project import AS_FOUND, Item, Option, Project
from panelcad.planning.equipment import Equipment, equipment
from tests import builders


def unit(name: str, **fields: object) -> EquipmentUnit:
    """A unit in the radio bay, unless `fields` say more."""
    plain = {"name": name, "title": name, "family": "test", "place": "radio bay", "source": builders.SOURCE}
    return EquipmentUnit.model_validate(plain | fields)


def fit(unit_name: str, item_id: str = "", **fields: object) -> Item:
    """An item of this unit, of the same id unless told."""
    plain = {"id": item_id or unit_name, "name": unit_name.capitalize(), "unit": unit_name}
    return Item.model_validate(plain | fields)


def project(*units: EquipmentUnit, items: tuple[Item, ...] | None = None, **fields: object) -> Project:
    """A project whose option 'new' has one of each unit, unless `items` say more."""
    fitted = tuple(fit(one.name) for one in units) if items is None else items
    found = fields.pop("as_found_items", ())
    return builders.project(
        *fields.pop("plates", ()),
        items=fitted,
        units=units,
        as_found=Option(id=AS_FOUND, name="As found", plates=(builders.sheet(state="kept"),), items=found),
        **fields,
    )


def fitted(*units: EquipmentUnit, items: tuple[Item, ...] | None = None, **fields: object) -> Equipment:
    """The equipment of the option 'new' of such a project."""
    built = project(*units, items=items, **fields)
    return equipment(built, built.option("new"))
