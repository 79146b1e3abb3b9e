"""The finish of a sheet: powder coat, wrinkle, brushed metal, wood veneer, carbon look, old paint.

Textures are a few paths of many strokes, always the same for the same sheet: no chance is involved.
"""

import math
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Final

from panelcad.drawing.display import Bounds, Cap, Colour, Fill, Group, LinearGradient, Node, Path, Pen, Stop
from panelcad.drawing.faces.inks import BLACK, WHITE
from panelcad.geometry.contour import Contour, Vertex
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line
from panelcad.model.appearance import Appearance, Finish

_GOLDEN: Final = 0.6180339887498949


@lru_cache(64)
def finish(outline: Contour, appearance: Appearance) -> Group:
    """The surface of a sheet, clipped to its outline."""
    colour = Colour.parse(appearance.colour)
    texture = _TEXTURES[appearance.finish](outline.bounds, colour)
    return Group((Path((outline,), _base(outline.bounds, appearance.finish, colour)), *texture), clip=outline)


def plain_finish(outline: Contour, appearance: Appearance) -> Fill:
    """The surface without its texture, for a sheet with holes in it."""
    return _base(outline.bounds, appearance.finish, Colour.parse(appearance.colour))


def _base(bounds: Bounds, kind: Finish, colour: Colour) -> Fill:
    """The colour, a little lighter where the light comes from above; metal has bands."""
    _, y1, _, y2 = bounds
    shares: tuple[tuple[float, float], ...] = ((0.0, 0.07), (0.5, 0.0), (1.0, -0.09))
    if kind is Finish.BRUSHED:
        shares = ((0.0, 0.16), (0.3, -0.06), (0.55, 0.1), (0.8, -0.08), (1.0, 0.04))
    stops = tuple(Stop(at, shaded(colour, by)) for at, by in shares)
    return LinearGradient(Point(0.0, y2), Point(0.0, y1), stops)


def shaded(colour: Colour, by: float) -> Colour:
    """The colour mixed with white (positive) or black (negative) by a share."""
    other, share = (WHITE, by) if by >= 0 else (BLACK, -by)
    r, g, b = (round(a + (c - a) * share) for a, c in zip(colour[:3], other[:3], strict=True))
    return Colour(r, g, b, colour.opacity)


def scattered(count: int, seed: float = 0.0) -> Iterator[tuple[float, float]]:
    """Points of the unit square, evenly but not regularly spread (a golden-ratio sequence)."""
    for i in range(count):
        yield (seed + i * _GOLDEN) % 1.0, (seed * 3 + i * 0.7548776662466927) % 1.0


def _powder(_bounds: Bounds, _colour: Colour) -> tuple[Node, ...]:
    return ()


def _wrinkle(bounds: Bounds, colour: Colour) -> tuple[Node, ...]:
    """Short crooked strokes, light and dark."""
    return (
        _crooked(bounds, 900, 0.31, Pen(shaded(colour, 0.22).faded(0.35), 0.35, cap=Cap.ROUND)),
        _crooked(bounds, 900, 0.77, Pen(shaded(colour, -0.5).faded(0.4), 0.4, cap=Cap.ROUND)),
    )


def _crooked(bounds: Bounds, count: int, seed: float, pen: Pen) -> Path:
    x1, y1, x2, y2 = bounds
    tracks = []
    for i, (u, v) in enumerate(scattered(count, seed)):
        start = Point(x1 + u * (x2 - x1), y1 + v * (y2 - y1))
        angle = (i * 2.399963) % (2 * math.pi)
        middle = start.moved(1.6 * math.cos(angle), 1.6 * math.sin(angle))
        end = middle.moved(1.4 * math.cos(angle + 1.1), 1.4 * math.sin(angle + 1.1))
        tracks.append(Track((Vertex(*start), Vertex(*middle), Vertex(*end))))
    return Path(tuple(tracks), None, pen)


def _brushed(bounds: Bounds, colour: Colour) -> tuple[Node, ...]:
    """Fine horizontal scratches."""
    return (
        _scratches(bounds, 260, 0.13, Pen(shaded(colour, 0.35).faded(0.28), 0.14)),
        _scratches(bounds, 260, 0.57, Pen(shaded(colour, -0.35).faded(0.26), 0.16)),
    )


def _scratches(bounds: Bounds, count: int, seed: float, pen: Pen) -> Path:
    x1, y1, x2, y2 = bounds
    width = x2 - x1
    tracks = []
    for u, v in scattered(count, seed):
        start = Point(x1 + (u * 1.4 - 0.4) * width, y1 + v * (y2 - y1))
        tracks.append(line(start, start.moved(0.4 * width, 0.0)))
    return Path(tuple(tracks), None, pen)


def _veneer(bounds: Bounds, colour: Colour) -> tuple[Node, ...]:
    """Wavy grain along the sheet, in two browns."""
    return (
        _grain(bounds, 34, 0.21, Pen(shaded(colour, -0.42).faded(0.5), 0.9)),
        _grain(bounds, 46, 0.66, Pen(shaded(colour, -0.25).faded(0.45), 0.45)),
        _grain(bounds, 30, 0.43, Pen(shaded(colour, 0.25).faded(0.3), 0.7)),
    )


def _grain(bounds: Bounds, count: int, seed: float, pen: Pen) -> Path:
    x1, y1, x2, y2 = bounds
    steps = 14
    tracks = []
    for i, (u, _) in enumerate(scattered(count, seed)):
        y = y1 + u * (y2 - y1)
        points = []
        for k in range(steps + 1):
            x = x1 + (x2 - x1) * k / steps
            wave = 5.0 * math.sin(0.9 * k + 0.02 * y + 0.15 * i) + 2.2 * math.sin(2.3 * k + i)
            points.append(Vertex(x, y + wave * (0.4 + 0.6 * u), 0.06 if k % 2 else -0.06))
        tracks.append(Track(tuple(points)))
    return Path(tuple(tracks), None, pen)


def _carbon(bounds: Bounds, colour: Colour) -> tuple[Node, ...]:
    """A twill: two sets of slanting strokes, one light, one dark."""
    return (
        _slanted(bounds, 1.0, Pen(shaded(colour, 0.2).faded(0.55), 1.5, dashes=(4.2, 4.2))),
        _slanted(bounds, -1.0, Pen(shaded(colour, -0.55).faded(0.6), 1.5, dashes=(4.2, 4.2))),
    )


def _slanted(bounds: Bounds, way: float, pen: Pen) -> Path:
    x1, y1, x2, y2 = bounds
    high = y2 - y1
    count = int((x2 - x1 + high) / 4.2) + 1
    starts = [x1 - (high if way > 0 else 0.0) + i * 4.2 for i in range(count)]
    return Path(tuple(line(Point(x, y1), Point(x + way * high, y2)) for x in starts), None, pen)


def _old_paint(bounds: Bounds, colour: Colour) -> tuple[Node, ...]:
    """Worn paint: a few faint scratches and rubbed spots."""
    return (
        _crooked(bounds, 60, 0.4, Pen(shaded(colour, 0.3).faded(0.3), 0.25)),
        _crooked(bounds, 120, 0.9, Pen(shaded(colour, -0.3).faded(0.25), 0.3)),
    )


_TEXTURES: Final[dict[Finish, Callable[[Bounds, Colour], tuple[Node, ...]]]] = {
    Finish.POWDER_COAT: _powder,
    Finish.WRINKLE: _wrinkle,
    Finish.BRUSHED: _brushed,
    Finish.VENEER: _veneer,
    Finish.CARBON: _carbon,
    Finish.BARE_PAINT: _old_paint,
}
