"""The first-article inspection on sheets, with empty columns for what was measured and whether it passes."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.describe import sheet_text
from panelcad.drawing.directions import LEGEND
from panelcad.drawing.display import Along
from panelcad.drawing.inspection import Characteristic, characteristics
from panelcad.drawing.page import Page
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.model.layout import PlateLayout
from panelcad.units import format_exact

_COLUMNS: Final = (
    Column("Char.", 14.0),
    Column("Feature", 20.0),
    Column("What", 54.0),
    Column("Nominal", 30.0, Along.RIGHT),
    Column("Tolerance", 21.0, Along.RIGHT),
    Column("Measured", 28.0, is_blank=True),
    Column("Pass", 16.0, is_blank=True),
)
_WORDS: Final = (
    "In the order of measuring: the sheet and its outline, each hole's size and its place, then what is looked at.",
    "Part number, serial, instruments, inspector and date: ______________________________________________",
)


def inspection_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    words = (f"Dimensions in {subject.unit_word}. {LEGEND} {_WORDS[0]}", _WORDS[1])
    rows, material = tuple(_rows(subject, plate)), sheet_text(plate.plate, subject.unit)
    listing = Listing("First-article inspection", plate.plate.name, words, _COLUMNS, rows, abreast=2, material=material)
    return listing_pages(subject, listing)


def _rows(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    blank = ("",) * (len(_COLUMNS) - 1)
    was_reference = False
    for number, each in enumerate(characteristics(subject, plate), 1):
        if each.is_reference and not was_reference:
            yield Row(("THERE BEFORE THE WORK, FOR REFERENCE", *blank), is_heading=True)
            was_reference = True
        what = f"{each.purpose}, {each.what}" if each.purpose else each.what
        yield Row((str(number), each.feature, what, each.words, tolerance_text(subject, each), "", ""))


def tolerance_text(subject: Subject, each: Characteristic) -> str:
    """What the sheet is of itself, its maker answers for."""
    if each.is_reference:
        return "reference"
    if each.tolerance is not None:
        return f"±{format_exact(each.tolerance, subject.unit)}"
    return "as supplied" if each.nominal is not None else ""
