"""Which revision a paper is of: the release log's letter and date, or none yet."""

from dataclasses import dataclass

from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.project import Option, Project
from panelcad.model.release import Release


@dataclass(frozen=True)
class Stamp:
    """What every paper bears. `revision` and `on` (YYYY-MM-DD) are empty where it is not released so."""

    fingerprint: str
    revision: str = ""
    on: str = ""

    @property
    def is_released(self) -> bool:
        return bool(self.revision)

    @property
    def revision_text(self) -> str:
        """'A of 2026-05-01', or 'not released'."""
        return f"{self.revision} of {self.on}" if self.is_released else "not released"


def releases_of(project: Project, option: Option) -> tuple[Release, ...]:
    """The option's releases, oldest first."""
    return tuple(entry for entry in project.releases if entry.option == option.id)


def revision_text(project: Project, option: Option) -> str:
    """How an option stands: 'revision A, locked', 'revision B open', or '' where it never was released."""
    locked = project.locked_revision(option.id)
    if locked:
        return f"revision {locked}, locked"
    opened = [entry.revision for entry in project.opened_revisions if entry.option == option.id]
    return f"revision {opened[-1]} open" if opened else ""


def stamp(project: Project, option: Option) -> Stamp:
    """The stamp of the option as it stands: that of its newest release of the same geometry, else not released."""
    fingerprint = option_fingerprint(project, option)
    for entry in reversed(releases_of(project, option)):
        if entry.fingerprint == fingerprint:
            return Stamp(fingerprint, entry.revision, entry.on)
    return Stamp(fingerprint)
