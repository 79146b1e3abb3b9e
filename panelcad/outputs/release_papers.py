"""The papers of a release and how each is written; their names tell option, revision and plate."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.model.part import part_text
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp
from panelcad.outputs.drawing import DrawingOptions, export_drawing
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_name import FileNames, issue_name, kind_suffix, part_suffix
from panelcad.outputs.dxf_nest import Stock, stock_of
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_report_text import report_text, stock_report_text
from panelcad.outputs.dxf_stock import stock_sheets, write_stock_sheet
from panelcad.outputs.dxf_words import CAUTION, file_note
from panelcad.outputs.inspection import export_inspection, export_inspection_csv
from panelcad.outputs.manifest import MANIFEST, manifest_text
from panelcad.outputs.template import TemplateOptions, export_template
from panelcad.store.atomic import write_atomically

Writers = dict[str, Callable[[Path], None]]
"""What writes each file, by its name."""
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
    plates: tuple[str, ...] = ()
    """The ids or names of the plates to be issued; none for all that are worked on."""
    dxf: DxfOptions = _DXF
    drawing: DrawingOptions = _DRAWING
    template: TemplateOptions = _TEMPLATE
    stock: Stock | None = None
    """Stock sheets on which two or more new plates are nested besides; None for what the profile states, if it does."""
    tell: Callable[[str], None] = _silent


@dataclass(frozen=True)
class Issue:
    """What the papers are of: a checked option, its stamp, what changed since the release before, and which plates."""

    report: CheckReport
    mark: Stamp
    plates: tuple[Plate, ...]
    changes: tuple[str, ...] = ()

    @property
    def option(self) -> Option:
        return self.report.option

    @property
    def base(self) -> str:
        """What the names of papers of all these plates begin with: 'zz-demo-1-glass-A', '…-part-pedestal'."""
        return (
            f"{issue_name(self.report.project, self.option, self.mark.revision)}{part_suffix(self.option, self.plates)}"
        )

    def folder_name(self, dxf: DxfOptions) -> str:
        """A folder for each kind of cutting file, which papers that name those files are called after too."""
        return f"{self.base}{kind_suffix(self.report.project, dxf)}"

    @property
    def heading(self) -> list[str]:
        part = part_text(self.option, self.plates)
        return [
            f"{self.report.project.title}, option {self.option.name} ({self.option.id})",
            f"Revision {self.mark.revision_text}, fingerprint {self.mark.fingerprint}",
            *([f"Part of the option: {part}"] if part else []),
        ]


def write_papers(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[str, ...]:
    """Write every paper of a released option and the manifest into a folder; their names, the manifest last."""
    files = [*_cutting_files(issue, folder, options), *_nested_files(issue, folder, options)]
    cutting = [file.name for file in files if file.suffix == ".dxf"]
    files.extend(_sheets(issue, folder, options))
    files.append(_measuring_list(issue, folder / f"{issue.base}-inspection.csv", options))
    files.append(_text(folder / f"{issue.folder_name(options.dxf)}-changes.txt", _changes_text(issue, cutting)))
    files.append(_text(folder / MANIFEST, manifest_text(files, issue.heading)))
    return tuple(file.name for file in files)


def write_draft(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[Path, ...]:
    """Write the sheets of an option that is not released; each marks itself as not for cutting."""
    return tuple(_sheets(issue, folder, options))


def write_cutting_draft(issue: Issue, folder: Path, options: ReleaseOptions) -> tuple[Path, ...]:
    """Write the cutting files of an option that is not released, and the paper templates of whole plates."""
    files = tuple(_cutting_files(issue, folder, options))
    return files if options.dxf.around else (*files, *_written(_templates(issue, options), folder, options))


def _cutting_files(issue: Issue, folder: Path, options: ReleaseOptions) -> Iterator[Path]:
    project, option, dxf = issue.report.project, issue.option, replace(options.dxf, stamp=issue.mark)
    for plate in issue.plates:
        file = folder / FileNames(project, option, issue.mark, dxf).plate(plate.id)
        options.tell(f"Writing {file.name}")
        export_dxf(project, option, plate.id, file, dxf)
        yield file
        yield _text(folder / f"{file.stem}-cutting-report.txt", report_text(project, option, plate.id, dxf))


def _nested_files(issue: Issue, folder: Path, options: ReleaseOptions) -> Iterator[Path]:
    """A cutting file and a report for each stock sheet, where several plates are made and the stock is known."""
    project, option = issue.report.project, issue.option
    stock, dxf = options.stock or stock_of(project.profile), replace(options.dxf, stamp=issue.mark)
    new = tuple(plate for plate in issue.plates if plate.state is PlateState.NEW)
    if stock is None or len(new) < 2:
        return
    options.tell("Laying the plates on stock sheets")
    part = part_suffix(option, issue.plates)
    for sheet in stock_sheets(project, option, stock, dxf, new):
        file = folder / FileNames(project, option, issue.mark, dxf).stock(sheet.number, part)
        write_stock_sheet(project, option, sheet, file, dxf)
        yield file
        text = stock_report_text(project, option, sheet, dxf, file.name)
        yield _text(folder / f"{file.stem}-cutting-report.txt", text)


def _sheets(issue: Issue, folder: Path, options: ReleaseOptions) -> Iterator[Path]:
    """The drawing, the first-article inspection and the full-size templates, all to be printed."""
    project, option, drawing = issue.report.project, issue.option, _drawing(issue, options)
    noted = replace(drawing, notes=_file_notes(issue, options.dxf) if issue.mark.is_released else ())
    writers: Writers = {
        f"{issue.folder_name(options.dxf)}-drawing.pdf": lambda file: export_drawing(project, option, file, noted),
        f"{issue.base}-inspection.pdf": lambda file: export_inspection(project, option, file, drawing),
    }
    yield from _written(writers | _templates(issue, options), folder, options)


def _templates(issue: Issue, options: ReleaseOptions) -> Writers:
    project, option = issue.report.project, issue.option
    template = replace(options.template, drawing=_drawing(issue, options))
    start = issue_name(project, option, issue.mark.revision)
    return {
        f"{start}-{plate.id}-template.pdf": partial(_template, project, option, plate.id, template)
        for plate in issue.plates
    }


def _written(writers: Writers, folder: Path, options: ReleaseOptions) -> Iterator[Path]:
    for name, write in writers.items():
        options.tell(f"Writing {name}")
        write(folder / name)
        yield folder / name


def _measuring_list(issue: Issue, file: Path, options: ReleaseOptions) -> Path:
    options.tell(f"Writing {file.name}")
    export_inspection_csv(issue.report.project, issue.option, file, _drawing(issue, options))
    return file


def _drawing(issue: Issue, options: ReleaseOptions) -> DrawingOptions:
    """The drawing's options for this issue, its plates named only where they are not all."""
    plates = tuple(plate.id for plate in issue.plates) if part_text(issue.option, issue.plates) else ()
    return replace(options.drawing, stamp=issue.mark, report=issue.report, plates=plates)


def _file_notes(issue: Issue, dxf: DxfOptions) -> tuple[str, ...]:
    project, names = issue.report.project, FileNames(issue.report.project, issue.option, issue.mark, dxf)
    return tuple(file_note(project, plate, names.plate(plate.id), dxf) for plate in issue.plates)


def _template(project: Project, option: Option, plate_id: str, template: TemplateOptions, file: Path) -> None:
    export_template(project, option, plate_id, file, template)


def _text(file: Path, text: str) -> Path:
    write_atomically(file, text.encode())
    return file


def _changes_text(issue: Issue, cutting: list[str]) -> str:
    changed = ["Changed since the release before:", *(f"- {line}" for line in issue.changes)]
    files = ["Cutting files:", *(f"- {name}" for name in cutting)]
    lines = [*issue.heading, "", *(changed if issue.changes else ["First release."]), "", *files, "", *CAUTION]
    return "\n".join(lines) + "\n"
