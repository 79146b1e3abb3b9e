"""The datum on the drawing: its origin and axes, and the datum letters of ISO 5459 on both axes."""

from dataclasses import dataclass
from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import PLAIN, Inks
from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import polyline

_ARMS: Final = (14.0, 20.0, 28.0, 38.0, 50.0)
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
            (x + arm, y - 2.3, x + arm + 4.0, y + 1.8),
            (x - 1.8, y + arm, x + 1.8, y + arm + 4.0),
            (a - 2.6, y + foot - 2.6, a + 2.6, y + foot + 2.6),
            (x + foot - 2.6, b - 2.6, x + foot + 2.6, b + 2.6),
        )

    def nodes(self, inks: Inks) -> tuple[Node, ...]:
        at, arm = self.at, self.arm
        pen = inks.pen(0.35, colour=inks.alarm)
        axes = (
            polyline(at.moved(-3.0, 0.0), at.moved(arm - _HEAD, 0.0)),
            polyline(at.moved(0.0, -3.0), at.moved(0.0, arm - _HEAD)),
        )
        heads = (_head(at.moved(arm, 0.0), (1.0, 0.0)), _head(at.moved(0.0, arm), (0.0, 1.0)))
        return (
            Path((circle(at, 3.0), *axes), pen=pen),
            Path(heads, fill=inks.alarm),
            _letter("X", at.moved(arm + 1.8, 0.0), inks),
            _letter("Y", at.moved(0.0, arm + 2.0), inks),
            *_datum_letter("A", at.moved(0.0, arm - 6.0), (self.right, 0.0), inks),
            *_datum_letter("B", at.moved(arm - 6.0, 0.0), (0.0, self.up), inks),
        )


def datum_clear_of(at: Point, texts: Boxes) -> Datum:
    """The datum symbol with its letters where no text stands, as far as there is such a place."""
    sides = ((-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0))
    ways = [Datum(at, arm, *side) for arm in _ARMS for side in sides if side != sides[-1] or arm > _ARMS[0]]
    return next((way for way in ways if not any(texts.meets(box) for box in way.boxes)), ways[0])


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


def _letter(text: str, at: Point, inks: Inks) -> Node:
    return inks.text(text, at, PLAIN, Along.CENTRE, Across.MIDDLE, face=Face.BOLD, colour=inks.alarm)


def _head(tip: Point, way: tuple[float, float]) -> Contour:
    dx, dy = way
    back = tip.moved(-dx * _HEAD, -dy * _HEAD)
    corners = (tip, back.moved(-dy * 0.6, dx * 0.6), back.moved(dy * 0.6, -dx * 0.6))
    return closed_chain(tuple(Vertex(*corner) for corner in corners))
