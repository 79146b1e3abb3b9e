"""The errors about equipment, named before an option is released: they stop no metal, and nobody should miss them."""

from typing import Final

from panelcad.desktop.panes.form import Form
from panelcad.errors import PanelcadError
from panelcad.model.project import Option, Project
from panelcad.planning.judge import equipment_errors
from panelcad.planning.wording import equipment_errors_text, sentence

_MOST: Final = 6
"""How many are named; more would push the choices out of sight."""


def name_equipment_errors(form: Form, project: Project, option: Option) -> None:
    """Rows of the form that count and name them; none where nothing is wrong."""
    try:
        errors = equipment_errors(project, option)
    except PanelcadError as fault:
        form.words(f"The equipment could not be judged: {fault}", "wrong")
        return
    if not errors:
        return
    form.words(
        f"Open: {equipment_errors_text(len(errors))}. A release is about the metal and is not stopped by them.", "wrong"
    )
    lines = [sentence(each, project, option) for each in errors[:_MOST]]
    left = len(errors) - len(lines)
    more = [f"and {left} more, under Options side by side"] if left else []
    form.words("\n".join(f"• {line}" for line in (*lines, *more)))
