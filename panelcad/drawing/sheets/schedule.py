"""The hole schedule on sheets: number, position from the datum, size, tolerance and purpose of every hole."""

from typing import Final

from panelcad.drawing.display import Along
from panelcad.drawing.page import Page
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlateLayout

_CUT: Final = Column("Cut at", 24.0)
_COLUMNS: Final = (
    Column("No.", 12.0),
    Column("X", 19.0, Along.RIGHT),
    Column("Y", 19.0, Along.RIGHT),
    Column("Size", 46.0),
    _CUT,
    Column("Tolerance", 20.0),
    Column("What for", 62.0),
    Column("State", 15.0),
)


_MASKED: Final = frozenset({HoleKind.TAPPED, HoleKind.INSERT})
_NUMBERS: Final = "7 is an opening, 7.1 a hole of the same cut; S are attach screws, P inner openings of the sheet."


def schedule_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """The schedule of one plate; none where it has no holes."""
    datum = f"Positions and sizes in {subject.unit_word}, finished sizes. Datum: {subject.datum_of(plate.plate)}."
    axes = f"X to the right and Y up as the pilot sees it; positions {subject.tolerance}."
    words = (datum, f"{axes} {_NUMBERS}")
    columns = _COLUMNS if _coat(subject) else tuple(column for column in _COLUMNS if column is not _CUT)
    rows = tuple(_row(subject, hole, columns) for hole in holes(subject, plate))
    return listing_pages(subject, Listing("Hole schedule", plate.plate.name, words, columns, rows, abreast=2))


def _row(subject: Subject, hole: Hole, columns: tuple[Column, ...]) -> Row:
    x, y = hole.centre
    cells = {
        "No.": hole.number,
        "X": subject.number(x),
        "Y": subject.number(y),
        "Size": hole.size,
        "Cut at": _cut_size(subject, hole),
        "Tolerance": _tolerance(subject, hole),
        "What for": hole.purpose,
        "State": hole.state,
    }
    return Row(tuple(cells[column.title] for column in columns))


def _coat(subject: Subject) -> float:
    return subject.project.profile.finish_thickness


def _cut_size(subject: Subject, hole: Hole) -> str:
    """What is cut before the finish is on; threads and inserts are masked and stay as they are."""
    form, coat = hole.feature.form, _coat(subject)
    if hole.is_there or (form is not None and form.kind in _MASKED):
        return "–"
    if hole.is_circle:
        x1, _, x2, _ = hole.feature.contour.bounds
        return f"Ø{subject.number(x2 - x1 + 2 * coat)}"
    return f"{subject.number(coat)} outward"


def _tolerance(subject: Subject, hole: Hole) -> str:
    return "–" if hole.is_there else f"±{subject.number(subject.project.profile.sheet_tolerance)}"
