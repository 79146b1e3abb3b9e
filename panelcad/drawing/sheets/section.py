"""The sections of a plate, two on a sheet: the sheet metal, bodies by number, what stands around, and depths."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from panelcad.drawing.box import middle, share, size
from panelcad.drawing.describe import sheet_text
from panelcad.drawing.display import Across, Along, Bounds, Face, Group, Node, Path
from panelcad.drawing.extent import extent
from panelcad.drawing.gaps import broken
from panelcad.drawing.inks import Letters, letters
from panelcad.drawing.labels import Ground, Label, crowding, drawn_edges, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.ordinates import Mark, Ordinates, Shared, Surround, ordinates, reach
from panelcad.drawing.page import Page, above_title_block, heading
from panelcad.drawing.paper import Paper, Scale, fitting_scale
from panelcad.drawing.sheets.choice import Trouble, clearest_page
from panelcad.drawing.sheets.section_lines import chosen_lines, lettered
from panelcad.drawing.sheets.view import Seat, fill_of, seated
from panelcad.drawing.style import paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.views.section import SectionLine, section_view
from panelcad.drawing.wishes import Wish, name_in, number_in
from panelcad.geometry.across import Across as Direction
from panelcad.geometry.point import Point
from panelcad.model.layout import PlacedItem, PlateLayout

_TITLE: Final = 10.0
_NAMES: Final = 12.0
"""Room for names beside a section."""
_SIDE: Final = {Direction.VERTICAL: Shared.LOW, Direction.HORIZONTAL: Shared.HIGH}
_WORDS: Final = (
    "Upright sections (at X) are seen from the right, the pilot at the left; level ones (at Y) from above, the pilot "
    "below. Their lines are on the view from behind. Depths are from the sheet's front face."
)
_ABREAST: Final = 2
Lettered = tuple[str, SectionLine]
_NAMED: Final = frozenset({Layer.OBSTACLES, Layer.MOVING, Layer.DEPTH, Layer.KEEP_OUTS})


def section_pages(subject: Subject, plate: PlateLayout) -> list[Page]:
    """The sections, two side by side at one scale, on the smallest sheet on which each number has its place."""
    lines = lettered(chosen_lines(subject, plate))
    pairs = [lines[i : i + _ABREAST] for i in range(0, len(lines), _ABREAST)]
    return [clearest_page(plate.plate.name, _sheets(subject, plate, pair)) for pair in pairs]


def _sheets(subject: Subject, plate: PlateLayout, lines: Sequence[Lettered]) -> Iterator["_Abreast"]:
    for paper in subject.papers:
        sections = _sections(subject, plate, paper, lines)
        if sections:
            yield _Abreast(subject, plate, paper, tuple(sections))


def _sections(subject: Subject, plate: PlateLayout, paper: Paper, lines: Sequence[Lettered]) -> list["_Section"]:
    """Side by side; none where they do not fit at any scale."""
    x1, y1, x2, y2 = above_title_block(paper)
    real = [_extent(subject, plate, each) for _, each in lines]
    margins = [_margins(each, reach(letters(paper).plain)) for _, each in lines]
    widths, heights = zip(*(size(box) for box in real), strict=True)
    room = (x2 - x1 - sum(wide for wide, _ in margins), y2 - y1 - _TITLE - max(high for _, high in margins))
    scale = fitting_scale((sum(widths), max(heights)), room)
    if scale is None:
        return []
    spare = (room[0] - sum(widths) * scale.factor) / len(lines)
    found, left = [], x1
    for (letter, each), box, width, (wide, _) in zip(lines, real, widths, margins, strict=True):
        area = (left, y1, left + width * scale.factor + wide + spare, y2)
        found.append(_Section(subject, plate, letters(paper), letter, each, area, _seat(box, area, scale, each, paper)))
        left = area[2]
    return found


def _margins(of: SectionLine, out: float) -> tuple[float, float]:
    """Room in mm beside and above and below a section: for names, and for depths where they are."""
    is_upright = of.across is Direction.VERTICAL
    return 2 * _NAMES + (0.0 if is_upright else out), _NAMES + (out if is_upright else 0.0)


def _seat(real: Bounds, area: Bounds, scale: Scale, of: SectionLine, paper: Paper) -> Seat:
    """In the middle of what its depths leave of the area."""
    out = reach(letters(paper).plain)
    low, right = (out, 0.0) if of.across is Direction.VERTICAL else (0.0, out)
    seat = seated(real, (area[0], area[1] + low, area[2] - right, area[3] - _TITLE), scale)
    if seat is None:
        raise ValueError("a scale is given, so the view has a seat")
    return seat


def _extent(subject: Subject, plate: PlateLayout, each: SectionLine) -> Bounds:
    """The section's box; the sheet itself where the line misses all else."""
    groups = section_view(subject.laid, plate.plate.id, each, paper_style(1.0))
    return extent(groups) if groups else (0.0, 0.0, 1.0, 1.0)


@dataclass(frozen=True)
class _Abreast:
    """Sections side by side on one paper."""

    subject: Subject
    plate: PlateLayout
    paper: Paper
    sections: tuple["_Section", ...]

    @property
    def scale(self) -> Scale:
        return self.sections[0].seat.scale

    @property
    def trouble(self) -> Trouble:
        labels = [label for section in self.sections for label in section.labels]
        return Trouble(sum(section.missing for section in self.sections), crowding(labels))

    @property
    def fill(self) -> float:
        room = above_title_block(self.paper)
        return sum(share(section.view, room) for section in self.sections)

    @property
    def page(self) -> Page:
        name = self.plate.plate.name
        head = heading(self.paper, self.subject.inks, f"{name.upper()}, SECTIONS", _WORDS)
        nodes = (*(node for section in self.sections for node in section.nodes), *head)
        material = sheet_text(self.plate.plate, self.subject.unit)
        return Page(self.paper, nodes, name, "Sections", str(self.scale), material)


@dataclass(frozen=True)
class _Section:
    subject: Subject
    plate: PlateLayout
    letters: Letters
    letter: str
    line: SectionLine
    area: Bounds
    seat: Seat

    @cached_property
    def groups(self) -> tuple[Group, ...]:
        style = paper_style(self.seat.scale.factor, self.subject.inks.palette)
        nodes = self.seat.nodes(section_view(self.subject.laid, self.plate.plate.id, self.line, style))
        return tuple(node for node in nodes if isinstance(node, Group))

    @property
    def nodes(self) -> Iterator[Node]:
        inks = self.subject.inks
        yield from self.groups
        yield Path(broken(self.depths.lines, [label.box for label in self.labels]), pen=inks.measure)
        yield from self.depths.texts
        yield from (node for label in self.labels for node in label.nodes(inks, inks.palette.background))
        name = f"{self.letter}–{self.letter}   {self._where}"
        at = ((self.area[0] + self.area[2]) / 2, self.area[3] - 4.0)
        yield inks.text(name, at, self.letters.large, Along.CENTRE, Across.MIDDLE, face=Face.BOLD)

    @property
    def _where(self) -> str:
        axis = "X" if self.line.across is Direction.VERTICAL else "Y"
        return f"{axis} = {self.subject.length(self.line.at)}"

    @cached_property
    def view(self) -> Bounds:
        return extent(self.groups) if self.groups else self.area

    @cached_property
    def depths(self) -> Ordinates:
        """How deep what the section shows of each item reaches."""
        marks = [self._depth_mark(owner, box) for owner, box in self.bodies]
        face = self.seat.point(Point(0.0, 0.0))
        is_upright = self.line.across is Direction.VERTICAL
        marks.append(Mark(face, "0" if is_upright else "", "" if is_upright else "0"))
        around = Surround(self.view, self.area, self.subject.inks, self.letters.plain, _SIDE[self.line.across])
        return ordinates(marks, around) or Ordinates((), (), ())

    def _depth_mark(self, owner: str, box: Bounds) -> Mark:
        placed = next(each for each in self.plate.items if each.item.id == owner)
        depth = max(body.far for body in placed.behind if self.line.chords(body.footprint))
        words = self.subject.number(depth)
        at = self.seat.point(self.line.place(0.0, depth))
        if self.line.across is Direction.VERTICAL:
            return Mark(Point(at.x, middle(box).y), words, "")
        return Mark(Point(middle(box).x, at.y), "", words)

    @cached_property
    def bodies(self) -> list[tuple[str, Bounds]]:
        """Items behind the sheet that the line runs through, and the boxes of what is seen of them on paper."""
        behind = {each.item.id for each in self.plate.items if self._is_cut(each)}
        groups = [group for group in self.groups if group.layer == Layer.BODIES and group.owner in behind]
        return [(group.owner, extent(group.nodes)) for group in groups]

    def _is_cut(self, placed: PlacedItem) -> bool:
        return any(self.line.chords(body.footprint) for body in placed.behind)

    @property
    def missing(self) -> int:
        return len(self._wishes) - len(self.labels)

    @cached_property
    def labels(self) -> list[Label]:
        texts = [text_bounds(text) for text in self.depths.texts]
        area = (self.area[0], self.area[1], self.area[2], self.area[3] - _TITLE)
        return Ground(texts, drawn_edges(self.groups), area, lines_of(self.depths.lines)).placed(self._wishes)

    @cached_property
    def _wishes(self) -> list[Wish]:
        numbers = self.subject.numbers.items
        palette = self.subject.inks.palette
        items = [number_in(numbers[owner], box, self.letters, palette.body) for owner, box in self.bodies]
        named = [group for group in self.groups if group.layer in _NAMED]
        note = self.subject.inks.note
        plain = self.letters.plain
        names = [name_in(g.title, extent(g.nodes), plain, note, fill_of(g.layer, palette)) for g in named]
        return [*items, *names]
