"""Short texts beside what they name, moved about until none covers another or, if it can be helped, a line."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

import shapely

from panelcad.drawing.box import box_outline, grown, is_within, nearest_in, overlap
from panelcad.drawing.display import Across, Along, Bounds, Colour, Node, Path, walk
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import Inks
from panelcad.drawing.label_places import Place, places
from panelcad.drawing.wishes import AIR, Stand, Wish
from panelcad.geometry.contour import Contour, Vertex, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.track import Track, line

_EDGE_COST: Final = 30.0
_HIDDEN_EDGE_COST: Final = 3.0
_LINE_COST: Final = 1.0
"""What it costs, in mm of reach, to cross an edge, one that a patch can hide, or a line that can be broken."""
_INSIDE_COST: Final = 13.0
_INSIDE_ANOTHER_COST: Final = 25.0
"""What it costs a small thing's number to stand in an opening, whose own it might be taken for: in that of its own cut,
and in any other."""
_LEADERS_CROSS_COST: Final = 20.0
"""What it costs, in mm of reach, that two leaders cross."""
_BESIDE: Final = 1.3
"""How far in mm a text stands from one before or after it, so that two numbers do not read as one."""
_UNSURE: Final = 0.4
"""A text that is nearer than this much farther to another thing than to its own needs a leader."""
_UNSURE_COST: Final = 2.5
_HEAD: Final = 2.5
_NONE: Final[Mapping[str, shapely.LineString]] = {}
CROWDED: Final = 0.12
"""A view with more leaders than this share deserves a larger sheet."""


@dataclass(frozen=True)
class Label:
    wish: Wish
    middle: Point
    needs_leader: bool
    is_crossed: bool = False
    """Whether an edge runs through it."""

    @cached_property
    def box(self) -> Bounds:
        return self.wish.box_at(self.middle)

    @property
    def leader(self) -> tuple[Point, Point]:
        """From the rim of what is named to the near side of the text's box."""
        if self.wish.stand is Stand.RADIAL:
            return self.wish.spot, nearest_in(self.box, self.wish.spot)
        near = nearest_in(self.box, self.wish.spot if self.wish.thing is None else self.wish.rim(self.middle))
        rim = self.wish.rim(near)
        return rim, near.towards(rim, 0.4)

    def nodes(self, inks: Inks, backing: Colour | None = None) -> tuple[Node, ...]:
        """The text and its leader; on a patch of the backing's colour where an edge would run through it."""
        wish = self.wish
        text = inks.text(
            wish.text, self.middle, wish.height, Along.CENTRE, Across.MIDDLE, face=wish.face, colour=wish.colour
        )
        fill = wish.fill if wish.fill and is_within(self.box, wish.room) else backing
        patch = (Path((box_outline(self.box),), fill=fill),) if fill and self.is_crossed else ()
        return (*self._leader_nodes(inks), *patch, text)

    def _leader_nodes(self, inks: Inks) -> Iterator[Node]:
        if not self.needs_leader:
            return
        rim, end = self.leader
        yield Path((line(rim, end),), pen=inks.measure)
        if self.wish.stand is Stand.RADIAL:
            yield Path((_arrow(rim, end),), fill=inks.note)


def _arrow(tip: Point, tail: Point) -> Contour:
    """The head of an arrow whose length is that of the letters (ISO 129-1)."""
    back = tip.towards(tail, _HEAD)
    dx, dy = (back.y - tip.y) * 0.17, (tip.x - back.x) * 0.17
    return closed_chain(tuple(Vertex(*corner) for corner in (tip, back.moved(dx, dy), back.moved(-dx, -dy))))


class Ground:
    """What labels keep clear of: texts and leaders at any price, edges and lines where it can be helped."""

    def __init__(
        self,
        texts: Iterable[Bounds],
        edges: Iterable[shapely.LineString],
        area: Bounds,
        lines: Iterable[shapely.LineString] = (),
        openings: Mapping[str, shapely.LineString] = _NONE,
    ) -> None:
        self._texts = Boxes(texts)
        self._leaders: list[tuple[Bounds, shapely.LineString]] = []
        self._area = area
        self._edges = shapely.STRtree(list(edges))
        self._lines = shapely.STRtree(list(lines))
        self._opening_names = tuple(openings)
        self._openings = shapely.STRtree([shapely.Polygon(edge) for edge in openings.values()])
        self._rivals: list[Wish] = []
        self._things = shapely.STRtree([])

    def placed(self, wishes: Iterable[Wish]) -> list[Label]:
        """The labels in this order, those left out that find no place; each is nearer to its own thing than to others.

        Where it is not, a leader says what it names.
        """
        wanted = list(wishes)
        self._rivals = [wish for wish in wanted if wish.stand is Stand.BESIDE]
        self._things = shapely.STRtree([shapely.box(*_thing_box(wish)) for wish in self._rivals])
        return [label for label in map(self.place, wanted) if label is not None]

    def place(self, wish: Wish) -> Label | None:
        """The label at its cheapest free place; None where there is none."""
        best = self._best(wish)
        if (best is None or best.is_crossed) and wish.least < wish.height:
            smaller = self._best(replace(wish, height=wish.least))
            best = smaller if smaller is not None and not smaller.is_crossed else best or smaller
        if best is None or (wish.is_optional and best.is_crossed):
            return None
        self._take(best)
        return best

    def _best(self, wish: Wish) -> Label | None:
        best: tuple[float, Label] | None = None
        for place in places(wish):
            if best is not None and place.cost >= best[0]:
                break
            priced = self._priced(wish, place)
            if priced is not None and (best is None or priced[0] < best[0]):
                best = priced
        return best[1] if best else None

    def _priced(self, wish: Wish, place: Place) -> tuple[float, Label] | None:
        """What a label would cost here, and the label; None where it cannot stand here."""
        label = Label(wish, place.middle, place.needs_leader)
        cost = place.cost
        if not is_within(label.box, self._area) or self._texts.meets(_with_air(label.box)):
            return None
        if not label.needs_leader and self._is_unsure(label):
            label, cost = replace(label, needs_leader=True), cost + _UNSURE_COST
        if self._is_taken(label):
            return None
        crossed = _count(self._edges, label.box)
        edge_cost = _HIDDEN_EDGE_COST if wish.fill and is_within(label.box, wish.room) else _EDGE_COST
        price = cost + edge_cost * crossed + _LINE_COST * _count(self._lines, label.box)
        price += self._inside_cost(label) if wish.stand is Stand.BESIDE else 0.0
        price += _LEADERS_CROSS_COST * self._leaders_crossed(label)
        return price, replace(label, is_crossed=crossed > 0)

    def _leaders_crossed(self, label: Label) -> int:
        """How many other leaders its own would cross, so that one might be followed to the wrong thing."""
        if not label.needs_leader or not self._leaders:
            return 0
        own = shapely.LineString(label.leader)
        return sum(overlap(own.bounds, around) and own.intersects(other) for around, other in self._leaders)

    def _inside_cost(self, label: Label) -> float:
        """Of standing in openings, which are called by the numbers of their cuts."""
        there = self._openings.query(shapely.Point(label.middle), "within")
        own = label.wish.text.partition(".")[0]
        return max((_inside(self._opening_names[i], own) for i in there), default=0.0)

    def _is_unsure(self, label: Label) -> bool:
        """Whether another small thing is as near to the text as its own."""
        wish, box = label.wish, label.box
        if wish.stand is not Stand.BESIDE:
            return False
        within = wish.gap(box) + _UNSURE
        near = (self._rivals[i] for i in self._things.query(shapely.box(*grown(box, within))))
        return any(rival.spot != wish.spot and rival.gap(box) < within for rival in near)

    def _take(self, label: Label) -> None:
        self._texts.add(label.box)
        if label.needs_leader:
            line = shapely.LineString(label.leader)
            self._leaders.append((line.bounds, line))

    def _is_taken(self, label: Label) -> bool:
        near = grown(label.box, 2 * AIR)
        box = shapely.box(*label.box)
        if any(overlap(near, around) and leader.intersects(box) for around, leader in self._leaders):
            return True
        return label.needs_leader and self._texts.crossed_by(*label.leader)


def _inside(opening: str, own: str) -> float:
    return _INSIDE_COST if opening.partition(".")[0] == own else _INSIDE_ANOTHER_COST


def _with_air(box: Bounds) -> Bounds:
    left, bottom, right, top = box
    return left - _BESIDE, bottom - AIR, right + _BESIDE, top + AIR


def _thing_box(wish: Wish) -> Bounds:
    return wish.thing or grown((*wish.spot, *wish.spot), wish.radius)


def _count(tree: shapely.STRtree, box: Bounds) -> int:
    return len(tree.query(shapely.box(*grown(box, AIR / 2)), predicate="intersects"))


def crowding(labels: Sequence[Label]) -> float:
    """The share of texts that stand so far off that they need a leader; those that may be left out do not count."""
    counted = [label for label in labels if not label.wish.is_optional]
    return sum(label.needs_leader for label in counted) / max(1, len(counted))


def edges_of(outlines: Iterable[Contour | Track]) -> list[shapely.LineString]:
    """Edges that labels had better not cross."""
    return [_edge(outline) for outline in outlines]


def _edge(outline: Contour | Track) -> shapely.LineString:
    return _straight(outline) if isinstance(outline, Track) else polygon(outline, error=0.1).exterior


def drawn_edges(nodes: tuple[Node, ...]) -> list[shapely.LineString]:
    """The edges of all that is drawn."""
    return edges_of(outline for node in walk(nodes) if isinstance(node, Path) for outline in node.outlines)


def lines_of(tracks: Iterable[Track]) -> list[shapely.LineString]:
    return [_straight(track) for track in tracks]


def _straight(track: Track) -> shapely.LineString:
    return shapely.LineString([vertex.point for vertex in track.vertices])
