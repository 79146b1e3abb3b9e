"""What comes back to the shop, held against the project: a DXF, another paper, a release's folder, a code's text."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.errors import PanelcadError
from panelcad.model.project import Project
from panelcad.outputs.manifest import MANIFEST
from panelcad.outputs.verify import VerifyOptions, VerifyReport, verify
from panelcad.outputs.verify_paper import PaperRevision, folder_faults, paper_revision, revision_of_text
from panelcad.outputs.verify_words import verdict, verify_text

CODE: Final = "PANELCAD "
"""What the text of a paper's QR code begins with."""
_USUAL: Final = VerifyOptions()


@dataclass(frozen=True)
class Outcome:
    """What came of it: one line, then everything in words; `report` of a cutting file only."""

    verdict: str
    text: str
    is_same: bool
    report: VerifyReport | None = None


def hold(project: Project, what: str, options: VerifyOptions = _USUAL) -> Outcome:
    """Hold what is named by its path, or the text of a scanned code. Raises `UnusableInput`, `UnknownName`."""
    path = Path(what)
    if what.startswith(CODE) and not path.exists():
        return _of_revision(revision_of_text(project, what, "the code"), "")
    if path.is_dir():
        return _of_folder(project, path)
    if path.suffix.lower() != ".dxf":
        return _of_revision(paper_revision(project, path), f"{path}: ")
    report = verify(project, path, options)
    return Outcome(verdict(report), verify_text(report), report.is_same, report)


def _of_revision(revision: PaperRevision, source: str) -> Outcome:
    text = f"{source}{revision.text}\n"
    if revision.is_current:
        return Outcome("The same: the option is still what it was made from.", text, is_same=True)
    known = "the option has changed since" if revision.option else "this project does not know it"
    return Outcome(f"Differs: {known}.", text, is_same=False)


def _of_folder(project: Project, folder: Path) -> Outcome:
    """Whether its files are as they were released; of which revision is told beside it and makes no difference."""
    faults = folder_faults(folder)
    lines = [f"{folder / name}: missing, or not as it was released" for name in faults]
    text = "\n".join([*(lines or [f"{folder}: every file is as it was released"]), *_revision_of(project, folder)])
    count = "1 file is" if len(faults) == 1 else f"{len(faults)} files are"
    said = f"Differs: {count} missing, or not as released." if faults else "The same: every file is as it was released."
    return Outcome(said, f"{text}\n", not faults)


def _revision_of(project: Project, folder: Path) -> list[str]:
    try:
        return [f"Released from: {paper_revision(project, folder / MANIFEST).text}"]
    except PanelcadError:
        return ["Released from: its manifest does not say"]
