"""Which revision a paper is of: the release log's letter and date, or none yet."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.part import worked_plates
from panelcad.model.project import Option, Project
from panelcad.model.release import Issued, Release


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


def issues_of(project: Project, release: Release) -> tuple[Issued, ...]:
    """When and where to the plates of a release were issued, oldest first."""
    return tuple(each for each in project.issues if (each.option, each.revision) == (release.option, release.revision))


def issued_text(issued: Issued) -> str:
    """'2026-05-04 TS: sub-panel, in zz-demo-3-refit-A-part-sub-panel'."""
    return f"{f'{issued.on} {issued.by}'.strip()}: {', '.join(issued.plates)}, in {issued.folder}"


def release_lines(project: Project, option: Option) -> Iterator[str]:
    """The option's release log in words: each revision, then each time that plates of it were issued."""
    for entry in releases_of(project, option):
        by = f" by {entry.by}" if entry.by else ""
        yield f"Revision {entry.revision} of {entry.on}{by}"
        yield from (f"  issued {issued_text(each)}" for each in issues_of(project, entry))
    waiting = waiting_plates(project, option)
    if waiting:
        yield f"  not issued yet: {', '.join(waiting)}"


def waiting_plates(project: Project, option: Option) -> tuple[str, ...]:
    """The ids of plates that are cut and were not issued with the revision that the option is locked at.

    None where it is open, and where the log does not say which plates were issued, as it did not always.
    """
    locked = project.locked_revision(option.id)
    issued = [
        each for entry in releases_of(project, option) if entry.revision == locked for each in issues_of(project, entry)
    ]
    there = {plate for each in issued for plate in each.plates}
    return tuple(plate.id for plate in worked_plates(option) if there and plate.id not in there)


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
