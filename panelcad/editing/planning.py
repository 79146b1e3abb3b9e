"""What planning needs to know of the aircraft, an option and an item."""

from typing import Any

from panelcad.editing.refusal import edit
from panelcad.model.planning import OptionPlanning, Planning
from panelcad.model.project import Project


@edit
def set_planning(project: Project, planning: Planning) -> Project:
    """The project with other planning data. Raises `EditRefused` where an option names a bus that is gone."""
    return project.revised(planning=planning)


@edit
def set_option_planning(project: Project, option_id: str, planning: OptionPlanning) -> Project:
    """The option with other planning data. Raises `EditRefused`, `UnknownName`."""
    return project.with_option(project.option(option_id).revised(planning=planning))


@edit
def set_fitting(project: Project, option_id: str, item_id: str, **fields: Any) -> Project:
    """The item with another arm, place, circuit, purpose, engine or light. Raises `EditRefused`, `UnknownName`."""
    option = project.option(option_id)
    changed = option.item(item_id).revised(**fields)
    return project.with_option(option.revised(items=tuple(changed if i.id == item_id else i for i in option.items)))
