"""Small handles over the picture that a pointer can take hold of; they keep their size on the screen."""

from dataclasses import dataclass
from enum import Enum
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QGraphicsItem, QGraphicsScene, QStyleOptionGraphicsItem, QWidget

from panelcad.desktop.theme import Theme
from panelcad.geometry.point import Point, distance

_HEIGHT: Final = 1_000_008.0
_HALF: Final = 5.0
TURN_RADIUS: Final = 9.0
REACH_PX: Final = 9.0


class Grip(Enum):
    """A square stands for a corner, a disc for the middle of an edge or of a rounding, a bent arrow for a turn."""

    CORNER = "corner"
    MIDDLE = "middle"
    ROUNDING = "rounding"
    TURN = "turn"


@dataclass(frozen=True)
class Handle:
    """`at` is a place of the picture in mm; `number` says which corner or edge it is."""

    grip: Grip
    number: int
    at: Point
    is_picked: bool = False


class Handles:
    def __init__(self, scene: QGraphicsScene) -> None:
        self._scene = scene
        self._shown: dict[Handle, HandleItem] = {}

    @property
    def shown(self) -> tuple[Handle, ...]:
        return tuple(self._shown)

    def show(self, handles: tuple[Handle, ...], theme: Theme) -> None:
        """These handles and no others; the ones that stay are kept as they are."""
        for handle in self._shown.keys() - set(handles):
            self._scene.removeItem(self._shown.pop(handle))
        for handle in handles:
            if handle not in self._shown:
                item = HandleItem(handle, QColor(theme.selection), QColor(theme.raised))
                item.setPos(QPointF(*handle.at))
                item.setZValue(_HEIGHT)
                self._scene.addItem(item)
                self._shown[handle] = item

    def clear(self) -> None:
        for item in self._shown.values():
            self._scene.removeItem(item)
        self._shown.clear()

    def at(self, place: Point, mm_per_pixel: float) -> Handle | None:
        """The handle that a pointer at this place of the picture takes hold of; corners before middles."""
        near = [handle for handle in self._shown if distance(handle.at, place) <= REACH_PX * mm_per_pixel]
        return min(near, key=lambda handle: (handle.grip is not Grip.CORNER, distance(handle.at, place)), default=None)


class HandleItem(QGraphicsItem):
    def __init__(self, handle: Handle, ink: QColor, ground: QColor) -> None:
        super().__init__()
        self._handle, self._ink, self._ground = handle, ink, ground
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)

    def boundingRect(self) -> QRectF:
        reach = (TURN_RADIUS if self._handle.grip is Grip.TURN else _HALF) + 2.0
        return QRectF(-reach, -reach, 2 * reach, 2 * reach)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self._ink, 1.6))
        painter.setBrush(self._ink if self._handle.is_picked else self._ground)
        if self._handle.grip is Grip.TURN:
            _paint_turn(painter, self._ink)
        elif self._handle.grip is Grip.CORNER:
            painter.drawRect(QRectF(-_HALF, -_HALF, 2 * _HALF, 2 * _HALF))
        else:
            painter.drawEllipse(QPointF(0.0, 0.0), _HALF - 0.8, _HALF - 0.8)


def _paint_turn(painter: QPainter, ink: QColor) -> None:
    """A disc with an arrow bent three quarters round."""
    painter.drawEllipse(QPointF(0.0, 0.0), TURN_RADIUS, TURN_RADIUS)
    radius, head = TURN_RADIUS * 0.52, TURN_RADIUS * 0.42
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(QRectF(-radius, -radius, 2 * radius, 2 * radius), 90 * 16, -270 * 16)
    painter.setBrush(ink)
    painter.setPen(Qt.PenStyle.NoPen)
    tip = QPointF(-head * 1.2, -radius)
    painter.drawPolygon(QPolygonF([tip, QPointF(head * 0.2, -radius - head), QPointF(head * 0.2, -radius + head)]))
