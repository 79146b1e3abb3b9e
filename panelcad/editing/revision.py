"""A released option is locked; opening a revision lets it change again and says why."""

from panelcad.errors import EditRefused
from panelcad.model.project import Project
from panelcad.model.release import OpenedRevision, next_revision


def open_revision(project: Project, option_id: str, reason: str, on: str, by: str = "") -> Project:
    """The project with the option's next revision opened on this day (YYYY-MM-DD).

    Raises `UnknownName`, and `EditRefused` where the option is not locked or no reason is given.
    """
    option = project.option(option_id)
    locked = project.locked_revision(option.id)
    if not locked:
        raise EditRefused(f"Option '{option.name}' is not locked; it may be changed as it is.")
    if not reason.strip():
        raise EditRefused(f"Say why option '{option.name}' is changed after revision {locked}.")
    opened = OpenedRevision(option=option.id, revision=next_revision(locked), on=on, reason=reason.strip(), by=by)
    return project.revised(opened_revisions=(*project.opened_revisions, opened))
