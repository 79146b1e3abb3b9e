"""The first-article inspection sheet as a PDF to be filled in, and as CSV for a measuring machine or a spreadsheet."""

import csv
import io
from pathlib import Path
from typing import Final

from panelcad.drawing.datum_words import datum_on_part
from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.inspection import CLOSING, characteristics, tolerance_words
from panelcad.drawing.page import bordered
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.inspection import inspection_pages
from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.project import Option, Project
from panelcad.outputs.drawing import DrawingOptions, drawn_subject, properties
from panelcad.outputs.paper_file import paper_file
from panelcad.outputs.pdf import write_pdf

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
    "aircraft",
    "datum",
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
    """The lines; numbers are those of the drawing, in the project's unit, with a point.

    The rows that close the inspection of a plate follow its characteristics, without a number.
    """
    stream = io.StringIO()
    writer = csv.writer(stream)
    writer.writerow(COLUMNS)
    for plate in worked_plates(shown):
        said = _of_the_paper(shown, plate)
        for number, each in enumerate(characteristics(shown, plate), 1):
            what = (number, plate.plate.id, each.feature, each.purpose, each.what, each.words)
            unit = "" if each.nominal is None else shown.unit.value
            reference = "yes" if each.is_reference else "no"
            writer.writerow((*what, tolerance_words(shown, each), unit, reference, "", "", *said))
        for feature, what_closes in CLOSING:
            writer.writerow(("", plate.plate.id, feature, "", what_closes, "", "", "", "no", "", "", *said))
    return stream.getvalue()


def _of_the_paper(shown: Subject, plate: PlateLayout) -> tuple[str, ...]:
    """The cells that are the same in all lines of a plate: of which option and aircraft, and the datum of positions."""
    mark, aircraft = shown.stamp, shown.project.aircraft.registration
    datum = f"{shown.datum_of(plate.plate)}. {datum_on_part(plate, shown.unit)}"
    return shown.option.id, mark.revision or "draft", mark.fingerprint, aircraft, datum
