"""The datum on the drawing: its origin and axes, and the datum letters of ISO 5459 on both axes."""

from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.inks import PLAIN, Inks
from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import polyline

_ARM: Final = 14.0
_HEAD: Final = 2.5


def datum_symbol(at: Point, inks: Inks) -> tuple[Node, ...]:
    """The origin circle of running dimensions (ISO 129-1) with both axes."""
    axes = (
        polyline(at.moved(-3.0, 0.0), at.moved(_ARM - _HEAD, 0.0)),
        polyline(at.moved(0.0, -3.0), at.moved(0.0, _ARM - _HEAD)),
    )
    heads = (_head(at.moved(_ARM, 0.0), (1.0, 0.0)), _head(at.moved(0.0, _ARM), (0.0, 1.0)))
    return (
        Path((circle(at, 3.0),), pen=inks.pen(0.35, colour=inks.alarm)),
        Path(axes, pen=inks.pen(0.35, colour=inks.alarm)),
        Path(heads, fill=inks.alarm),
        _letter("X", at.moved(_ARM + 1.8, 0.0), inks),
        _letter("Y", at.moved(0.0, _ARM + 2.0), inks),
        *_datum_letter("A", at.moved(0.0, 8.0), (-1.0, 0.0), inks),
        *_datum_letter("B", at.moved(8.0, 0.0), (0.0, -1.0), inks),
    )


def datum_boxes(at: Point) -> tuple[Bounds, ...]:
    """What the letters of the symbol cover."""
    return (
        (at.x + _ARM, at.y - 1.8, at.x + _ARM + 4.0, at.y + 1.8),
        (at.x - 1.8, at.y + _ARM, at.x + 1.8, at.y + _ARM + 4.0),
        (at.x - 9.2, at.y + 5.4, at.x, at.y + 10.6),
        (at.x + 5.4, at.y - 9.2, at.x + 10.6, at.y),
    )


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
