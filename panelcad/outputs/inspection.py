"""The first-article inspection sheet as a PDF to be filled in, and as CSV for a measuring machine or a spreadsheet."""

import csv
import io
from pathlib import Path
from typing import Final

from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.inspection import characteristics
from panelcad.drawing.page import bordered
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.inspection import inspection_pages
from panelcad.drawing.subject import Subject
from panelcad.model.project import Option, Project
from panelcad.outputs.drawing import DrawingOptions, drawn_subject, properties
from panelcad.outputs.paper_file import paper_file
from panelcad.outputs.pdf import write_pdf
from panelcad.units import format_exact

_DEFAULTS: Final = DrawingOptions()
COLUMNS: Final = (
    "characteristic",
    "plate",
    "feature",
    "for",
    "what",
    "nominal",
    "tolerance",
    "unit",
    "reference",
    "measured",
    "pass",
    "option",
    "revision",
    "fingerprint",
)


def export_inspection(project: Project, option: Option, path: Path | str, options: DrawingOptions = _DEFAULTS) -> None:
    """Write the inspection sheets of all plates that are worked on, as a PDF."""
    shown = drawn_subject(project, option, options)
    write_pdf(path, inspection_sheets(shown), properties(shown, "First-article inspection"))


def export_inspection_csv(
    project: Project, option: Option, path: Path | str, options: DrawingOptions = _DEFAULTS
) -> None:
    """Write the same characteristics as comma-separated values (RFC 4180), UTF-8, one a line."""
    content = inspection_csv(drawn_subject(project, option, options)).encode()
    with paper_file(path) as stream:
        stream.write(content)


def inspection_sheets(shown: Subject) -> list[Sheet]:
    return bordered(shown, [page for plate in worked_plates(shown) for page in inspection_pages(shown, plate)])


def inspection_csv(shown: Subject) -> str:
    """The lines; numbers are those of the drawing, in the project's unit, with a point."""
    stream = io.StringIO()
    writer = csv.writer(stream)
    writer.writerow(COLUMNS)
    mark = shown.stamp
    for plate in worked_plates(shown):
        for number, each in enumerate(characteristics(shown, plate), 1):
            tolerance = "" if each.tolerance is None else format_exact(each.tolerance, shown.unit)
            unit = "" if each.nominal is None else shown.unit.value
            reference = "yes" if each.is_reference else "no"
            what = (
                number,
                plate.plate.id,
                each.feature,
                each.purpose,
                each.what,
                each.words,
                tolerance,
                unit,
                reference,
            )
            writer.writerow((*what, "", "", shown.option.id, mark.revision or "draft", mark.fingerprint))
    return stream.getvalue()
