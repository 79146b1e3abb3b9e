"""Replays a display list with QPainter. The painter's transformation is expected to map mm, y up, to its device.

`prepare` turns nodes into Qt paths, brushes and pens once; a canvas keeps the result and replays it when it likes.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Protocol

from PySide6.QtCore import QByteArray, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QImage,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QRadialGradient,
    QTransform,
)

from panelcad.drawing.display import (
    RIM,
    Cap,
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
from panelcad.drawing.lettering import text_origin
from panelcad.geometry.contour import Chain, Contour, Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import direction
from panelcad.geometry.segment import Arc
from panelcad.geometry.track import Track
from panelcad.outputs.qt_glyphs import text_path

_WIDEST_CURVE: Final = math.pi / 4
"""A cubic over an eighth of a turn leaves its circle by 4 millionths of the radius."""
_CAPS: Final = {Cap.FLAT: Qt.PenCapStyle.FlatCap, Cap.ROUND: Qt.PenCapStyle.RoundCap}


class Step(Protocol):
    def replay(self, painter: QPainter, ratio: float) -> None:
        """`ratio` is how many pixels of the device one pixel is."""


@dataclass(frozen=True)
class Prepared:
    """Steps ready to be replayed."""

    steps: tuple[Step, ...]

    def replay(self, painter: QPainter) -> None:
        ratio = painter.device().devicePixelRatioF()
        for step in self.steps:
            step.replay(painter, ratio)


def paint(painter: QPainter, nodes: tuple[Node, ...]) -> None:
    """Draw the nodes once."""
    prepare(nodes).replay(painter)


def prepare(nodes: tuple[Node, ...]) -> Prepared:
    return Prepared(tuple(step for node in nodes for step in _steps(node)))


def _steps(node: Node) -> Iterator[Step]:
    if isinstance(node, Path):
        path = outline_path(node.outlines)
        yield _Shape(path, brush(node.fill), pen(node.pen))
    elif isinstance(node, Text):
        yield _lettering(node)
    elif isinstance(node, Picture):
        yield _Image(QImage.fromData(QByteArray(node.content)), QRectF(node.at.x, node.at.y, node.width, node.height))
    elif node.placement is None and node.clip is None and node.opacity == 1.0:
        yield from prepare(node.nodes).steps
    else:
        yield _group(node)


@dataclass(frozen=True)
class _Shape:
    path: QPainterPath
    fill: QBrush
    stroke: QPen

    def replay(self, painter: QPainter, ratio: float) -> None:
        painter.setBrush(self.fill)
        painter.setPen(self.stroke if ratio == 1.0 else _on_device(self.stroke, ratio))
        painter.drawPath(self.path)


@dataclass(frozen=True)
class _PixelText:
    """Lettering that keeps its size on the screen whatever the zoom."""

    at: QPointF
    path: QPainterPath
    fill: QBrush
    rim: QPen

    def replay(self, painter: QPainter, ratio: float) -> None:  # noqa: ARG002
        painter.save()
        painter.translate(self.at)
        scale = pixels_per_mm(painter.worldTransform())
        painter.scale(1 / scale, 1 / scale)
        if self.rim.style() != Qt.PenStyle.NoPen:
            painter.strokePath(self.path, self.rim)
        painter.fillPath(self.path, self.fill)
        painter.restore()


@dataclass(frozen=True)
class _Image:
    """A picture; its rows run downward while y runs up."""

    image: QImage
    where: QRectF

    def replay(self, painter: QPainter, ratio: float) -> None:  # noqa: ARG002
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.translate(self.where.left(), self.where.bottom())
        painter.scale(1, -1)
        painter.drawImage(QRectF(0, 0, self.where.width(), self.where.height()), self.image)
        painter.restore()


@dataclass(frozen=True)
class _Together:
    steps: tuple[Step, ...]
    transform: QTransform | None
    clip: QPainterPath | None
    opacity: float

    def replay(self, painter: QPainter, ratio: float) -> None:
        painter.save()
        if self.transform is not None:
            painter.setTransform(self.transform, combine=True)
        if self.clip is not None:
            painter.setClipPath(self.clip, Qt.ClipOperation.IntersectClip)
        painter.setOpacity(painter.opacity() * self.opacity)
        for step in self.steps:
            step.replay(painter, ratio)
        painter.restore()


def _group(group: Group) -> _Together:
    return _Together(
        prepare(group.nodes).steps,
        placement_transform(group.placement) if group.placement else None,
        outline_path((group.clip,)) if group.clip else None,
        group.opacity,
    )


def _lettering(text: Text) -> Step:
    dx, dy = text_origin(text)
    letters = text_path(text.text, text.height, text.face)
    letters.translate(dx, dy)
    turned = QTransform().rotate(text.rotation).map(letters)
    if text.measured is Measured.PIXELS:
        return _PixelText(QPointF(text.at.x, text.at.y), turned, brush(text.colour), _rim(text))
    turned.translate(text.at.x, text.at.y)
    letters_alone = _Shape(turned, brush(text.colour), QPen(Qt.PenStyle.NoPen))
    if text.rim is None:
        return letters_alone
    return _Together((_Shape(turned, QBrush(Qt.BrushStyle.NoBrush), _rim(text)), letters_alone), None, None, 1.0)


def _rim(text: Text) -> QPen:
    """Half of its line lies under the letters."""
    if text.rim is None:
        return QPen(Qt.PenStyle.NoPen)
    made = QPen(colour(text.rim), 2 * RIM * text.height)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made


def pixels_per_mm(transform: QTransform) -> float:
    """How many device pixels one mm along x becomes."""
    return float((transform.m11() ** 2 + transform.m12() ** 2) ** 0.5)


def placement_transform(placement: Placement) -> QTransform:
    """The same map as `placement.point`."""
    cosine, sine = direction(placement.rotation)
    sign = -1.0 if placement.mirrored else 1.0
    return QTransform(sign * cosine, sign * sine, -sine, cosine, placement.x, placement.y)


def colour(of: Colour) -> QColor:
    return QColor(of.red, of.green, of.blue, of.opacity)


def brush(fill: Fill | None) -> QBrush:
    if fill is None:
        return QBrush(Qt.BrushStyle.NoBrush)
    if isinstance(fill, LinearGradient):
        return _graded(QLinearGradient(*fill.start, *fill.end), fill)
    if isinstance(fill, RadialGradient):
        return _graded(QRadialGradient(QPointF(*fill.centre), fill.radius), fill)
    return QBrush(colour(fill))


def _graded(gradient: QLinearGradient | QRadialGradient, fill: LinearGradient | RadialGradient) -> QBrush:
    for stop in fill.stops:
        gradient.setColorAt(stop.share, colour(stop.colour))
    return QBrush(gradient)


def pen(of: Pen | None) -> QPen:
    if of is None:
        return QPen(Qt.PenStyle.NoPen)
    made = QPen(colour(of.colour), of.width)
    made.setCosmetic(of.measured is Measured.PIXELS)
    made.setCapStyle(_CAPS[of.cap])
    made.setJoinStyle(Qt.PenJoinStyle.MiterJoin if of.cap is Cap.FLAT else Qt.PenJoinStyle.RoundJoin)
    if of.dashes and of.width > 0:
        made.setDashPattern([dash / of.width for dash in of.dashes])
    return made


def _on_device(stroke: QPen, ratio: float) -> QPen:
    """A pen measured in pixels is meant in logical ones; Qt takes its width for the device's own."""
    if not stroke.isCosmetic():
        return stroke
    wide = QPen(stroke)
    wide.setWidthF(stroke.widthF() * ratio)
    return wide


def outline_path(outlines: tuple[Contour | Track, ...]) -> QPainterPath:
    """One path of all outlines, filled by the even-odd rule."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for outline in outlines:
        if isinstance(outline, Rounded) and outline.is_circle:
            path.addEllipse(QPointF(*outline.core[0]), outline.radius, outline.radius)
        else:
            _add_segments(path, outline)
    return path


def _add_segments(path: QPainterPath, outline: Contour | Track) -> None:
    segments = outline.segments
    path.moveTo(*segments[0].start)
    for segment in segments:
        if isinstance(segment, Arc):
            _add_arc(path, segment)
        else:
            path.lineTo(*segment.end)
    if isinstance(outline, Chain | Rounded):
        path.closeSubpath()


def _add_arc(path: QPainterPath, arc: Arc) -> None:
    """Curves that begin and end where the arc does: Qt's own arc begins a rounding beside it, and the joint is seen."""
    pieces = max(1, math.ceil(abs(arc.sweep) / _WIDEST_CURVE))
    turn = arc.sweep / pieces
    reach = 4.0 / 3.0 * math.tan(turn / 4.0) * arc.radius
    for piece in range(pieces):
        angle = arc.start_angle + piece * turn
        start = arc.at(piece / pieces)
        end = arc.end if piece == pieces - 1 else arc.at((piece + 1) / pieces)
        first = start.moved(-reach * math.sin(angle), reach * math.cos(angle))
        second = end.moved(reach * math.sin(angle + turn), -reach * math.cos(angle + turn))
        path.cubicTo(*first, *second, *end)
