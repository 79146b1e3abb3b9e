"""The papers of a release and how each is written; their names tell option, revision and plate."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option
from panelcad.model.revision import Stamp
from panelcad.outputs.drawing import DrawingOptions, export_drawing
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_report import report_text
from panelcad.outputs.dxf_words import CAUTION
from panelcad.outputs.manifest import MANIFEST, manifest_text
from panelcad.store.atomic import write_atomically

_DXF: Final = DxfOptions()
_DRAWING: Final = DrawingOptions()


def _silent(_: str) -> None:
    """Nobody listens."""


@dataclass(frozen=True)
class ReleaseOptions:
    """Who releases, and how the papers are made; their stamps and findings are the release's own.

    `tell` hears which file is being written.
    """

    by: str = ""
    dxf: DxfOptions = _DXF
    drawing: DrawingOptions = _DRAWING
    tell: Callable[[str], None] = _silent


@dataclass(frozen=True)
class Issue:
    """What the papers are of: a checked option, its stamp, and what changed since the release before."""

    report: CheckReport
    mark: Stamp
    changes: tuple[str, ...] = ()

    @property
    def option(self) -> Option:
        return self.report.option

    @property
    def heading(self) -> list[str]:
        return [
            f"{self.report.project.title}, option {self.option.name} ({self.option.id})",
            f"Revision {self.mark.revision_text}, fingerprint {self.mark.fingerprint}",
        ]


def cut_plates(option: Option) -> tuple[Plate, ...]:
    """The plates that are made or reworked: those that get a cutting file."""
    return tuple(plate for plate in option.plates if plate.state is not PlateState.KEPT)


def write_papers(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[str, ...]:
    """Write every paper of a released option and the manifest into a folder; their names, the manifest last."""
    base = f"{issue.option.id}-{issue.mark.revision}"
    files = [*_cutting_files(issue, folder, base, options)]
    files.append(_drawing(issue, folder / f"{base}-drawing.pdf", options))
    files.append(_text(folder / f"{base}-changes.txt", _changes_text(issue)))
    files.append(_text(folder / MANIFEST, manifest_text(files, issue.heading)))
    return tuple(file.name for file in files)


def write_draft(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[Path, ...]:
    """Write the drawing of an option that is not released; it marks itself as not for cutting."""
    return (_drawing(issue, folder / f"{issue.option.id}-draft-drawing.pdf", options),)


def _cutting_files(issue: Issue, folder: Path, base: str, options: ReleaseOptions) -> Iterator[Path]:
    project, dxf = issue.report.project, replace(options.dxf, stamp=issue.mark)
    for plate in cut_plates(issue.option):
        file = folder / f"{base}-{plate.id}.dxf"
        options.tell(f"Writing {file.name}")
        export_dxf(project, issue.option, plate.id, file, dxf)
        yield file
        text = report_text(project, issue.option, plate.id, dxf)
        yield _text(folder / f"{base}-{plate.id}-cutting-report.txt", text)


def _drawing(issue: Issue, file: Path, options: ReleaseOptions) -> Path:
    options.tell(f"Writing {file.name}")
    drawing = replace(options.drawing, stamp=issue.mark, report=issue.report)
    export_drawing(issue.report.project, issue.option, file, drawing)
    return file


def _text(file: Path, text: str) -> Path:
    write_atomically(file, text.encode())
    return file


def _changes_text(issue: Issue) -> str:
    changed = ["Changed since the release before:", *(f"- {line}" for line in issue.changes)]
    lines = [*issue.heading, "", *(changed if issue.changes else ["First release."]), "", *CAUTION]
    return "\n".join(lines) + "\n"
