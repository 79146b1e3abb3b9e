"""The hole schedule on sheets: number, position, size, tolerance and purpose of every hole, and the outline."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.describe import sheet_text
from panelcad.drawing.directions import LEGEND
from panelcad.drawing.display import Along
from panelcad.drawing.inspection import LARGEST_GAUGE, gauge_words
from panelcad.drawing.outline_edges import Edge, edges
from panelcad.drawing.page import Page
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.geometry.contour import Contour
from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState

_CUT: Final = Column("Cut at", 24.0)
_COLUMNS: Final = (
    Column("No.", 12.0),
    Column("X", 19.0, Along.RIGHT),
    Column("Y", 19.0, Along.RIGHT),
    Column("Size", 46.0),
    _CUT,
    Column("Tolerance", 23.0),
    Column("What for", 59.0),
    Column("State", 15.0),
)


_MASKED: Final = frozenset({HoleKind.TAPPED, HoleKind.INSERT})
_NUMBERS: Final = (
    "7 is an opening, 7.1 a hole of the same cut; S are attach screws, P inner openings, V vertices of the outline. "
    "X and Y are of the centre; of a keyed or flatted hole, of its circle's."
)


def schedule_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """The schedule of one plate: its holes, then its outline from vertex to vertex."""
    datum = f"Positions and sizes in {subject.unit_word}, finished sizes. Datum: {subject.datum_of(plate.plate)}."
    axes = f"X to the right and Y up as the pilot sees it; positions {subject.tolerance}."
    words = (datum, f"{axes} {LEGEND} {_NUMBERS}", *_radius_words(subject, plate))
    columns = _COLUMNS if _coat(subject) else tuple(column for column in _COLUMNS if column is not _CUT)
    listed = holes(subject, plate)
    rows = [_row(subject, hole, columns) for hole in listed]
    is_there = plate.plate.state is not PlateState.NEW
    rows.extend(_contour_rows(subject, _Contour("OUTLINE", plate.outline, -_coat(subject), is_there), columns))
    for hole in listed:
        if hole.is_free:
            free = _Contour(f"OUTLINE OF {hole.number}", hole.feature.contour, _coat(subject), hole.is_there)
            rows.extend(_contour_rows(subject, free, columns))
    material = sheet_text(plate.plate, subject.unit)
    listing = Listing("Hole schedule", plate.plate.name, words, columns, tuple(rows), abreast=2, material=material)
    return listing_pages(subject, listing)


def _radius_words(subject: Subject, plate: PlateLayout) -> Iterator[str]:
    """How exact the outline's radii are: as they are inspected."""
    if plate.plate.state is PlateState.NEW and any(edge.arc for edge in edges(plate.outline)):
        largest = subject.length(LARGEST_GAUGE)
        yield (
            f"The tolerance of a vertex is that of its X and Y. Radii of the outline are {gauge_words(subject)} up to "
            f"R{largest}; larger ones are for reference, their ends and middles are measured."
        )


@dataclass(frozen=True)
class _Contour:
    """A contour given vertex by vertex; `grows` is by how many mm it is cut larger."""

    title: str
    contour: Contour
    grows: float
    is_there: bool


def _contour_rows(subject: Subject, of: _Contour, columns: tuple[Column, ...]) -> Iterator[Row]:
    found = edges(of.contour)
    title = f"{of.title}: from each vertex to the next, counter-clockwise as the pilot sees it"
    if found:
        yield Row((title, *("" for _ in columns[1:])), is_heading=True)
    for edge in found:
        cells = {
            "No.": f"V{edge.number}",
            "X": subject.number(edge.start.x),
            "Y": subject.number(edge.start.y),
            "Size": _edge_text(subject, edge),
            "Cut at": "–" if of.is_there else f"{subject.number(abs(of.grows))} {_WAY[of.grows < 0]}",
            "Tolerance": "–" if of.is_there else subject.tolerance_number,
            "What for": _about(subject, edge),
            "State": "existing" if of.is_there else "cut",
        }
        yield Row(tuple(cells[column.title] for column in columns))


_WAY: Final = {True: "inward", False: "outward"}


def _edge_text(subject: Subject, edge: Edge) -> str:
    if edge.arc is None:
        return f"straight to V{edge.following}"
    bow = ", concave" if edge.is_concave else ""
    return f"arc R{subject.number(edge.arc.radius)}{bow} to V{edge.following}"


def _about(subject: Subject, edge: Edge) -> str:
    if edge.arc is None:
        return "edge"
    return f"edge; centre X {subject.number(edge.arc.centre.x)}, Y {subject.number(edge.arc.centre.y)}"


def _row(subject: Subject, hole: Hole, columns: tuple[Column, ...]) -> Row:
    x, y = hole.centre
    cells = {
        "No.": hole.number,
        "X": subject.number(x),
        "Y": subject.number(y),
        "Size": hole.size(subject.unit),
        "Cut at": _cut_size(subject, hole),
        "Tolerance": _tolerance(subject, hole),
        "What for": hole.about(subject.unit),
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
    return "–" if hole.is_there else subject.tolerance_number
