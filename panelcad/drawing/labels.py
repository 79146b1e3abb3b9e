"""Short texts beside what they name, moved about until none covers another or, if it can be helped, a line."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import shapely

from panelcad.drawing.box import grown, is_within, overlap
from panelcad.drawing.display import Across, Along, Bounds, Node, Path
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import Inks
from panelcad.drawing.label_places import places
from panelcad.drawing.wishes import AIR, Wish
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import polygon
from panelcad.geometry.track import Track, line

_LINE_COST: Final = 3.0
CROWDED: Final = 0.08
"""A view with more leaders than this share deserves a larger sheet."""


@dataclass(frozen=True)
class Label:
    wish: Wish
    middle: Point
    needs_leader: bool

    @cached_property
    def box(self) -> Bounds:
        return self.wish.box_at(self.middle)

    @property
    def leader(self) -> tuple[Point, Point]:
        """From the rim of what is named to the near side of the text's box."""
        spot, (x1, y1, x2, y2) = self.wish.spot, self.box
        near = Point(min(max(spot.x, x1), x2), min(max(spot.y, y1), y2))
        rim = spot.towards(near, min(self.wish.radius, distance(spot, near)))
        return rim, near.towards(rim, 0.4)

    def nodes(self, inks: Inks) -> tuple[Node, ...]:
        wish = self.wish
        text = inks.text(
            wish.text, self.middle, wish.height, Along.CENTRE, Across.MIDDLE, face=wish.face, colour=wish.colour
        )
        if not self.needs_leader:
            return (text,)
        return text, Path((line(*self.leader),), pen=inks.measure)


class Ground:
    """What labels keep clear of: texts and leaders at any price, lines where it can be helped."""

    def __init__(self, texts: Iterable[Bounds], lines: Iterable[shapely.LineString], area: Bounds) -> None:
        self._texts = Boxes(texts)
        self._leaders: list[tuple[Bounds, shapely.LineString]] = []
        self._area = area
        self._lines = shapely.STRtree(list(lines))

    def place(self, wish: Wish) -> Label | None:
        """The label at its cheapest free place; None where there is none."""
        best: tuple[float, Label] | None = None
        for place in places(wish):
            label = Label(wish, place.middle, place.needs_leader)
            if best is not None and place.cost >= best[0]:
                break
            if self._is_taken(label):
                continue
            price = place.cost + _LINE_COST * self._crossed(label)
            if best is None or price < best[0]:
                best = (price, label)
        if best is None:
            return None
        self._take(best[1])
        return best[1]

    def _take(self, label: Label) -> None:
        self._texts.add(label.box)
        if label.needs_leader:
            line = shapely.LineString(label.leader)
            self._leaders.append((line.bounds, line))

    def _is_taken(self, label: Label) -> bool:
        if not is_within(label.box, self._area) or self._texts.meets(grown(label.box, AIR)):
            return True
        if any(_meets(label.box, around, leader) for around, leader in self._leaders):
            return True
        return label.needs_leader and self._texts.crossed_by(*label.leader)

    def _crossed(self, label: Label) -> int:
        return len(self._lines.query(shapely.box(*grown(label.box, AIR / 2)), predicate="intersects"))


def _meets(box: Bounds, around: Bounds, leader: shapely.LineString) -> bool:
    return overlap(grown(box, AIR), grown(around, AIR)) and bool(leader.intersects(shapely.box(*box)))


def crowding(labels: Sequence[Label]) -> float:
    """The share of texts that stand so far off that they need a leader."""
    return sum(label.needs_leader for label in labels) / max(1, len(labels))


def lines_of(contours: Iterable[Contour], tracks: Iterable[Track]) -> list[shapely.LineString]:
    """Edges and lines that labels had better not cross."""
    edges = [polygon(contour, error=0.1).exterior for contour in contours]
    return [*edges, *(shapely.LineString([v.point for v in track.vertices]) for track in tracks)]
