"""A photograph with four markers that are put on places one has measured."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from panelcad.geometry.point import Point

_STEPS: Final = {
    int(Qt.Key.Key_Left): (-1.0, 0.0),
    int(Qt.Key.Key_Right): (1.0, 0.0),
    int(Qt.Key.Key_Up): (0.0, -1.0),
    int(Qt.Key.Key_Down): (0.0, 1.0),
}
_START: Final = ((0.15, 0.85), (0.85, 0.85), (0.85, 0.15), (0.15, 0.15))


class PhotoBoard(QWidget):
    """`moved` when a marker was put down elsewhere. Keys 1 to 4 choose a marker, arrows move it by a pixel."""

    moved = Signal()

    def __init__(self, image: QImage) -> None:
        super().__init__()
        self.image = image
        self.markers = [QPointF(x * image.width(), y * image.height()) for x, y in _START]
        self.current = 0
        self.setMinimumSize(560, 360)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setAccessibleName("Photograph with four markers")
        self.setAccessibleDescription("Keys 1 to 4 choose a marker, arrow keys move it by one pixel")

    @property
    def pixels(self) -> tuple[Point, ...]:
        """Where the markers are, in pixels of the photograph."""
        return tuple(Point(marker.x(), marker.y()) for marker in self.markers)

    @property
    def _area(self) -> QRectF:
        """The part of the widget that the photograph fills."""
        size = QSizeF(self.image.size()).scaled(QSizeF(self.size()), Qt.AspectRatioMode.KeepAspectRatio)
        return QRectF(
            (self.width() - size.width()) / 2, (self.height() - size.height()) / 2, size.width(), size.height()
        )

    def to_widget(self, pixel: QPointF) -> QPointF:
        area = self._area
        scale = area.width() / self.image.width()
        return QPointF(area.left() + pixel.x() * scale, area.top() + pixel.y() * scale)

    def _to_pixel(self, at: QPointF) -> QPointF:
        area = self._area
        scale = self.image.width() / area.width()
        x, y = (at.x() - area.left()) * scale, (at.y() - area.top()) * scale
        return QPointF(min(max(x, 0.0), self.image.width()), min(max(y, 0.0), self.image.height()))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(self._area, self.image)
        for i, marker in enumerate(self.markers):
            self._paint_marker(painter, i, self.to_widget(marker))
        painter.end()

    def _paint_marker(self, painter: QPainter, number: int, at: QPointF) -> None:
        colour = QColor("#ffd24d" if number == self.current else "#ffffff")
        for pen in (QPen(QColor(0, 0, 0, 180), 4.0), QPen(colour, 1.6)):
            painter.setPen(pen)
            painter.drawLine(at + QPointF(-12, 0), at + QPointF(12, 0))
            painter.drawLine(at + QPointF(0, -12), at + QPointF(0, 12))
        painter.fillRect(QRectF(at.x() + 6, at.y() - 22, 16, 16), QColor(0, 0, 0, 190))
        painter.setPen(colour)
        painter.drawText(QRectF(at.x() + 6, at.y() - 22, 16, 16), Qt.AlignmentFlag.AlignCenter, str(number + 1))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        spots = [self.to_widget(marker) - event.position() for marker in self.markers]
        self.current = min(range(4), key=lambda i: spots[i].manhattanLength())
        self._move_to(self._to_pixel(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._move_to(self._to_pixel(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: ARG002
        self.moved.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.text() in {"1", "2", "3", "4"}:
            self.current = int(event.text()) - 1
            self.update()
        elif event.key() in _STEPS:
            self._move_to(self.markers[self.current] + QPointF(*_STEPS[event.key()]))
            self.moved.emit()
        else:
            super().keyPressEvent(event)

    def _move_to(self, pixel: QPointF) -> None:
        self.markers[self.current] = pixel
        self.update()
