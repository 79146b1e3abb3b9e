"""The limits that a project's options are judged by."""

from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.model.profile import Profile
from panelcad.model.project import Project


@edit
def with_limits(project: Project, profile: Profile) -> Project:
    """The project judged by other limits. Raises `EditRefused` while an option is locked: its fingerprint has them."""
    if profile == project.profile:
        return project
    for option in project.all_options:
        revision = project.locked_revision(option.id)
        if revision:
            raise EditRefused(
                f"Option '{option.name}' is released as revision {revision} and was judged by the present limits; "
                "open a new revision to change them."
            )
    return project.revised(profile=profile)
