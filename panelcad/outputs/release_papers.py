"""The papers of a release and how each is written; their names tell option, revision and plate."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp
from panelcad.outputs.drawing import DrawingOptions, export_drawing
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_nest import Stock, stock_of
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_report_text import report_text, stock_report_text
from panelcad.outputs.dxf_stock import stock_sheets, write_stock_sheet
from panelcad.outputs.dxf_words import CAUTION
from panelcad.outputs.inspection import export_inspection, export_inspection_csv
from panelcad.outputs.manifest import MANIFEST, manifest_text
from panelcad.outputs.template import TemplateOptions, export_template
from panelcad.store.atomic import write_atomically

_DXF: Final = DxfOptions()
_DRAWING: Final = DrawingOptions()
_TEMPLATE: Final = TemplateOptions()


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
    template: TemplateOptions = _TEMPLATE
    stock: Stock | None = None
    """Stock sheets on which two or more new plates are nested besides; None for what the profile states, if it does."""
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
    files = [*_cutting_files(issue, folder, base, options), *_nested_files(issue, folder, options)]
    files.extend(_sheets(issue, folder, base, options))
    files.append(_measuring_list(issue, folder / f"{base}-inspection.csv", options))
    files.append(_text(folder / f"{base}-changes.txt", _changes_text(issue)))
    files.append(_text(folder / MANIFEST, manifest_text(files, issue.heading)))
    return tuple(file.name for file in files)


def write_draft(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[Path, ...]:
    """Write the sheets of an option that is not released; each marks itself as not for cutting."""
    return tuple(_sheets(issue, folder, f"{issue.option.id}-draft", options))


def _cutting_files(issue: Issue, folder: Path, base: str, options: ReleaseOptions) -> Iterator[Path]:
    project, dxf = issue.report.project, replace(options.dxf, stamp=issue.mark)
    for plate in cut_plates(issue.option):
        file = folder / f"{base}-{plate.id}.dxf"
        options.tell(f"Writing {file.name}")
        export_dxf(project, issue.option, plate.id, file, dxf)
        yield file
        text = report_text(project, issue.option, plate.id, dxf)
        yield _text(folder / f"{base}-{plate.id}-cutting-report.txt", text)


def _nested_files(issue: Issue, folder: Path, options: ReleaseOptions) -> Iterator[Path]:
    """A cutting file and a report for each stock sheet, where several plates are made and the stock is known."""
    project, option = issue.report.project, issue.option
    stock, dxf = options.stock or stock_of(project.profile), replace(options.dxf, stamp=issue.mark)
    new = [plate for plate in issue.option.plates if plate.state is PlateState.NEW]
    if stock is None or len(new) < 2:
        return
    options.tell("Laying the plates on stock sheets")
    for sheet in stock_sheets(project, option, stock, dxf):
        file = write_stock_sheet(project, option, sheet, folder, dxf)
        yield file
        yield _text(folder / f"{file.stem}-cutting-report.txt", stock_report_text(project, option, sheet, dxf))


def _sheets(issue: Issue, folder: Path, base: str, options: ReleaseOptions) -> Iterator[Path]:
    """The drawing, the first-article inspection and the full-size templates, all to be printed."""
    project, option = issue.report.project, issue.option
    drawing = replace(options.drawing, stamp=issue.mark, report=issue.report)
    template = replace(options.template, drawing=drawing)
    writers: dict[str, Callable[[Path], None]] = {
        f"{base}-drawing.pdf": lambda file: export_drawing(project, option, file, drawing),
        f"{base}-inspection.pdf": lambda file: export_inspection(project, option, file, drawing),
    }
    for plate in cut_plates(option):
        writers[f"{base}-{plate.id}-template.pdf"] = partial(_template, project, option, plate.id, template)
    for name, write in writers.items():
        options.tell(f"Writing {name}")
        write(folder / name)
        yield folder / name


def _measuring_list(issue: Issue, file: Path, options: ReleaseOptions) -> Path:
    options.tell(f"Writing {file.name}")
    drawing = replace(options.drawing, stamp=issue.mark, report=issue.report)
    export_inspection_csv(issue.report.project, issue.option, file, drawing)
    return file


def _template(project: Project, option: Option, plate_id: str, template: TemplateOptions, file: Path) -> None:
    export_template(project, option, plate_id, file, template)


def _text(file: Path, text: str) -> Path:
    write_atomically(file, text.encode())
    return file


def _changes_text(issue: Issue) -> str:
    changed = ["Changed since the release before:", *(f"- {line}" for line in issue.changes)]
    lines = [*issue.heading, "", *(changed if issue.changes else ["First release."]), "", *CAUTION]
    return "\n".join(lines) + "\n"
