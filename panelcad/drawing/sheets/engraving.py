"""Placards and engraving: the plate with its lettering, and each line with its place and letter height."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from panelcad.drawing.box import grown, middle, share
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.display import Along, Group, Node, Text, walk
from panelcad.drawing.engravings import numbered_engravings, removed_words, standing, standing_words
from panelcad.drawing.extent import extent
from panelcad.drawing.inks import PLAIN, letters
from panelcad.drawing.labels import Ground, Label, crowding, edges_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.page import Page, above_title_block, heading
from panelcad.drawing.paper import Paper, Scale
from panelcad.drawing.sheets.choice import Trouble, clearest_page
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.sheets.view import Seat, seated
from panelcad.drawing.style import paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.drawing.views.front import front_view
from panelcad.drawing.wishes import Wish, number_in
from panelcad.model.found import dropped_lettering
from panelcad.model.layout import PlacedItem, PlateLayout
from panelcad.model.placard import is_placard
from panelcad.units import format_angle

_COLUMNS: Final = (
    Column("No.", 14.0),
    Column("Text", 78.0),
    Column("X", 22.0, Along.RIGHT),
    Column("Y", 22.0, Along.RIGHT),
    Column("Letter height", 28.0, Along.RIGHT),
    Column("Turned", 18.0, Along.RIGHT),
    Column("State", 22.0),
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
    """The view and the list; none where nothing is engraved and no placard is fitted."""
    rows = (*_engraved(subject, plate), *_removed(subject, plate), *_placards(subject, plate))
    if not rows:
        return []
    material = sheet_text(plate.plate, subject.unit)
    words = _words(subject, plate)
    listing = Listing("Placards and engraving", plate.plate.name, words, _COLUMNS, rows, abreast=2, material=material)
    view = clearest_page(plate.plate.name, _views(subject, plate))
    return [view, *listing_pages(subject, listing)]


def _words(subject: Subject, plate: PlateLayout) -> tuple[str, ...]:
    used = standing_words(subject, plate), removed_words(subject, plate)
    return (*_WORDS, *(words for words in used if words))


def placards(plate: PlateLayout) -> list[PlacedItem]:
    """Fitted things that carry words: their name is what they say."""
    return [placed for placed in plate.items if is_placard(placed.cutout) and placed.bezel is not None]


def _engraved(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    there = standing(subject, plate)
    for number, each in numbered_engravings(subject, plate):
        place = subject.number(each.x), subject.number(each.y)
        height, turn = subject.number(each.height), format_angle(each.rotation)
        yield Row((number, each.text, *place, height, turn, "existing" if number in there else "engrave"))


def _removed(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    """Old lines that go have no number: they are no part of the option."""
    for each in dropped_lettering(subject.project, plate):
        place = subject.number(each.x), subject.number(each.y)
        height, turn = subject.number(each.height), format_angle(each.rotation)
        yield Row(("–", each.text, *place, height, turn, "remove"))


def _placards(subject: Subject, plate: PlateLayout) -> Iterator[Row]:
    for placed in placards(plate):
        at = placed.placement
        number = subject.numbers.items[placed.item.id]
        place = subject.number(at.x), subject.number(at.y)
        words = f"{placed.item.name} ({placed.cutout.title})"
        yield Row((number, words, *place, "placard", format_angle(at.rotation), "fit"))


def _views(subject: Subject, plate: PlateLayout) -> Iterator["_Lettering"]:
    for paper in subject.papers:
        seat = seated(plate.outline.bounds, grown(above_title_block(paper), -_ROOM))
        if seat is not None:
            yield _Lettering(subject, plate, paper, seat)


@dataclass(frozen=True)
class _Lettering:
    """The plate with its lettering on one paper, every line with its number beside it."""

    subject: Subject
    plate: PlateLayout
    paper: Paper
    seat: Seat

    @property
    def scale(self) -> Scale:
        return self.seat.scale

    @property
    def trouble(self) -> Trouble:
        return Trouble(len(list(self._wishes())) - len(self.labels), crowding(self.labels))

    @property
    def fill(self) -> float:
        return share(self.seat.box(self.plate.outline.bounds), above_title_block(self.paper))

    @property
    def page(self) -> Page:
        inks, name = self.subject.inks, self.plate.plate.name
        head = heading(self.paper, inks, f"{name.upper()}, PLACARDS AND ENGRAVING", *_words(self.subject, self.plate))
        numbers = (node for label in self.labels for node in label.nodes(inks, inks.palette.background))
        material = sheet_text(self.plate.plate, self.subject.unit)
        nodes = (*self.nodes, *numbers, *head)
        return Page(self.paper, nodes, name, "Placards and engraving", str(self.scale), material)

    @cached_property
    def nodes(self) -> tuple[Node, ...]:
        style = paper_style(self.scale.factor, self.subject.inks.palette, _EDGE, _THIN)
        groups = front_view(self.subject.laid, self.plate.plate.id, style)
        words = {placed.item.id for placed in placards(self.plate)}
        return self.seat.nodes(tuple(g for g in groups if g.layer != Layer.BEZELS or g.owner in words))

    @cached_property
    def labels(self) -> list[Label]:
        texts = [text_bounds(node) for node in walk(self.nodes) if isinstance(node, Text)]
        contours = (self.plate.outline, *(feature.contour for feature in self.plate.features))
        edges = edges_of(self.seat.contour(contour) for contour in contours)
        return Ground(texts, edges, above_title_block(self.paper)).placed(self._wishes())

    def _wishes(self) -> Iterator[Wish]:
        """The number of each line of lettering beside its box, and of each placard in it."""
        colour = self.subject.inks.note
        for number, each in numbered_engravings(self.subject, self.plate):
            words = next(group for group in self.nodes if isinstance(group, Group) and group.owner == each.id)
            box = extent((words,))
            yield Wish(number, middle(box), 0.0, height=PLAIN, colour=colour, thing=box)
        for placed in placards(self.plate):
            if placed.bezel is not None:
                number = self.subject.numbers.items[placed.item.id]
                yield number_in(number, self.seat.contour(placed.bezel).bounds, letters(self.paper))
