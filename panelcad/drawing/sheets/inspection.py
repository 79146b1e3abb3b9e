"""The first-article inspection on sheets, with empty columns for what was measured and whether it passes."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.datum_words import datum_on_part
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.directions import LEGEND
from panelcad.drawing.display import Along
from panelcad.drawing.inspection import CLOSING, Characteristic, characteristics, tolerance_words
from panelcad.drawing.page import Page
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.model.layout import PlateLayout

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
    "In the order of measuring: sheet and outline, each hole's size and place, what is looked at, lettering."
)


def inspection_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    words = (
        f"Dimensions in {subject.unit_word}. {LEGEND} {_WORDS}",
        f"Datum: {subject.datum_of(plate.plate)}. {datum_on_part(plate, subject.unit)}",
    )
    rows, material = tuple(_rows(subject, plate)), sheet_text(plate.plate, subject.unit)
    listing = Listing("First-article inspection", plate.plate.name, words, _COLUMNS, rows, abreast=2, material=material)
    return listing_pages(subject, listing)


def _rows(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    blank = ("",) * (len(_COLUMNS) - 1)
    was_there = False
    for number, each in enumerate(characteristics(subject, plate), 1):
        if each.was_there and not was_there:
            yield Row(("THERE BEFORE THE WORK, FOR REFERENCE", *blank), is_heading=True)
            was_there = True
        what = f"{each.purpose}, {each.what}" if each.purpose else each.what
        yield Row((str(number), each.feature, what, each.words, _tolerance(subject, each), "", ""))
    yield Row(("CLOSING", *blank), is_heading=True)
    for feature, what in CLOSING:
        yield Row(("", feature, what, "", "", "", ""))


def _tolerance(subject: Subject, each: Characteristic) -> str:
    words = tolerance_words(subject, each)
    return f"±{words}" if each.tolerance is not None and not each.is_reference else words
