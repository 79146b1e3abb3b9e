"""The hole schedule on sheets: number, position from the datum, size, tolerance and purpose of every hole."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Along
from panelcad.drawing.page import Page
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.model.layout import PlateLayout

_COLUMNS: Final = (
    Column("No.", 12.0),
    Column("X", 19.0, Along.RIGHT),
    Column("Y", 19.0, Along.RIGHT),
    Column("Size", 46.0),
    Column("Tolerance", 20.0),
    Column("What for", 62.0),
    Column("State", 15.0),
)


_NUMBERS: Final = "7 is an opening, 7.1 a hole of the same cut; S are attach screws, P inner openings of the sheet."


def schedule_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """The schedule of one plate; none where it has no holes."""
    datum = f"Positions and sizes in {subject.unit_word}, finished sizes. Datum: {subject.project.aircraft.datum}."
    axes = f"X to the right and Y up as the pilot sees it; positions {subject.tolerance}."
    words = (datum, f"{axes} {_NUMBERS}")
    rows = tuple(_rows(subject, plate))
    return listing_pages(subject, Listing("Hole schedule", plate.plate.name, words, _COLUMNS, rows, abreast=2))


def _rows(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    for hole in holes(subject, plate):
        x, y = hole.centre
        yield Row(
            (
                hole.number,
                subject.number(x),
                subject.number(y),
                hole.size,
                _tolerance(subject, hole),
                hole.purpose,
                hole.state,
            )
        )


def _tolerance(subject: Subject, hole: Hole) -> str:
    return "–" if hole.is_there else f"±{subject.number(subject.project.profile.sheet_tolerance)}"
