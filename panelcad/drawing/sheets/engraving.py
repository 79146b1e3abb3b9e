"""Placards and engraving: the plate with its lettering, and each line with its place and letter height."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.box import grown
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.display import Along, Node, Text, walk
from panelcad.drawing.inks import letters
from panelcad.drawing.labels import CROWDED, Ground, Wish, crowding, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds, text_width
from panelcad.drawing.page import Page, above_title_block, heading
from panelcad.drawing.paper import Paper, drawing_papers
from panelcad.drawing.schedule import sort_key
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.sheets.view import Seat, seated
from panelcad.drawing.style import paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.drawing.views.front import front_view
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import Engraving
from panelcad.units import format_angle

_COLUMNS: Final = (
    Column("No.", 14.0),
    Column("Text", 78.0),
    Column("X", 22.0, Along.RIGHT),
    Column("Y", 22.0, Along.RIGHT),
    Column("Letter height", 28.0, Along.RIGHT),
    Column("Turned", 18.0, Along.RIGHT),
)
_WORDS: Final = (
    "The place is the middle of the line of letters; the height is a capital's. The cutting file has the strokes.",
    "Placards required by the type certificate, the flight manual or an equipment maker come first: check each.",
)
_ROOM: Final = 8.0
_EDGE: Final = 0.25
_THIN: Final = 0.13
"""Line widths of metal and cuts, so that the lettering stands out."""


def engraving_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """The view and the list; none where nothing is engraved."""
    if not plate.plate.engravings:
        return []
    rows = tuple(_row(subject, engraving) for engraving in _ordered(subject, plate))
    listing = Listing("Engraving list", plate.plate.name, _WORDS, _COLUMNS, rows, abreast=2)
    return [_view_page(subject, plate), *listing_pages(subject, listing)]


def _ordered(subject: Subject, plate: PlateLayout) -> list[Engraving]:
    return sorted(plate.plate.engravings, key=lambda each: sort_key(subject.numbers.engravings[each.id]))


def _row(subject: Subject, each: Engraving) -> Row:
    return Row(
        (
            subject.numbers.engravings[each.id],
            each.text,
            subject.number(each.x),
            subject.number(each.y),
            subject.number(each.height),
            format_angle(each.rotation),
        )
    )


def _view_page(subject: Subject, plate: PlateLayout) -> Page:
    """On the smallest sheet on which every line has its number beside it."""
    found = []
    for paper in drawing_papers(subject.series):
        seat = seated(plate.outline.bounds, grown(above_title_block(paper), -_ROOM))
        if seat is None:
            continue
        nodes, trouble = _nodes(subject, plate, paper, seat)
        found.append((trouble, paper, seat, nodes))
        if trouble <= (0, CROWDED):
            break
    _, paper, seat, nodes = min(found, key=lambda each: each[0])
    name = plate.plate.name
    head = heading(paper, subject.inks, f"{name.upper()}, PLACARDS AND ENGRAVING", *_WORDS)
    material = sheet_text(plate.plate, subject.unit)
    return Page(paper, (*nodes, *head), name, "Placards and engraving", str(seat.scale), material)


def _nodes(
    subject: Subject, plate: PlateLayout, paper: Paper, seat: Seat
) -> tuple[tuple[Node, ...], tuple[int, float]]:
    """The page's nodes, how many numbers found no place, and the share that stands far off."""
    style = paper_style(seat.scale.factor, subject.inks.palette, _EDGE, _THIN)
    groups = front_view(subject.laid, plate.plate.id, style)
    shown = seat.nodes(tuple(group for group in groups if group.layer != Layer.BEZELS))
    wishes = list(_wishes(subject, plate, seat, letters(paper).plain))
    texts = [text_bounds(node) for node in walk(shown) if isinstance(node, Text)]
    contours = [seat.contour(feature.contour) for feature in plate.features]
    ground = Ground(texts, lines_of([seat.contour(plate.outline), *contours], []), above_title_block(paper))
    labels = [label for label in map(ground.place, wishes) if label is not None]
    numbers = tuple(node for label in labels for node in label.nodes(subject.inks))
    return (*shown, *numbers), (len(wishes) - len(labels), crowding(labels))


def _wishes(subject: Subject, plate: PlateLayout, seat: Seat, height: float) -> Iterator[Wish]:
    for each in _ordered(subject, plate):
        half = text_width(each.text, each.height * seat.scale.factor) / 2
        spot = seat.point(Point(each.x, each.y))
        colour = subject.inks.note
        yield Wish(subject.numbers.engravings[each.id], spot, min(half, 8.0), height=height, colour=colour)
