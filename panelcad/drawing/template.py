"""The full-size template of a plate: its metal 1:1 over as many pages as it takes, to be glued together."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from panelcad.drawing.box import box_outline, grown, is_within, middle, overlap
from panelcad.drawing.cautions import BEFORE_CUTTING
from panelcad.drawing.display import Across, Along, Bounds, Face, Group, Node, Path, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import LARGE, PLAIN, SMALL, TITLE, Inks
from panelcad.drawing.labels import Ground, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import fitted, text_bounds, wrapped
from panelcad.drawing.qr import qr_code
from panelcad.drawing.scale_bar import scale_bars
from panelcad.drawing.scaling import scaled
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.datum import Datum, datum_clear_of
from panelcad.drawing.style import Line, paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import PITCH
from panelcad.drawing.tiles import FOOT, Printer, Tile, Tiling, tiling
from panelcad.drawing.title_block import qr_text
from panelcad.drawing.views.front import front_view
from panelcad.drawing.wishes import Wish
from panelcad.geometry.contour import circle
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line
from panelcad.model.layout import PlateLayout

OVERLAP: Final = 12.0
_CROSS: Final = 4.0


def template_sheets(subject: Subject, plate: PlateLayout, printer: Printer, shared: float = OVERLAP) -> list[Sheet]:
    """How the pages go together, then the pages row by row; those that show nothing of the plate are left out."""
    return _Template(subject, plate, tiling(plate.outline.bounds, printer, shared)).sheets


@dataclass(frozen=True)
class _Template:
    subject: Subject
    plate: PlateLayout
    tiling: Tiling

    @property
    def inks(self) -> Inks:
        return self.subject.inks

    @cached_property
    def metal(self) -> tuple[Group, ...]:
        """The front's metal without bezels; lettering is drawn where a page holds it whole."""
        groups = front_view(self.subject.laid, self.plate.plate.id, paper_style(1.0, self.inks.palette))
        return tuple(group for group in groups if group.layer not in {Layer.BEZELS, Layer.ENGRAVING} and group.nodes)

    @cached_property
    def engraved(self) -> tuple[Text, ...]:
        groups = front_view(self.subject.laid, self.plate.plate.id, paper_style(1.0, self.inks.palette))
        return tuple(node for node in walk(groups) if isinstance(node, Text))

    @cached_property
    def datum(self) -> Datum:
        return datum_clear_of(Point(0.0, 0.0), Boxes(text_bounds(text) for text in self.engraved))

    @cached_property
    def holes(self) -> list[Hole]:
        return holes(self.subject, self.plate)

    @cached_property
    def tiles(self) -> list[Tile]:
        return [tile for tile in self.tiling.tiles() if overlap(tile.window, self.plate.outline.bounds)]

    @property
    def sheets(self) -> list[Sheet]:
        return [self._overview(), *(self._page(tile) for tile in self.tiles)]

    def _page(self, tile: Tile) -> Sheet:
        printer = self.tiling.printer
        at = Point(printer.margin, printer.margin + FOOT)
        origin = at.moved(-tile.window[0], -tile.window[1])
        shown = scaled(tuple(self._window_nodes(tile)), 1.0, origin)
        clip = box_outline((at.x, at.y, at.x + printer.window[0], at.y + printer.window[1]))
        nodes = (Group(shown, clip=clip), Path((clip,), pen=self.inks.pen(0.18)), *self._foot(f"Page {tile.name}"))
        return Sheet(printer.width, printer.height, nodes, f"{self.plate.plate.name}, page {tile.name}", 1)

    def _window_nodes(self, tile: Tile) -> Iterator[Node]:
        window = tile.window
        yield from (group for group in self.metal if overlap(extent((group,)), window))
        yield from self._seams(tile)
        yield Path(tuple(track for hole in self.holes for track in _cross(hole)), pen=self.inks.measure)
        yield from (text for text in self.engraved if is_within(text_bounds(text), window))
        if all(is_within(box, window) for box in self.datum.boxes) and _holds(window, Point(0.0, 0.0)):
            yield from self.datum.nodes(self.inks)
        yield from self._numbers(window)

    def _numbers(self, window: Bounds) -> Iterator[Node]:
        texts = [text_bounds(text) for text in self.engraved]
        texts.extend(self.datum.boxes)
        texts.extend(grown((m.x, m.y, m.x, m.y), _CROSS) for m in self.tiling.marks())
        near = [hole for hole in self.holes if overlap(grown(hole.feature.contour.bounds, 5.0), window)]
        tracks = [track for hole in near for track in _cross(hole)]
        edges = lines_of([self.plate.outline, *(hole.feature.contour for hole in near)], tracks)
        ground = Ground(texts, edges, grown(window, -1.0))
        for hole in near:
            if _holds(window, hole.centre):
                label = ground.place(_wish(hole))
                yield from label.nodes(self.inks) if label else ()

    def _seams(self, tile: Tile) -> Iterator[Node]:
        """Where the next page begins, and the registration marks."""
        x1, y1, x2, y2 = tile.window
        inner = self.tiling.overlap
        seams = (
            line(Point(x1 + inner, y1), Point(x1 + inner, y2)),
            line(Point(x2 - inner, y1), Point(x2 - inner, y2)),
            line(Point(x1, y1 + inner), Point(x2, y1 + inner)),
            line(Point(x1, y2 - inner), Point(x2, y2 - inner)),
        )
        yield Path(seams, pen=self.inks.pen(0.18, Line.DASHED, self.inks.faint))
        for mark in self.tiling.marks():
            if _holds(tile.window, mark):
                yield from _registration(mark, self.inks)

    def _foot(self, name: str) -> Iterator[Node]:
        """Bars, what the page is, and how to print it, below the window."""
        printer, subject = self.tiling.printer, self.subject
        left, bottom = printer.margin, printer.margin
        yield from scale_bars(Point(left, bottom + 3.0), self.inks)
        right = printer.width - printer.margin
        size = FOOT - 5.0
        yield qr_code(qr_text(subject), Point(right - size, bottom), size, self.inks.ink)
        x = left + 121.0
        room = right - size - 1.0 - x
        for i, (words, height, face) in enumerate(self._words(name)):
            yield self.inks.text(fitted(words, room, height, face), (x, bottom + 19.0 - 4.2 * i), height, face=face)

    def _words(self, name: str) -> tuple[tuple[str, float, Face], ...]:
        mark = self.subject.stamp
        draft = "" if mark.is_released else "DRAFT – NOT FOR CUTTING"
        return (
            (name, LARGE, Face.BOLD),
            (f"{self.plate.plate.name}, {self.subject.drawing_number}", SMALL, Face.REGULAR),
            (f"{mark.fingerprint}, revision {mark.revision or 'none'}", SMALL, Face.REGULAR),
            (draft or f"Issued {mark.on}", SMALL, Face.BOLD),
            ("Print at 100 %, measure both bars.", SMALL, Face.REGULAR),
        )

    def _overview(self) -> Sheet:
        printer = self.tiling.printer
        nodes = (*self._instructions(), *self._map(), *self._foot("Overview"))
        return Sheet(printer.width, printer.height, nodes, f"{self.plate.plate.name}, how the pages go together")

    def _instructions(self) -> Iterator[Node]:
        printer = self.tiling.printer
        left, top = printer.margin, printer.height - printer.margin
        title = fitted(f"Full-size template: {self.plate.plate.name}", printer.width - 2 * left, TITLE, Face.BOLD)
        yield self.inks.text(title, (left, top), TITLE, across=Across.TOP, face=Face.BOLD)
        y = top - 10.0
        for words in (*_HOW, *BEFORE_CUTTING[:4]):
            for piece in wrapped(f"– {words}", printer.width - 2 * left, PLAIN):
                yield self.inks.text(piece, (left, y), across=Across.TOP)
                y -= PITCH

    def _map(self) -> Iterator[Node]:
        """The plate and its pages, as large as the page allows."""
        printer = self.tiling.printer
        low, high = printer.margin + FOOT + 4.0, printer.height - printer.margin - 72.0
        room = (printer.margin, low, printer.width - printer.margin, max(high, low + 20.0))
        boxes = [tile.window for tile in self.tiles]
        whole = (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))
        factor = min((room[2] - room[0]) / (whole[2] - whole[0]), (room[3] - room[1]) / (whole[3] - whole[1]))
        here, there = middle(whole), middle(room)
        origin = Point(there.x - here.x * factor, there.y - here.y * factor)
        contours = (self.plate.outline, *(hole.feature.contour for hole in self.holes))
        frames = tuple(box_outline(box) for box in boxes)
        paths = (Path(contours, pen=self.inks.pen(0.25 / factor)), Path(frames, pen=self.inks.pen(0.18 / factor)))
        yield from scaled(paths, factor, origin)
        for tile in self.tiles:
            x, y = middle(tile.window)
            at = (origin.x + x * factor, origin.y + y * factor)
            yield self.inks.text(
                tile.name, at, TITLE, Along.CENTRE, Across.MIDDLE, face=Face.BOLD, colour=self.inks.note
            )


_HOW: Final = (
    "Print every page at 100 % (actual size, no fitting to the page) and measure both bars on each before use.",
    "Trim one of two neighbouring pages along its dashed line and glue them with the registration marks in line.",
    "Check the length of the whole template with a rule: paper stretches with moisture.",
)


def _cross(hole: Hole) -> tuple[Track, Track]:
    """A cross at the centre of a hole, a little larger than a small hole."""
    x, y = hole.centre
    x1, y1, x2, y2 = hole.feature.contour.bounds
    half = max(3.0, min(5.0, (x2 - x1) / 2 + 1.5, (y2 - y1) / 2 + 1.5))
    return line(Point(x - half, y), Point(x + half, y)), line(Point(x, y - half), Point(x, y + half))


def _wish(hole: Hole) -> Wish:
    x1, y1, x2, y2 = hole.feature.contour.bounds
    radius = min(x2 - x1, y2 - y1) / 2
    return Wish(hole.number, hole.centre, min(radius, 6.0), height=LARGE if hole.is_main else PLAIN, face=Face.BOLD)


def _registration(at: Point, inks: Inks) -> tuple[Node, ...]:
    arms = (line(at.moved(-_CROSS, 0.0), at.moved(_CROSS, 0.0)), line(at.moved(0.0, -_CROSS), at.moved(0.0, _CROSS)))
    return Path(arms, pen=inks.pen(0.18)), Path((circle(at, _CROSS),), pen=inks.pen(0.18))


def _holds(box: Bounds, point: Point) -> bool:
    return box[0] < point.x < box[2] and box[1] < point.y < box[3]
