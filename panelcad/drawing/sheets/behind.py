"""The panel from behind on a sheet: numbered bodies, what stands around, the tightest clearances."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from panelcad.drawing.box import grown, share, size
from panelcad.drawing.clearance import Clearance, clearances
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.display import Along, Bounds, Group, Node, Path, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.inks import Letters, letters
from panelcad.drawing.labels import Ground, Label, crowding, drawn_edges, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.page import Page, above_title_block, beside_title_block, heading
from panelcad.drawing.paper import Paper, Scale
from panelcad.drawing.sheets.choice import Trouble, clearest_page
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.sheets.section_lines import chosen_lines, section_marks
from panelcad.drawing.sheets.view import Seat, fill_of, seated
from panelcad.drawing.style import paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row, boxes_filled, run_over, stretched
from panelcad.drawing.views.behind import behind_view
from panelcad.drawing.wishes import Wish, name_in, number_in
from panelcad.geometry.contour import Rounded
from panelcad.geometry.point import Point
from panelcad.geometry.point import middle as halfway
from panelcad.geometry.track import Track, line
from panelcad.model.layout import PlateLayout

_ROOM: Final = 16.0
"""Around the view, for section marks and names."""
_SHOWN: Final = 25.4
"""Clearances up to this are drawn where they are."""
_CORNER: Final = 0.147
"""From a circle's box to the square within it, in diameters: (1 - sqrt(1/2)) / 2."""
_MOST_SHOWN: Final = 16
_COLUMNS: Final = (
    Column("No.", 12.0),
    Column("Body", 20.0),
    Column("Next to", 40.0),
    Column("Clearance", 29.0, Along.RIGHT),
    Column("Required", 27.0, Along.RIGHT),
)


def behind_page(subject: Subject, plate: PlateLayout) -> Page:
    """The view from behind on the smallest sheet on which each number has its place."""
    return clearest_page(plate.plate.name, _views(subject, plate))


def _views(subject: Subject, plate: PlateLayout) -> Iterator["_Behind"]:
    real = extent(behind_view(subject.laid, plate.plate.id, paper_style(1.0)))
    for paper in subject.papers:
        seat = seated(real, grown(above_title_block(paper), -_ROOM))
        if seat is not None:
            yield _Behind(subject, plate, paper, seat)


def clearance_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """All clearances within reach, the tightest first; none where there are none."""
    words = (
        "Between bodies that share some depth, in plan; to a depth limit, in depth. Required: by the profile.",
        "First what has least left over what is required. Neighbours of one stack are left out.",
        "Arithmetic on what was entered: measure in the aircraft.",
    )
    rows = tuple(clearance_row(subject, each) for each in clearances(subject.laid, plate))
    material = sheet_text(plate.plate, subject.unit)
    listing = Listing("Clearances behind", plate.plate.name, words, _COLUMNS, rows, abreast=2, material=material)
    return listing_pages(subject, listing)


def has_all_clearances(subject: Subject, plate: PlateLayout, paper: Paper) -> bool:
    """Whether the table on the view from behind, on this paper, has room for all of them."""
    columns, boxes = _set_out(paper)
    rows = [clearance_row(subject, each) for each in clearances(subject.laid, plate)]
    return len(boxes_filled(columns, rows, boxes)) <= len(boxes)


def _set_out(paper: Paper) -> tuple[tuple[Column, ...], list[Bounds]]:
    """The columns and boxes of the table beside the title block."""
    left, bottom, right, top = beside_title_block(paper)
    width = (min(right, left + 280.0) - left - 18.0) / 2
    boxes = [(x, bottom + 3.0, x + width, top - 3.0) for x in (left + 6.0, left + width + 12.0)]
    return stretched(_COLUMNS, width), boxes


def clearance_row(subject: Subject, each: Clearance) -> Row:
    return Row(
        (
            subject.numbers.items[each.item],
            each.body,
            name_of(subject, each.neighbour),
            subject.number(each.distance),
            subject.number(each.required),
        )
    )


def name_of(subject: Subject, owner: str) -> str:
    """An item's number and name, or the name of a thing around."""
    number = subject.numbers.items.get(owner)
    if number is not None:
        return f"{number} {subject.option.item(owner).name}"
    return next(thing.name for thing in subject.project.surroundings.things if thing.id == owner)


@dataclass(frozen=True)
class _Behind:
    subject: Subject
    plate: PlateLayout
    paper: Paper
    seat: Seat

    @property
    def letters(self) -> Letters:
        return letters(self.paper)

    @property
    def scale(self) -> Scale:
        return self.seat.scale

    @property
    def trouble(self) -> Trouble:
        needed = sum(not wish.is_optional for wish in self._wishes)
        return Trouble(needed - sum(not label.wish.is_optional for label in self.labels), crowding(self.labels))

    @property
    def fill(self) -> float:
        return share(extent(self.nodes), above_title_block(self.paper))

    @cached_property
    def nodes(self) -> tuple[Group, ...]:
        style = paper_style(self.scale.factor, self.subject.inks.palette)
        nodes = self.seat.nodes(behind_view(self.subject.laid, self.plate.plate.id, style))
        return tuple(node for node in nodes if isinstance(node, Group))

    @property
    def page(self) -> Page:
        inks = self.subject.inks
        name = self.plate.plate.name
        nodes = (
            *self.nodes,
            Path(self.gap_lines, pen=inks.pen(0.35, colour=inks.alarm)),
            *self._section_marks(self._written),
            *(node for label in self.labels for node in label.nodes(inks, inks.palette.background)),
            *heading(self.paper, inks, f"{name.upper()}, FROM BEHIND", _MIRRORED, _MEANING),
            *self._table(),
        )
        material = sheet_text(self.plate.plate, self.subject.unit)
        return Page(self.paper, nodes, name, "View from behind", str(self.seat.scale), material)

    def _section_marks(self, texts: Sequence[Bounds] = ()) -> tuple[Node, ...]:
        lines = chosen_lines(self.subject, self.plate)
        return tuple(section_marks(lines, self.seat, extent(self.nodes), self.subject.inks, texts))

    @property
    def _written(self) -> list[Bounds]:
        return [label.box for label in self.labels]

    def _table(self) -> Iterator[Node]:
        """The tightest clearances beside the title block."""
        columns, boxes = _set_out(self.paper)
        rows = [clearance_row(self.subject, each) for each in self.clearances]
        for part in run_over(columns, rows, boxes, self.subject.inks):
            yield from part

    @cached_property
    def clearances(self) -> list[Clearance]:
        return clearances(self.subject.laid, self.plate)

    @cached_property
    def gap_ends(self) -> list[tuple[Point, Point, str]]:
        """The ends on paper of the tightest clearances in plan, and their values."""
        tight = [each for each in self.clearances if each.ends and 0.0 < each.distance <= _SHOWN][:_MOST_SHOWN]
        return [(*self._seen(each.ends), self.subject.number(each.distance)) for each in tight]

    def _seen(self, ends: tuple[Point, ...]) -> tuple[Point, Point]:
        start, end = (self.seat.point(Point(-point.x, point.y)) for point in ends)
        return start, end

    @cached_property
    def gap_lines(self) -> tuple[Track, ...]:
        return tuple(line(a, b) for a, b, _ in self.gap_ends)

    @cached_property
    def labels(self) -> list[Label]:
        marks = self._section_marks()
        taken = [text_bounds(node) for node in marks if isinstance(node, Text)]
        chains = lines_of(o for node in marks if isinstance(node, Path) for o in node.outlines if isinstance(o, Track))
        area = grown(above_title_block(self.paper), -1.0)
        return Ground(taken, drawn_edges(self.nodes), area, chains).placed(self._wishes)

    @cached_property
    def _wishes(self) -> list[Wish]:
        return [*self._item_wishes(), *self._gap_wishes(), *self._name_wishes()]

    def _item_wishes(self) -> Iterator[Wish]:
        for group in self.nodes:
            if group.layer == Layer.BODIES:
                number = self.subject.numbers.items[group.owner]
                yield number_in(number, _room_in(group), self.letters, self.subject.inks.palette.body)

    def _gap_wishes(self) -> Iterator[Wish]:
        for a, b, text in self.gap_ends:
            alarm = self.subject.inks.alarm
            yield Wish(text, halfway(a, b), 0.5, height=self.letters.plain, colour=alarm, is_optional=True)

    def _name_wishes(self) -> Iterator[Wish]:
        for group in self.nodes:
            if group.layer in {Layer.OBSTACLES, Layer.MOVING, Layer.DEPTH}:
                fill = fill_of(group.layer, self.subject.inks.palette)
                yield name_in(group.title, extent(group.nodes), self.letters.plain, self.subject.inks.note, fill)


def _room_in(group: Group) -> Bounds:
    """The box of an item's bodies, or the square within its circle where they are round."""
    box = extent(group.nodes)
    outlines = [outline for node in walk(group.nodes) if isinstance(node, Path) for outline in node.outlines]
    is_round = all(isinstance(outline, Rounded) and outline.is_circle for outline in outlines)
    return grown(box, -_CORNER * size(box)[0]) if is_round else box


_MIRRORED: Final = "As the mechanic sees it: mirrored, X grows to the left. Numbers as on the front."
_MEANING: Final = (
    "Filled: cases, trays, connectors, hoses. Chain lines with two dots: depth limits and moving parts. "
    "Red: the tightest clearances, listed below; a value stands at its line where there is room."
)
