"""Paints display lists onto a reportlab canvas, in mm. True arcs become Bézier curves at most 0.012 mm beside them."""

import math
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import Any, Final

from panelcad.drawing.display import (
    RIM,
    Cap,
    Colour,
    Face,
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
from panelcad.drawing.lettering import em_size, font_file, text_origin
from panelcad.geometry.contour import Chain, Contour, Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, direction
from panelcad.geometry.segment import Arc, Line, Segment
from panelcad.geometry.track import Track

POINTS_PER_MM: Final = 72 / 25.4
CURVE_ERROR: Final = 0.012
"""Greatest distance in mm between an arc and its curves."""
_QUARTER_ERROR: Final = 2.7253e-4
"""Greatest error of one cubic Bézier for a quarter circle, in radii; it falls with the sixth power of the angle."""
_PIXEL: Final = 25.4 / 96
"""A pen in pixels is drawn on paper as on a screen of 96 pixels an inch (CSS Values 4, reference pixel)."""
_EVEN_ODD: Final = 0
_CAPS: Final = {Cap.FLAT: 0, Cap.ROUND: 1}


class PdfPainter:
    """Replays nodes on one page whose lower left corner is the origin."""

    def __init__(self, canvas: Any) -> None:
        self._canvas = canvas
        self._opacity = 1.0
        self._pen: Pen | None = None
        self._paint: dict[type[Node], Callable[[Any], None]] = {
            Path: self._path,
            Text: self._text,
            Picture: self._picture,
            Group: self._group,
        }

    def page(self, nodes: tuple[Node, ...]) -> None:
        """Paint one page's nodes; the caller shows the page."""
        with self._state():
            self._canvas.scale(POINTS_PER_MM, POINTS_PER_MM)
            self._canvas.setLineJoin(1)
            self.paint(nodes)

    def paint(self, nodes: tuple[Node, ...]) -> None:
        for node in nodes:
            self._paint[type(node)](node)

    @contextmanager
    def _state(self) -> Iterator[None]:
        opacity = self._opacity
        self._canvas.saveState()
        self._pen = None
        yield
        self._canvas.restoreState()
        self._pen = None
        self._opacity = opacity

    def _group(self, group: Group) -> None:
        if group.placement is None and group.clip is None and group.opacity == 1.0:
            self.paint(group.nodes)
            return
        with self._state():
            self._opacity *= group.opacity
            if group.placement is not None:
                self._canvas.transform(*_matrix(group.placement))
            if group.clip is not None:
                self._canvas.clipPath(self._outline((group.clip,)), stroke=0, fill=0, fillMode=_EVEN_ODD)
            self.paint(group.nodes)

    def _path(self, path: Path) -> None:
        if isinstance(path.fill, LinearGradient | RadialGradient):
            self._shade(path, path.fill)
        fill = path.fill if isinstance(path.fill, Colour) and path.fill.opacity else None
        if fill is not None:
            self._canvas.setFillColorRGB(*self._rgb(fill))
        if path.pen is not None:
            self._take_up(path.pen)
        if fill is not None or path.pen is not None:
            outline = self._outline(path.outlines)
            self._canvas.drawPath(outline, int(path.pen is not None), int(fill is not None), _EVEN_ODD)

    def _take_up(self, pen: Pen) -> None:
        if pen == self._pen:
            return
        unit = 1.0 if pen.measured is Measured.MM else _PIXEL
        self._canvas.setStrokeColorRGB(*self._rgb(pen.colour))
        self._canvas.setLineWidth(pen.width * unit)
        self._canvas.setDash([dash * unit for dash in pen.dashes])
        self._canvas.setLineCap(_CAPS[pen.cap])
        self._pen = pen

    def _shade(self, path: Path, fill: Fill) -> None:
        with self._state():
            self._canvas.clipPath(self._outline(path.outlines), stroke=0, fill=0, fillMode=_EVEN_ODD)
            self._canvas.setFillAlpha(self._opacity)
            if isinstance(fill, LinearGradient):
                self._canvas.linearGradient(*fill.start, *fill.end, *_stops(fill))
            elif isinstance(fill, RadialGradient):
                self._canvas.radialGradient(*fill.centre, fill.radius, *_stops(fill))

    def _text(self, text: Text) -> None:
        unit = 1.0 if text.measured is Measured.MM else _PIXEL
        dx, dy = (part * unit for part in text_origin(text))
        start = Placement(text.at.x, text.at.y, text.rotation).point(Point(dx, dy))
        cosine, sine = direction(text.rotation)
        turn = (cosine, sine, -sine, cosine, *start)
        if text.rim is not None:
            with self._state():
                self._canvas.setStrokeColorRGB(*self._rgb(text.rim)[:3])
                self._canvas.setStrokeAlpha(self._rgb(text.rim)[3])
                self._canvas.setLineWidth(2 * RIM * text.height * unit)
                self._canvas.setLineJoin(1)
                self._letters(text, unit, turn, outlined=True)
        self._letters(text, unit, turn)

    def _letters(self, text: Text, unit: float, turn: tuple[float, ...], *, outlined: bool = False) -> None:
        written = self._canvas.beginText()
        if outlined:
            written.setTextRenderMode(1)
        written.setFont(FONT_NAMES[text.face], em_size(text.height, text.face) * unit)
        written.setFillColorRGB(*self._rgb(text.colour)[:3])
        self._canvas.setFillAlpha(self._rgb(text.colour)[3])
        written.setTextTransform(*turn)
        written.textOut(text.text)
        self._canvas.drawText(written)

    def _picture(self, picture: Picture) -> None:
        from reportlab.lib.utils import ImageReader  # noqa: PLC0415 - slow to load

        image = ImageReader(BytesIO(picture.content))
        self._canvas.setFillAlpha(self._opacity)
        self._canvas.drawImage(image, *picture.at, picture.width, picture.height, mask="auto")

    def _rgb(self, colour: Colour) -> tuple[float, float, float, float]:
        return colour.red / 255, colour.green / 255, colour.blue / 255, colour.opacity / 255 * self._opacity

    def _outline(self, outlines: tuple[Contour | Track, ...]) -> Any:
        path = self._canvas.beginPath()
        for outline in outlines:
            _trace(outline, path)
        return path


FONT_NAMES: Final = {Face.REGULAR: "panelcad-regular", Face.BOLD: "panelcad-bold"}


def register_fonts() -> None:
    """Make the packaged fonts known to reportlab; they are embedded where they are used."""
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415 - slow to load
    from reportlab.pdfbase.ttfonts import TTFont  # noqa: PLC0415

    known = set(pdfmetrics.getRegisteredFontNames())
    for face, name in FONT_NAMES.items():
        if name not in known:
            pdfmetrics.registerFont(TTFont(name, str(font_file(face))))


def curves(arc: Arc) -> Iterator[tuple[Point, Point, Point]]:
    """Two control points and the end of each Bézier curve along an arc, within `CURVE_ERROR` of it."""
    count = _pieces(arc)
    step = arc.sweep / count
    reach = 4 / 3 * math.tan(step / 4) * arc.radius
    angle = arc.start_angle
    for i in range(1, count + 1):
        following = arc.start_angle + i * step
        start, end = _on(arc, angle), arc.end if i == count else _on(arc, following)
        yield (
            Point(start.x - reach * math.sin(angle), start.y + reach * math.cos(angle)),
            Point(end.x + reach * math.sin(following), end.y - reach * math.cos(following)),
            end,
        )
        angle = following


def _pieces(arc: Arc) -> int:
    """Quarter turns at most, each split further as the radius needs, so that a circle's outermost points are ends."""
    in_each: float = (_QUARTER_ERROR * arc.radius / CURVE_ERROR) ** (1 / 6)
    return max(1, math.ceil(abs(arc.sweep) / (math.pi / 2) - 1e-9)) * math.ceil(max(1.0, in_each))


def _on(arc: Arc, angle: float) -> Point:
    return Point(arc.centre.x + arc.radius * math.cos(angle), arc.centre.y + arc.radius * math.sin(angle))


def _trace(outline: Contour | Track, path: Any) -> None:
    segments = outline.segments
    path.moveTo(*segments[0].start)
    for segment in segments:
        _SEGMENTS[type(segment)](segment, path)
    if isinstance(outline, Rounded | Chain):
        path.close()


def _draw_line(segment: Segment, path: Any) -> None:
    path.lineTo(*segment.end)


def _draw_arc(segment: Segment, path: Any) -> None:
    if isinstance(segment, Arc):
        for first, second, end in curves(segment):
            path.curveTo(*first, *second, *end)


_SEGMENTS: Final = {Line: _draw_line, Arc: _draw_arc}


def _matrix(placement: Placement) -> tuple[float, float, float, float, float, float]:
    origin = placement.point(Point(0.0, 0.0))
    along, across = placement.point(Point(1.0, 0.0)), placement.point(Point(0.0, 1.0))
    return along.x - origin.x, along.y - origin.y, across.x - origin.x, across.y - origin.y, *origin


def _stops(fill: LinearGradient | RadialGradient) -> tuple[list[Any], list[float]]:
    from reportlab.lib.colors import Color  # noqa: PLC0415 - slow to load

    colours = [Color(stop.colour.red / 255, stop.colour.green / 255, stop.colour.blue / 255) for stop in fill.stops]
    return colours, [stop.share for stop in fill.stops]
