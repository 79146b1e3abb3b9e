"""All planning papers of an option written into a folder, PDF and CSV."""

from collections.abc import Iterable
from pathlib import Path

from panelcad.errors import UnusableInput
from panelcad.outputs.papers.breaker_schedule import breaker_schedule
from panelcad.outputs.papers.comparison import comparison_report
from panelcad.outputs.papers.csv_file import write_csv
from panelcad.outputs.papers.document import Document
from panelcad.outputs.papers.equipment_list import equipment_list
from panelcad.outputs.papers.functions_and_failures import functions_and_failures
from panelcad.outputs.papers.load_analysis import load_analysis
from panelcad.outputs.papers.pdf_document import write_document
from panelcad.outputs.papers.weight_revision import weight_revision
from panelcad.planning.compare import Comparison
from panelcad.planning.judge import Judgement
from panelcad.units import LengthUnit


def option_papers(judgement: Judgement, on: str) -> tuple[Document, ...]:
    """The shop's papers about an option, dated `on` (2026-03-01)."""
    return (
        functions_and_failures(judgement),
        load_analysis(judgement),
        breaker_schedule(judgement),
        weight_revision(judgement, on),
        equipment_list(judgement),
    )


def write_option_papers(judgement: Judgement, folder: Path, on: str) -> tuple[Path, ...]:
    """Write the shop's papers; the files written. Raises `UnusableInput` where the folder cannot be written to."""
    unit = judgement.equipment.project.unit
    written = (_write(paper, folder, judgement.option.id, unit) for paper in option_papers(judgement, on))
    return tuple(file for files in written for file in files)


def write_comparison(comparison: Comparison, path: Path) -> None:
    """Write the owner's report. Raises `UnusableInput` where it cannot be written."""
    _at(path.parent)
    write_document(path, comparison_report(comparison), comparison.project.unit)


def _write(paper: Document, folder: Path, option_id: str, unit: LengthUnit) -> Iterable[Path]:
    _at(folder)
    pdf = folder / f"{option_id}-{paper.name}.pdf"
    write_document(pdf, paper, unit)
    yield pdf
    for grid in paper.grids:
        file = folder / f"{option_id}-{paper.name}-{grid.name}.csv"
        write_csv(file, paper, grid)
        yield file


def _at(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnusableInput(
            str(folder), "", f"it cannot be made ({error.strerror})", "a folder one may write in"
        ) from None
