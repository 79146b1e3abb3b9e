"""The datum on the drawing: its origin and axes, and the datum letters of ISO 5459 on both axes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import shapely

from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import PLAIN, Inks
from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, polyline

_ARMS: Final = (14.0, 20.0, 28.0, 38.0, 50.0, 64.0, 80.0)
_HEAD: Final = 2.5


@dataclass(frozen=True)
class Datum:
    """The origin circle of running dimensions (ISO 129-1), both axes, and a datum letter on each.

    `up` and `right` say on which side of its axis a letter stands: 1 right of Y and above X, -1 on the other side.
    """

    at: Point
    arm: float
    right: float
    up: float

    @property
    def boxes(self) -> tuple[Bounds, ...]:
        """What its letters cover."""
        x, y, arm = self.at.x, self.at.y, self.arm
        a, b = x + self.right * 6.6, y + self.up * 6.6
        foot = arm - 6.0
        return (
            _around(self._x_letter),
            _around(self._y_letter),
            (a - 2.6, y + foot - 2.6, a + 2.6, y + foot + 2.6),
            (x + foot - 2.6, b - 2.6, x + foot + 2.6, b + 2.6),
        )

    @property
    def _x_letter(self) -> Point:
        """Beside the arrow, on the side where no datum letter is: along an axis often runs an edge."""
        return self.at.moved(self.arm - 1.0, -self.up * 2.6)

    @property
    def _y_letter(self) -> Point:
        return self.at.moved(-self.right * 2.4, self.arm - 1.0)

    @property
    def strokes(self) -> tuple[Contour | Track, ...]:
        """Its circle and its axes."""
        at, arm = self.at, self.arm
        return (
            circle(at, 3.0),
            polyline(at.moved(-3.0, 0.0), at.moved(arm - _HEAD, 0.0)),
            polyline(at.moved(0.0, -3.0), at.moved(0.0, arm - _HEAD)),
        )

    def nodes(self, inks: Inks) -> tuple[Node, ...]:
        at, arm = self.at, self.arm
        pen = inks.pen(0.35, colour=inks.alarm)
        heads = (_head(at.moved(arm, 0.0), (1.0, 0.0)), _head(at.moved(0.0, arm), (0.0, 1.0)))
        return (
            Path(self.strokes, pen=pen),
            Path(heads, fill=inks.alarm),
            _letter("X", self._x_letter, inks),
            _letter("Y", self._y_letter, inks),
            *_datum_letter("A", at.moved(0.0, arm - 6.0), (self.right, 0.0), inks),
            *_datum_letter("B", at.moved(arm - 6.0, 0.0), (0.0, self.up), inks),
        )


def datum_clear_of(at: Point, texts: Boxes, edges: Sequence[shapely.LineString] = ()) -> Datum:
    """The datum symbol with its letters where no text stands and the fewest edges run, as far as there is a place."""
    sides = ((-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0))
    ways = [Datum(at, arm, *side) for arm in _ARMS for side in sides if side != sides[-1] or arm > _ARMS[0]]
    clear = [way for way in ways if not any(texts.meets(box) for box in way.boxes)]
    tree = shapely.STRtree(list(edges))
    return min(clear or ways[:1], key=lambda way: _crossings(way, tree))


def _crossings(way: Datum, edges: shapely.STRtree) -> int:
    """How many edges run through the datum's letters."""
    return sum(len(edges.query(shapely.box(*box), predicate="intersects")) for box in way.boxes)


def _datum_letter(letter: str, at: Point, out: tuple[float, float], inks: Inks) -> tuple[Node, ...]:
    """A framed letter on a filled triangle whose base lies on the datum at `at`; `out` points away from the part."""
    dx, dy = out
    tip = at.moved(dx * 2.6, dy * 2.6)
    base = (at.moved(-dy * 1.5, dx * 1.5), at.moved(dy * 1.5, -dx * 1.5))
    triangle = closed_chain(tuple(Vertex(*corner) for corner in (tip, *base)))
    centre = at.moved(dx * 6.6, dy * 6.6)
    frame = box_outline((centre.x - 2.5, centre.y - 2.5, centre.x + 2.5, centre.y + 2.5))
    stem = polyline(tip, at.moved(dx * 4.1, dy * 4.1))
    return (
        Path((triangle,), fill=inks.alarm),
        Path((stem, frame), pen=inks.pen(0.25, colour=inks.alarm)),
        _letter(letter, centre, inks),
    )


def _around(letter: Point) -> Bounds:
    return letter.x - 1.6, letter.y - 1.6, letter.x + 1.6, letter.y + 1.6


def _letter(text: str, at: Point, inks: Inks) -> Node:
    return inks.text(text, at, PLAIN, Along.CENTRE, Across.MIDDLE, face=Face.BOLD, colour=inks.alarm)


def _head(tip: Point, way: tuple[float, float]) -> Contour:
    dx, dy = way
    back = tip.moved(-dx * _HEAD, -dy * _HEAD)
    corners = (tip, back.moved(-dy * 0.6, dx * 0.6), back.moved(dy * 0.6, -dx * 0.6))
    return closed_chain(tuple(Vertex(*corner) for corner in corners))
