"""A display list drawn larger or smaller, and moved: geometry, lettering and pens in mm alike."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from panelcad.drawing.display import (
    Colour,
    Fill,
    Group,
    LinearGradient,
    Measured,
    Node,
    Path,
    Pen,
    Picture,
    RadialGradient,
    Text,
)
from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track

_HERE: Final = Point(0.0, 0.0)


def scaled(nodes: tuple[Node, ...], factor: float, origin: Point = _HERE) -> tuple[Node, ...]:
    """The nodes with a point p moved to origin + factor · p. Pens and texts in pixels keep their size."""
    return tuple(_SCALED[type(node)](node, factor, origin) for node in nodes)


def scaled_contour(contour: Contour, factor: float, origin: Point = _HERE) -> Contour:
    if isinstance(contour, Rounded):
        return Rounded(tuple(_moved(p, factor, origin) for p in contour.core), contour.radius * factor)
    return Chain(_vertices(contour.vertices, factor, origin))


def _moved(point: Point, factor: float, origin: Point) -> Point:
    return Point(origin.x + factor * point.x, origin.y + factor * point.y)


def _vertices(vertices: tuple[Vertex, ...], factor: float, origin: Point) -> tuple[Vertex, ...]:
    return tuple(Vertex(*_moved(v.point, factor, origin), v.bulge) for v in vertices)


def _outline(outline: Contour | Track, factor: float, origin: Point) -> Contour | Track:
    if isinstance(outline, Track):
        return Track(_vertices(outline.vertices, factor, origin))
    return scaled_contour(outline, factor, origin)


def _path(path: Path, factor: float, origin: Point) -> Path:
    outlines = tuple(_outline(outline, factor, origin) for outline in path.outlines)
    return Path(outlines, _fill(path.fill, factor, origin), _pen(path.pen, factor))


def _pen(pen: Pen | None, factor: float) -> Pen | None:
    if pen is None or pen.measured is Measured.PIXELS:
        return pen
    return replace(pen, width=pen.width * factor, dashes=tuple(dash * factor for dash in pen.dashes))


def _fill(fill: Fill | None, factor: float, origin: Point) -> Fill | None:
    if isinstance(fill, LinearGradient):
        return replace(fill, start=_moved(fill.start, factor, origin), end=_moved(fill.end, factor, origin))
    if isinstance(fill, RadialGradient):
        return replace(fill, centre=_moved(fill.centre, factor, origin), radius=fill.radius * factor)
    if fill is None or isinstance(fill, Colour):
        return fill
    raise TypeError(f"{fill!r} is no fill")


def _text(text: Text, factor: float, origin: Point) -> Text:
    height = text.height if text.measured is Measured.PIXELS else text.height * factor
    return replace(text, at=_moved(text.at, factor, origin), height=height)


def _picture(picture: Picture, factor: float, origin: Point) -> Picture:
    at = _moved(picture.at, factor, origin)
    return replace(picture, at=at, width=picture.width * factor, height=picture.height * factor)


def _group(group: Group, factor: float, origin: Point) -> Group:
    if group.placement is None:
        clip = scaled_contour(group.clip, factor, origin) if group.clip else None
        return replace(group, nodes=scaled(group.nodes, factor, origin), clip=clip)
    spot = _moved(Point(group.placement.x, group.placement.y), factor, origin)
    placement = Placement(*spot, group.placement.rotation, group.placement.mirrored)
    clip = scaled_contour(group.clip, factor) if group.clip else None
    return replace(group, nodes=scaled(group.nodes, factor), clip=clip, placement=placement)


_SCALED: Final[dict[type[Node], Callable[[Any, float, Point], Node]]] = {
    Path: _path,
    Text: _text,
    Picture: _picture,
    Group: _group,
}
