"""The panel's front on a sheet: metal and cuts, centre lines, numbers, and ordinates from the datum."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import shapely

from panelcad.drawing.box import grown, joined, share, size
from panelcad.drawing.datum_words import datum_on_part
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.display import Along, Bounds, Face, Node, Path, Text, walk
from panelcad.drawing.gaps import broken
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import PLAIN, SMALL, Letters, letters
from panelcad.drawing.labels import Ground, Label, crowding, drawn_edges, edges_of, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import fitted, text_bounds, text_width
from panelcad.drawing.ordinates import Mark, Ordinates, Surround, ordinates, reach
from panelcad.drawing.outline_edges import Edge, arcs, edges
from panelcad.drawing.page import Page, above_title_block, beside_title_block, heading
from panelcad.drawing.paper import Paper, Scale
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheets.choice import Trouble, clearest_page
from panelcad.drawing.sheets.datum import Datum, datum_clear_of
from panelcad.drawing.sheets.notes import caution_box
from panelcad.drawing.sheets.view import Seat, seated
from panelcad.drawing.style import Line, paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.views.front import front_view
from panelcad.drawing.views.markup import drawn_bounds, markup_view
from panelcad.drawing.wishes import LONGEST, Stand, Wish
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point, middle
from panelcad.geometry.track import Track, line
from panelcad.model.found import old_contours
from panelcad.model.layout import FeatureKind, PlateLayout
from panelcad.model.plate import PlateState

_SMALL: Final = 9.0
"""Cuts smaller than this on paper, in mm, are never covered by a number."""
_CORNER: Final = 0.147
"""From a circle's box to the square within it, in diameters: (1 - sqrt(1/2)) / 2."""
_ORIGIN: Final = Point(0.0, 0.0)
_STRAIGHT: Final = 6.0
_MOST: Final = 60
"""A plate with at most so many ordinates, moved by no more than that, has one for every hole."""
_CRANKED: Final = 14.0
"""Ordinates of openings, screws and vertices may be moved by so much."""
_LINE: Final = 1.6
_COVERED: Final = 0.4
_AROUND: Final = 9.0
"""How far outside the outline's box numbers may stand."""
_BESIDE: Final = 6.0
"""Room for the words and strokes of a dimension line outside the view."""
_OVER: Final = 2.0
"""How far centre lines reach beyond what they mark."""


def front_page(subject: Subject, plate: PlateLayout) -> Page:
    """The front at a standard scale on the smallest sheet on which every ordinate and every number has its place.

    Where no sheet is large enough for that, the one with the fewest missing numbers; it says how many are missing.
    """
    return clearest_page(plate.plate.name, fronts(subject, plate))


def fronts(subject: Subject, plate: PlateLayout) -> Iterator["_Front"]:
    for paper in subject.papers:
        drawn = drawn_bounds(subject.laid, plate.plate.id)
        taken = reach(letters(paper).plain) + (_BESIDE if drawn != plate.outline.bounds else 0.0)
        seat = seated(drawn, grown(above_title_block(paper), -taken))
        if seat is not None:
            yield _Front(subject, plate, paper, seat)


_LINES: Final = "Wide lines are to be made, narrow ones are there already; values in brackets are for reference."
_NOT_PATTERNS: Final = (
    "Ordinates are of openings and screws; X and Y of the holes 1.1, 1.2, … are in the hole schedule."
)
_NOT_VERTICES: Final = " X and Y of the vertices are there too."
_ONLY_MADE: Final = (
    "Ordinates are of openings and screws that are to be made; all other positions are in the hole schedule."
)
_NOTHING_HERE: Final = "All positions are in the hole schedule, by the numbers on the view."


@dataclass(frozen=True)
class _Level:
    """What bears ordinates, what is said of the rest, and how far they may be moved and how many they may be for it."""

    marks: tuple[Mark, ...]
    words: str
    most_shift: float = math.inf
    most_texts: float = math.inf


@dataclass(frozen=True)
class _Shown:
    """The ordinates of a level, counted from 0, the fullest."""

    ordinates: Ordinates
    words: str
    level: int


_ALL_MAIN: Final = 2
"""The last level that has every opening and every screw."""


@dataclass(frozen=True)
class _Front:
    """One plate's front on one paper."""

    subject: Subject
    plate: PlateLayout
    paper: Paper
    seat: Seat

    @property
    def letters(self) -> Letters:
        return letters(self.paper)

    @cached_property
    def area(self) -> Bounds:
        return above_title_block(self.paper)

    @cached_property
    def view(self) -> Bounds:
        return self.seat.box(self.plate.outline.bounds)

    @cached_property
    def drawn(self) -> Bounds:
        """The view with the dimensions that people put around it: ordinates stand outside them."""
        box = self.seat.box(drawn_bounds(self.subject.laid, self.plate.plate.id))
        return joined([self.view, grown(box, _BESIDE)]) if box != self.view else self.view

    @cached_property
    def holes(self) -> list[Hole]:
        return holes(self.subject, self.plate)

    @property
    def scale(self) -> Scale:
        return self.seat.scale

    @property
    def trouble(self) -> Trouble:
        if self._is_hopeless:
            return Trouble(len(self.holes), 1.0)
        return Trouble(self.missing + (self.shown.level > _ALL_MAIN), crowding(self.labels))

    @property
    def fill(self) -> float:
        return share(self.view, self.area)

    @property
    def _is_hopeless(self) -> bool:
        """Whether the numbers alone would cover so much of the view that trying to place them is a waste of time."""
        wishes = [self._wish(hole) for hole in self.holes]
        covered = sum(2 * wish.half_width * _LINE * wish.height for wish in wishes)
        width, height = size(self.view)
        return covered > _COVERED * width * height

    @property
    def missing(self) -> int:
        """How many numbers and words found no place."""
        counted = (*self._marked_wishes(), *map(self._wish, self.holes))
        return len(counted) - sum(not label.wish.is_optional for label in self.labels)

    @cached_property
    def page(self) -> Page:
        inks = self.subject.inks
        nodes = (
            Path(broken(self.centre_lines, self._written), pen=inks.centre),
            Path(broken(self.shown.ordinates.lines, self._written), pen=inks.measure),
            *self._old,
            *self.metal,
            *(node for node in walk(self.marked) if isinstance(node, Path)),
            *self.shown.ordinates.texts,
            *(self.datum.nodes(inks) if self.datum else ()),
            *(node for label in self.labels for node in label.nodes(inks)),
            *heading(self.paper, inks, f"{self.plate.plate.name.upper()}, FRONT", self._subtitle, self._meaning),
            *caution_box(beside_title_block(self.paper), inks),
        )
        material = sheet_text(self.plate.plate, self.subject.unit)
        return Page(self.paper, nodes, self.plate.plate.name, "Panel front", str(self.seat.scale), material)

    @cached_property
    def _written(self) -> list[Bounds]:
        """The boxes of all that is written on the view."""
        return [*self._fixed_texts, *(self.datum.boxes if self.datum else ()), *(each.box for each in self.labels)]

    @property
    def _subtitle(self) -> str:
        role = f"{self.plate.plate.role.value.capitalize()}, {self.plate.plate.state.value}."
        datum, on_part = self.subject.datum_of(self.plate.plate), datum_on_part(self.plate, self.subject.unit)
        return f"As the pilot sees it. {role} Ordinates from the datum: {datum}. {on_part} {_LINES}"

    @property
    def _meaning(self) -> str:
        """What of the positions is not on the view, and where it is."""
        said = [self.shown.words] if self.shown.words else []
        if self.missing:
            here = {label.wish.text for label in self.labels}
            names = ", ".join(hole.number for hole in self.holes if hole.number not in here)
            said.append(f"{self.missing} texts had no room: {names}; the hole schedule gives their places.")
        if self._old_contours:
            said.append("Thin dashes: what is there of a cut that is enlarged.")
        if self._edges:
            said.append("V1, V2, …: vertices of the outline, listed after the holes in the hole schedule.")
        return " ".join(said)

    @property
    def _old(self) -> tuple[Path, ...]:
        return (Path(self._old_contours, pen=self.subject.inks.pen(line=Line.DASHED)),) if self._old_contours else ()

    @cached_property
    def _old_contours(self) -> tuple[Contour, ...]:
        """What the cuts that are enlarged were before."""
        found = old_contours(self.subject.project, self.plate)
        return tuple(self.seat.contour(old.contour) for old in found)

    @cached_property
    def metal(self) -> tuple[Node, ...]:
        style = paper_style(self.seat.scale.factor, self.subject.inks.palette)
        groups = front_view(self.subject.laid, self.plate.plate.id, style)
        return self.seat.nodes(tuple(group for group in groups if group.layer != Layer.BEZELS))

    @cached_property
    def centre_lines(self) -> tuple[Track, ...]:
        return tuple(track for hole in self.holes for track in self._cross(hole))

    def _cross(self, hole: Hole) -> tuple[Track, Track]:
        x, y = self.seat.point(hole.centre)
        is_large = hole.feature.kind in {FeatureKind.OPENING, FeatureKind.INNER}
        x1, y1, x2, y2 = grown(self.seat.contour(hole.feature.contour).bounds, _OVER if is_large else _OVER / 2)
        return line(Point(x1, y), Point(x2, y)), line(Point(x, y1), Point(x, y2))

    @property
    def _surround(self) -> Surround:
        return Surround(self.drawn, self.area, self.subject.inks, self.letters.plain)

    @cached_property
    def shown(self) -> _Shown:
        """Ordinates of as much as has room: of everything only where they stand nearly straight."""
        for number, level in enumerate(self._levels):
            found = ordinates([*self._outline_marks(), *level.marks], self._surround)
            if found is not None and found.shift <= level.most_shift and len(found.texts) <= level.most_texts:
                return _Shown(found, level.words, number)
        return _Shown(Ordinates((), (), ()), _NOTHING_HERE, len(self._levels))

    @cached_property
    def _levels(self) -> tuple[_Level, ...]:
        """What bears ordinates, from everything to the box of the outline alone, and what is said of the rest."""
        vertices = [self._edge_mark(edge.start) for edge in self._edges]
        main = [hole for hole in self.holes if hole.is_main]
        made = [self._mark(hole) for hole in main if not hole.is_there]
        mains, rest = [self._mark(hole) for hole in main], len(self.holes) - len(main)
        patterns = _NOT_PATTERNS if rest else ""
        corners = _NOT_VERTICES if vertices else ""
        return (
            _Level((*vertices, *(self._mark(hole) for hole in self.holes)), "", _STRAIGHT, _MOST),
            _Level((*vertices, *mains), patterns, _CRANKED),
            _Level(tuple(mains), f"{patterns}{corners}".lstrip()),
            _Level(tuple(made), _ONLY_MADE),
            _Level((), _NOTHING_HERE),
        )

    @cached_property
    def _edges(self) -> tuple[Edge, ...]:
        return edges(self.plate.outline)

    def _edge_mark(self, at: Point) -> Mark:
        return Mark(self.seat.point(at), self._value(at.x), self._value(at.y), self._is_there)

    def _mark(self, hole: Hole) -> Mark:
        x, y = hole.centre
        return Mark(self.seat.point(hole.centre), self._value(x), self._value(y), is_reference=hole.is_there)

    def _outline_marks(self) -> Iterator[Mark]:
        x1, y1, x2, y2 = self.plate.outline.bounds
        if self.shows_datum:
            yield Mark(self.seat.point(_ORIGIN), "0", "0")
        for corner in (Point(x1, y1), Point(x2, y2)):
            yield Mark(self.seat.point(corner), self._value(corner.x), self._value(corner.y), self._is_there)

    @property
    def _is_there(self) -> bool:
        """Whether the sheet was cut to its outline before this work."""
        return self.plate.plate.state is not PlateState.NEW

    def _value(self, mm: float) -> str:
        return self.subject.number(mm) if round(mm, 6) else "0"

    @property
    def shows_datum(self) -> bool:
        x1, y1, x2, y2 = self.plate.outline.bounds
        return x1 <= 0.0 <= x2 and y1 <= 0.0 <= y2

    @cached_property
    def marked(self) -> tuple[Node, ...]:
        """Dimensions and notes that people put on the option; their words are placed as labels."""
        style = paper_style(self.seat.scale.factor, self.subject.inks.palette)
        return self.seat.nodes(markup_view(self.subject.laid, self.plate.plate.id, style))

    def _marked_wishes(self) -> Iterator[Wish]:
        """The words of dimensions and notes, and the numbers of bends."""
        for number, bend in enumerate(self.plate.plate.bends, 1):
            spot = self.seat.point(middle(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)))
            yield Wish(f"B{number}", spot, 0.5, height=self.letters.plain, face=Face.BOLD)
        for node in walk(self.marked):
            if isinstance(node, Text):
                height = self.letters.plain
                words = fitted(node.text, LONGEST, height)
                at = node.at if node.along is Along.CENTRE else node.at.moved(text_width(words, height) / 2, 0.0)
                yield Wish(words, at, 0.0, height=height)

    @cached_property
    def labels(self) -> list[Label]:
        numbers = sorted((self._wish(hole) for hole in self.holes), key=lambda wish: wish.stand is Stand.BESIDE)
        return self._ground().placed((*self._marked_wishes(), *numbers, *self._edge_wishes()))

    def _edge_wishes(self) -> Iterator[Wish]:
        """Radii of the outline's arcs, and the numbers of its vertices; the schedule has them all."""
        note = self.subject.inks.note
        for _, arc in arcs(self._edges):
            spot, centre = self.seat.point(arc.at(0.5)), self.seat.point(arc.centre)
            out = centre.towards(spot, 1.0)
            way = Point(out.x - centre.x, out.y - centre.y)
            radius = f"R{self.subject.number(arc.radius)}"
            words = f"({radius})" if self._is_there else radius
            yield Wish(
                words, spot, 0.5, Stand.RADIAL, height=self.letters.plain, colour=note, way=way, is_optional=True
            )
        for edge in self._edges:
            spot = self.seat.point(edge.start)
            yield Wish(f"V{edge.number}", spot, 0.3, height=PLAIN, colour=note, is_optional=True)

    @cached_property
    def _fixed_texts(self) -> list[Bounds]:
        """What stands where it stands: ordinates and the part's own lettering."""
        engraved = (node for node in walk(self.metal) if isinstance(node, Text))
        return [text_bounds(text) for text in (*self.shown.ordinates.texts, *engraved)]

    @cached_property
    def datum(self) -> Datum | None:
        there = Boxes((*self._fixed_texts, *self._small_holes()))
        return datum_clear_of(self.seat.origin, there, self._cut_edges) if self.shows_datum else None

    @cached_property
    def _cut_edges(self) -> list[shapely.LineString]:
        """Of sheet and cuts, of countersinks and nutplates about them, and of what enlarged cuts were before."""
        return [*drawn_edges(self.metal), *edges_of(self._old_contours)]

    def _ground(self) -> Ground:
        texts = [*self._fixed_texts, *(self.datum.boxes if self.datum else ()), *self._small_holes()]
        lines = lines_of((*self.centre_lines, *self.shown.ordinates.lines))
        openings = [each for each in self.holes if each.feature.kind is FeatureKind.OPENING]
        rings = edges_of(self.seat.contour(each.feature.contour) for each in openings)
        numbered = dict(zip((each.number for each in openings), rings, strict=True))
        edges_there = [*self._cut_edges, *edges_of(self.datum.strokes if self.datum else ())]
        return Ground(texts, edges_there, grown(self.drawn, _AROUND), lines, numbered)

    def _small_holes(self) -> Iterator[Bounds]:
        """What no number may cover: the squares within small round holes, and the boxes of other small cuts."""
        for hole in self.holes:
            box = self.seat.contour(hole.feature.contour).bounds
            width, height = size(box)
            if max(width, height) < _SMALL:
                yield grown(box, -_CORNER * width) if hole.is_circle else box

    def _wish(self, hole: Hole) -> Wish:
        box = self.seat.contour(hole.feature.contour).bounds
        width, height = size(box)
        spot = self.seat.point(hole.centre)
        large = self.letters.large
        if min(width, height) >= 2 * large and width / 2 >= text_width(hole.number, large, Face.BOLD) + 3.0:
            return Wish(hole.number, spot, max(width, height) / 2, Stand.QUARTER, box, large, Face.BOLD)
        face = Face.BOLD if hole.is_main else Face.REGULAR
        tall, least = (self.letters.plain, PLAIN) if hole.is_main else (PLAIN, SMALL)
        return Wish(hole.number, spot, min(width, height) / 2, height=tall, face=face, least=least)
