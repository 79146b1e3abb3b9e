"""Which revision a paper is of, by the fingerprint it bears: a PDF, a report, a list, or the text of its QR code.

That says which geometry the paper was made from; only a cutting file can be held against the project hole by hole.
"""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.project import Option, Project
from panelcad.outputs.manifest import MANIFEST, faults_of

_FINGERPRINT: Final = re.compile(r"\b[0-9A-F]{4}(?:-[0-9A-F]{4}){3}\b")
_LARGEST: Final = 64 * 1024 * 1024


@dataclass(frozen=True)
class PaperRevision:
    """The first fingerprint on a paper that the project knows, and where it is from; both None for a stranger."""

    fingerprint: str
    option: Option | None = None
    revision: str = ""
    on: str = ""
    is_current: bool = False
    """Whether the option still has this geometry."""

    @property
    def text(self) -> str:
        """In words: 'revision A of 2026-05-01 of option glass; the option has changed since'."""
        if self.option is None:
            return f"fingerprint {self.fingerprint}, which this project does not know"
        since = "the option is still so" if self.is_current else "the option has changed since"
        what = f"revision {self.revision} of {self.on}" if self.revision else "not released"
        return f"option {self.option.name} ({self.option.id}), {what}; {since}"


def paper_revision(project: Project, path: Path | str) -> PaperRevision:
    """What a paper's fingerprint says. Raises `UnusableInput` for a file that cannot be read or bears none."""
    file = Path(path)
    try:
        if file.stat().st_size > _LARGEST:
            raise UnusableInput(str(file), "", "it is larger than 64 MB", "a paper of a release")
        content = file.read_bytes()
    except OSError as error:
        raise UnusableInput(str(file), "", f"it cannot be read ({error.strerror})", "a paper of a release") from None
    return revision_of_text(project, _plain(content), str(file))


def revision_of_text(project: Project, text: str, source: str = "the text") -> PaperRevision:
    """What the fingerprint in a text says, such as that of a scanned QR code. Raises `UnusableInput` without one."""
    found = tuple(dict.fromkeys(_FINGERPRINT.findall(text)))
    if not found:
        raise UnusableInput(source, "", "it bears no fingerprint", "a paper of a release, or the text of its code")
    known = (revision for fingerprint in found if (revision := _known(project, fingerprint)))
    return next(known, PaperRevision(found[0]))


def folder_faults(folder: Path | str) -> tuple[str, ...]:
    """Files of a release folder that are missing or differ from its manifest. Raises `UnusableInput` without one."""
    try:
        return faults_of(Path(folder))
    except (OSError, ValueError) as error:
        expected = f"a release's folder with its {MANIFEST}"
        raise UnusableInput(str(folder), MANIFEST, "it cannot be read", expected) from error


def _plain(content: bytes) -> str:
    """The text that stands open in a file; a PDF's properties may be in two bytes a letter."""
    return content.replace(b"\x00", b"").decode("latin-1")


def _known(project: Project, fingerprint: str) -> PaperRevision | None:
    now = {option_fingerprint(project, option): option for option in project.all_options}
    current = now.get(fingerprint)
    for entry in reversed(project.releases):
        if entry.fingerprint == fingerprint:
            option = next((each for each in project.all_options if each.id == entry.option), None)
            is_current = option is not None and option is current
            return PaperRevision(fingerprint, option, entry.revision, entry.on, is_current)
    return PaperRevision(fingerprint, current, is_current=True) if current else None
