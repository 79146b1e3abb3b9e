"""What surrounds the instruments in a picture: edge trim, glareshield, yokes in outline."""

import math
from functools import lru_cache
from typing import Final

import shapely

from panelcad.drawing.display import Group, LinearGradient, Node, Path, Pen, Stop
from panelcad.drawing.faces.inks import BLACK, DARK, GLINT, SHADOW, STEEL, STEEL_DARK, ink
from panelcad.drawing.faces.marks import arc, disc, grown, strokes
from panelcad.drawing.faces.parts import slanted
from panelcad.geometry.contour import Contour, Vertex, closed_chain
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.track import Track, polyline
from panelcad.model.appearance import Trim
from panelcad.model.surroundings import MovingPart

_LIP: Final = 7.0
"""How far the glareshield's padding hangs over the sheet's upper edge in the picture, in mm."""
_RISE: Final = 34.0


def edge_trim(outline: Contour, trim: Trim) -> tuple[Node, ...]:
    """A strip along the outside of the sheet's edge; the edge itself stays where it is."""
    if trim is Trim.NONE:
        return (Path((outline,), None, Pen(BLACK.faded(0.6), 0.5)),)
    around = grown(outline, 1.5)
    if trim is Trim.RUBBER:
        return (
            Path((around,), None, Pen(ink("#17181a"), 3.0)),
            Path((grown(outline, 2.2),), None, Pen(ink("#3a3c40"), 0.6)),
        )
    return (
        Path((around, outline), slanted(around, STEEL, STEEL_DARK)),
        Path((around,), None, Pen(ink("#e8eaec"), 0.4)),
    )


@lru_cache(64)
def glareshield(outline: Contour) -> Group:
    """A padded roll above the panel that follows its upper edge, and the shadow it throws on the sheet."""
    edge = upper_edge(outline)
    shade = tuple(
        Path((_between(edge, 4.0, -depth),), SHADOW._replace(opacity=26)) for depth in (8.0, 12.0, 17.0, 23.0, 30.0)
    )
    roll = _between(edge, _RISE, -_LIP)
    top, low = max(p.y for p in edge) + _RISE, min(p.y for p in edge) - _LIP
    fill = LinearGradient(
        Point(0.0, top),
        Point(0.0, low),
        (Stop(0.0, ink("#191a1c")), Stop(0.7, ink("#2f3134")), Stop(1.0, ink("#111213"))),
    )
    seam = polyline(*(p.moved(0.0, 0.45 * _RISE) for p in edge))
    stitches = Path((seam,), None, Pen(ink("#55585c"), 0.7, dashes=(3.2, 2.2)))
    return Group((*shade_clipped(shade, outline), Path((roll,), fill), Group((stitches,), clip=roll)))


def shade_clipped(shade: tuple[Path, ...], outline: Contour) -> tuple[Node, ...]:
    return (Group(shade, clip=outline),)


def upper_edge(outline: Contour, step: float = 6.0) -> list[Point]:
    """Points along the upper edge of a contour from left to right."""
    ground = polygon(outline, error=0.05)
    x1, y1, x2, y2 = outline.bounds
    count = max(2, round((x2 - x1) / step))
    xs = [x1 + 0.01 + (x2 - x1 - 0.02) * i / count for i in range(count + 1)]
    cuts = [ground.intersection(shapely.LineString([(x, y1 - 1), (x, y2 + 1)])) for x in xs]
    found = [Point(x, cut.bounds[3]) for x, cut in zip(xs, cuts, strict=True) if not cut.is_empty]
    return _without_sides(found, y1, y2)


def _without_sides(edge: list[Point], low: float, high: float) -> list[Point]:
    """The edge without the flanks where the panel's sides run down: the roll ends where the top does."""
    floor = low + 0.55 * (high - low)
    return [p for p in edge if p.y >= floor] or edge


def _between(edge: list[Point], above: float, below: float) -> Contour:
    """The strip from `below` to `above` the edge; it thins out toward its ends."""
    shares = [_thinned(p, edge) for p in edge]
    top = [Vertex(p.x, p.y + above * share) for p, share in zip(edge, shares, strict=True)]
    low = [Vertex(p.x, p.y + below * share) for p, share in zip(edge, shares, strict=True)]
    return closed_chain((*reversed(low), *top))


def _thinned(at: Point, edge: list[Point]) -> float:
    """1 in the middle, less along the last 40 mm of either end."""
    near = min(at.x - edge[0].x, edge[-1].x - at.x)
    return 0.12 + 0.88 * math.sin(min(1.0, near / 40.0) * math.pi / 2)


def shafts(parts: tuple[MovingPart, ...]) -> tuple[MovingPart, ...]:
    """The moving parts that are control columns, by their names."""
    return tuple(part for part in parts if "shaft" in part.name.casefold() or "yoke" in part.name.casefold())


def footwell(outline: Contour, columns: tuple[MovingPart, ...]) -> tuple[Group, ...]:
    """The dark one looks into past the sheet's edge, where a control column passes through a notch of it."""
    return _footwell(outline, tuple(Point(part.volume.x, part.volume.y) for part in columns))


@lru_cache(64)
def _footwell(outline: Contour, columns: tuple[Point, ...]) -> tuple[Group, ...]:
    ground = polygon(outline, error=0.05)
    notches = shapely.get_parts(ground.convex_hull.difference(ground))
    seen = [notch for notch in notches if any(notch.intersects(shapely.Point(column)) for column in columns)]
    return tuple(
        Group((Path((closed_chain(tuple(Vertex(*p) for p in notch.exterior.coords[:-1])),), DARK),)) for notch in seen
    )


def yokes(columns: tuple[MovingPart, ...]) -> tuple[Group, ...]:
    """Each yoke in outline at its shaft, so that what it hides can be judged."""
    return tuple(_yoke(part) for part in columns)


def _yoke(part: MovingPart) -> Group:
    at = Placement(part.volume.x, part.volume.y)
    horn = _horn()
    pen = Pen(GLINT._replace(opacity=150), 0.9, dashes=(5.0, 3.0))
    shaft = disc(Point(0.0, 0.0), 12.0, slanted(grown(horn, 0.0), STEEL, STEEL_DARK))
    nodes = (
        shaft,
        Path((horn,), SHADOW._replace(opacity=48), pen),
        strokes((_hub(),), GLINT._replace(opacity=110), 0.7),
    )
    return Group(nodes, placement=at, title=part.name)


def _horn() -> Contour:
    """A plain control wheel: a bar with two upright grips."""
    half = (
        Vertex(0.0, 16.0),
        Vertex(58.0, 16.0, 0.25),
        Vertex(92.0, 36.0, 0.12),
        Vertex(104.0, 88.0, -0.9),
        Vertex(132.0, 84.0, -0.1),
        Vertex(128.0, 22.0, -0.32),
        Vertex(78.0, -30.0, -0.08),
        Vertex(0.0, -38.0),
    )
    mirrored = [
        Vertex(-v.x, v.y, half[i - 1].bulge) for i, v in reversed(list(enumerate(half))) if 0 < i < len(half) - 1
    ]
    bottom = Vertex(0.0, -38.0, half[-2].bulge)
    return closed_chain((*half[:-1], bottom, *mirrored))


def _hub() -> Track:
    return arc(Point(0.0, 0.0), 18.0, -179.0, 179.0)
