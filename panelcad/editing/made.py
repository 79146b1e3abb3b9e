"""What an edit that makes something gives back."""

from dataclasses import dataclass

from panelcad.model.project import Project


@dataclass(frozen=True)
class Made:
    """The new project, and the ids of what was made, in the order in which it was."""

    project: Project
    ids: tuple[str, ...]
