"""Options come and go; the panel as found stays."""

from dataclasses import dataclass

from panelcad.editing.ids import fresh_id, fresh_name
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import AS_FOUND, Option, Project


@dataclass(frozen=True)
class NewOption:
    """The new project, and the id of the option that was made."""

    project: Project
    option_id: str


@edit
def option_from_as_found(project: Project, name: str = "Option") -> NewOption:
    """A new option that starts as the panel was found: every cut is there already, and its plates may be reworked."""
    plates = tuple(reworked(plate) for plate in project.as_found.plates)
    return _added(project, project.as_found.revised(plates=plates, acceptances=(), locked=()), name)


@edit
def copy_option(project: Project, option_id: str, name: str = "") -> NewOption:
    """A new option like this one, with all that was decided about it; of the panel as found as `option_from_as_found`.

    Raises `UnknownName`.
    """
    option = project.option(option_id)
    if option.id == AS_FOUND:
        return option_from_as_found(project, name or "Option")
    return _added(project, option, name or option.name)


@edit
def rename_option(project: Project, option_id: str, name: str, summary: str | None = None) -> Project:
    """The option under another name; its summary too, where one is given.

    Raises `EditRefused` where another option bears that name, `UnknownName`.
    """
    option = project.option(option_id)
    if any(name in {other.name, other.id} for other in project.all_options if other.id != option.id):
        raise EditRefused(f"There is an option '{name}' already.")
    return project.with_option(option.revised(name=name, summary=option.summary if summary is None else summary))


@edit
def delete_option(project: Project, option_id: str) -> Project:
    """The project without this option.

    Raises `EditRefused` for the panel as found and for an option that was released, `UnknownName`.
    """
    option = project.option(option_id)
    if option.id == AS_FOUND:
        raise EditRefused("The panel as found cannot be deleted; every option is held against it.")
    if any(entry.option == option.id for entry in project.releases):
        raise EditRefused(f"Option '{option.name}' was released and stays, so that its papers can be held against it.")
    return project.revised(options=tuple(other for other in project.options if other.id != option.id))


@edit
def move_option(project: Project, option_id: str, position: int) -> Project:
    """The options in another order, this one at `position` (0 is the first after the panel as found)."""
    option = project.option(option_id)
    if option.id == AS_FOUND:
        raise EditRefused("The panel as found comes first.")
    others = [other for other in project.options if other.id != option.id]
    return project.revised(options=(*others[:position], option, *others[position:]))


def _added(project: Project, option: Option, name: str) -> NewOption:
    label = fresh_name(name, {other.name for other in project.all_options})
    option_id = fresh_id(label, {other.id for other in project.all_options})
    made = option.revised(id=option_id, name=label)
    return NewOption(project.revised(options=(*project.options, made)), option_id)


def reworked(plate: Plate) -> Plate:
    """A plate of the panel as found as an option has it to begin with: its cuts are there, and more may be cut."""
    return plate.revised(state=PlateState.REWORKED) if plate.state is PlateState.KEPT else plate
