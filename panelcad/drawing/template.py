"""The full-size template of a plate: its metal 1:1 over as many pages as it takes, to be glued together."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from panelcad.drawing.border import draft_mark
from panelcad.drawing.box import box_outline, grown, is_within, overlap
from panelcad.drawing.display import Bounds, Face, Group, Node, Path, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import LARGE, PLAIN, Inks
from panelcad.drawing.labels import Ground, edges_of, lines_of
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.scaling import scaled
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.datum import Datum, datum_clear_of
from panelcad.drawing.style import Line, paper_style
from panelcad.drawing.subject import Subject
from panelcad.drawing.template_foot import template_foot
from panelcad.drawing.template_overview import overview
from panelcad.drawing.tiles import FOOT, Printer, Tile, Tiling, tiling
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
        start = overview(self.subject, self.plate, self.tiling.printer, self.tiles)
        return [start, *(self._page(tile) for tile in self.tiles)]

    def _page(self, tile: Tile) -> Sheet:
        printer = self.tiling.printer
        at = Point(printer.margin, printer.margin + FOOT)
        origin = at.moved(-tile.window[0], -tile.window[1])
        shown = scaled(tuple(self._window_nodes(tile)), 1.0, origin)
        window = (at.x, at.y, at.x + printer.window[0], at.y + printer.window[1])
        clip = box_outline(window)
        mark = () if self.subject.stamp.is_released else (draft_mark(window, self.inks),)
        foot = template_foot(self.subject, self.plate, printer, f"Page {tile.name}, front")
        nodes = (*mark, Group(shown, clip=clip), Path((clip,), pen=self.inks.pen(0.18)), *foot)
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
        edges = edges_of([self.plate.outline, *(hole.feature.contour for hole in near)])
        ground = Ground(texts, edges, grown(window, -1.0), lines_of(tracks))
        for label in ground.placed(_wish(hole) for hole in near if _holds(window, hole.centre)):
            yield from label.nodes(self.inks)

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
