"""How an option looks to its owner, and the moment of flight that its instruments show."""

from typing import Any

from panelcad.editing.refusal import edit
from panelcad.model.project import Project


@edit
def look_changed(project: Project, option_id: str, **changes: Any) -> Project:
    """The option with these fields of its appearance changed. Raises `EditRefused` for a value that cannot be."""
    option = project.option(option_id)
    return project.with_option(option.revised(appearance=option.appearance.revised(**changes)))


@edit
def flight_changed(project: Project, **changes: Any) -> Project:
    """The project with these fields of its flight changed. Raises `EditRefused` for a value that cannot be."""
    return project.revised(flight=project.flight.revised(**changes))
