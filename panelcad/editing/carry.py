"""A project carries the cutouts and the equipment it uses, so that it opens the same beside another library."""

import re
from typing import TypeVar

from panelcad.editing.ids import fresh_id
from panelcad.model.cutout import Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.plate import Cut
from panelcad.model.project import Item, Option, Project

Carried = TypeVar("Carried", Cutout, EquipmentUnit)


def carry(project: Project, cutout: Cutout) -> tuple[Project, str]:
    """The project with this cutout among those it carries, and the name it is carried under.

    A different cutout of the same name keeps its name; the newcomer gets a numbered one.
    """
    cutouts, name = _joined(project.cutouts, cutout)
    return (project if cutouts is project.cutouts else project.revised(cutouts=cutouts)), name


def earlier_versions(project: Project, option: Option, cutout: Cutout) -> tuple[Item | Cut, ...]:
    """What of the option is still made from this cutout as it was before it was changed in the library."""
    numbered = re.compile(rf"{re.escape(cutout.name)}(-\d+)?")
    older = {
        known.name
        for known in project.cutouts
        if numbered.fullmatch(known.name) and not _same_but_for_number(known, cutout)
    }
    items = tuple(item for item in option.items if item.cutout in older)
    cuts = (cut for plate in option.plates for cut in plate.cuts if cut.cutout in older)
    fitted = {item.cut for item in items}
    return (*items, *(cut for cut in cuts if cut.id not in fitted))


def carry_unit(project: Project, unit: EquipmentUnit) -> tuple[Project, str]:
    """The project with this unit of equipment among those it carries, and the name it is carried under."""
    units, name = _joined(project.units, unit)
    return (project if units is project.units else project.revised(units=units)), name


def _joined(carried: tuple[Carried, ...], newcomer: Carried) -> tuple[tuple[Carried, ...], str]:
    for known in carried:
        if _same_but_for_number(known, newcomer):
            return carried, known.name
    name = fresh_id(newcomer.name, {known.name for known in carried})
    added: Carried = newcomer.revised(name=name)
    return carried + (added,), name  # noqa: RUF005 - mypy loses the kind of a spread tuple


def _same_but_for_number(known: Carried, newcomer: Carried) -> bool:
    if known.name != newcomer.name and not known.name.startswith(f"{newcomer.name}-"):
        return False
    return known == newcomer or known.revised(name=newcomer.name) == newcomer
