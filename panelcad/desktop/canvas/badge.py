"""Signs that keep their size on the screen: finding marks, told apart by shape as well as colour."""

from enum import StrEnum
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

_RADIUS: Final = 9.0
_SMALL: Final = 6.5
"""Advice and what was accepted stand back behind what must be put right."""


class MarkKind(StrEnum):
    ERROR = "error"
    WARNING = "warning"
    ADVICE = "advice"
    ACCEPTED = "accepted"


def badge_path(kind: MarkKind, radius: float) -> QPainterPath:
    """An octagon for an error, a triangle for a warning, a disc for advice, a square for what was accepted."""
    path = QPainterPath()
    if kind is MarkKind.ERROR:
        cut = radius * 0.414
        path.addPolygon(_closed([(cut, -radius), (radius, -cut), (radius, cut), (cut, radius)], radius, cut))
    elif kind is MarkKind.WARNING:
        path.addPolygon(QPolygonF([QPointF(0, -radius), QPointF(radius, radius * 0.8), QPointF(-radius, radius * 0.8)]))
    elif kind is MarkKind.ADVICE:
        path.addEllipse(QPointF(0, 0), radius, radius)
    else:
        path.addRoundedRect(QRectF(-radius * 0.9, -radius * 0.9, radius * 1.8, radius * 1.8), 2, 2)
    path.closeSubpath()
    return path


def _closed(right_half: list[tuple[float, float]], radius: float, cut: float) -> QPolygonF:
    left_half = [(-cut, radius), (-radius, cut), (-radius, -cut), (-cut, -radius)]
    return QPolygonF([QPointF(x, y) for x, y in (*right_half, *left_half)])


def paint_badge(painter: QPainter, kind: MarkKind, radius: float, ground: QColor, ink: QColor) -> None:
    """The sign about the painter's origin: its shape, and an exclamation mark, an i or a tick."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(ink, 1.0))
    painter.setBrush(ground)
    painter.drawPath(badge_path(kind, radius))
    painter.setPen(QPen(ink, radius * 0.22, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    low = radius * (0.08 if kind is MarkKind.WARNING else 0.0)
    if kind is MarkKind.ACCEPTED:
        tick = [QPointF(-0.45, 0.0), QPointF(-0.1, 0.4), QPointF(0.5, -0.4)]
        painter.drawPolyline([p * radius for p in tick])
    elif kind is MarkKind.ADVICE:
        painter.drawLine(QPointF(0, -radius * 0.05), QPointF(0, radius * 0.5))
        painter.drawPoint(QPointF(0, -radius * 0.45))
    else:
        painter.drawLine(QPointF(0, -radius * 0.45 + low), QPointF(0, radius * 0.12 + low))
        painter.drawPoint(QPointF(0, radius * 0.5 + low))


class Badge(QGraphicsItem):
    def __init__(self, kind: MarkKind, ground: QColor, ink: QColor, *, stands_out: bool) -> None:
        super().__init__()
        self._kind, self._ground, self._ink = kind, ground, ink
        plain = _RADIUS if kind in {MarkKind.ERROR, MarkKind.WARNING} else _SMALL
        self._radius = plain * (1.35 if stands_out else 1.0)
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)

    def boundingRect(self) -> QRectF:
        reach = self._radius + 1.5
        return QRectF(-reach, -reach, 2 * reach, 2 * reach)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002
        paint_badge(painter, self._kind, self._radius, self._ground, self._ink)
