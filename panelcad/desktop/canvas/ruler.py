"""Rulers along the canvas, in the user's unit, from the datum; a mark follows the pointer."""

from enum import Enum
from typing import Final

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPixmap, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.theme import Theme
from panelcad.geometry.point import Point
from panelcad.units import LengthUnit

THICKNESS: Final = 24
_LEAST_LABEL_PX: Final = 56
_FROM_TICK: Final = 3.0
_LABEL_HEIGHT: Final = 14
_STEPS: Final = {
    LengthUnit.MM: ((1, 10), (2, 4), (5, 5), (10, 10), (20, 4), (50, 5), (100, 10), (200, 4), (500, 5), (1000, 10)),
    LengthUnit.INCH: ((0.125, 4), (0.25, 4), (0.5, 4), (1, 8), (2, 4), (5, 5), (10, 10), (20, 4), (50, 5)),
}
"""Labelled step in units, and into how many parts it is divided."""


class Edge(Enum):
    TOP = "top"
    LEFT = "left"


class Ruler(QWidget):
    def __init__(self, view: PanelView, edge: Edge, theme: Theme, unit: LengthUnit) -> None:
        super().__init__()
        self._view, self._edge, self._theme, self._unit = view, edge, theme, unit
        self._sign = 1.0
        self._at: Point | None = None
        self._scale: QPixmap | None = None
        self.values: list[tuple[str, float, float]] = []
        """The values that are shown, each with the pixels along the ruler between which it stands."""
        policy = QSizePolicy.Policy
        if edge is Edge.TOP:
            self.setSizePolicy(policy.Expanding, policy.Fixed)
        else:
            self.setSizePolicy(policy.Fixed, policy.Expanding)
        view.scrolled.connect(self._draw_anew)
        view.pointed.connect(self._point)
        view.left.connect(lambda: self._point(None))

    def sizeHint(self) -> QSize:
        return QSize(THICKNESS, THICKNESS)

    def take(self, theme: Theme, unit: LengthUnit, *, mirrored: bool) -> None:
        self._theme, self._unit = theme, unit
        self._sign = -1.0 if mirrored and self._edge is Edge.TOP else 1.0
        self._draw_anew()

    def _draw_anew(self) -> None:
        self._scale = None
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._draw_anew()

    def _point(self, at: Point | None) -> None:
        """Only where the pointer's mark was and where it is now is painted anew."""
        self.update(self._mark_area())
        self._at = at
        self.update(self._mark_area())

    def _mark_area(self) -> QRect:
        if self._at is None:
            return QRect()
        if self._edge is Edge.TOP:
            return QRect(int(self._pixel(self._at.x)) - 2, 0, 5, THICKNESS)
        return QRect(0, int(self._pixel(self._at.y)) - 2, THICKNESS, 5)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        """The scale is drawn once and kept; only the pointer's mark is drawn each time."""
        if self._scale is None:
            self._scale = self._drawn_scale()
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._scale)
        self._paint_pointer(painter)

    def _drawn_scale(self) -> QPixmap:
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(self.size() * ratio)
        pixmap.setDevicePixelRatio(ratio)
        painter = QPainter(pixmap)
        painter.fillRect(self.rect(), QColor(self._theme.ground))
        painter.setPen(QColor(self._theme.line))
        if self._edge is Edge.TOP:
            painter.drawLine(0, THICKNESS - 1, self.width(), THICKNESS - 1)
        else:
            painter.drawLine(THICKNESS - 1, 0, THICKNESS - 1, self.height())
        self._paint_scale(painter)
        painter.end()
        return pixmap

    def _paint_scale(self, painter: QPainter) -> None:
        font = painter.font()
        font.setPointSizeF(7.5)
        painter.setFont(font)
        self.values = []
        per_unit = self._view.zoom * self._unit.mm
        label, parts = self._step(per_unit)
        seen = self._view.seen()
        low, high = (seen[0], seen[2]) if self._edge is Edge.TOP else (seen[1], seen[3])
        first, last = int(low / self._unit.mm // label) - 1, int(high / self._unit.mm // label) + 1
        for number in range(first * parts, (last + 1) * parts):
            self._paint_tick(painter, number, label, parts)

    def _step(self, per_unit: float) -> tuple[float, int]:
        steps = _STEPS[self._unit]
        return next(((step, parts) for step, parts in steps if step * per_unit >= _LEAST_LABEL_PX), steps[-1])

    def _paint_tick(self, painter: QPainter, number: int, label: float, parts: int) -> None:
        value = number * label / parts
        pixel = self._pixel(value * self._unit.mm)
        is_labelled = number % parts == 0
        length = 10 if is_labelled else 6 if parts % 2 == 0 and number % (parts // 2) == 0 else 4
        painter.setPen(QColor(self._theme.faint))
        if self._edge is Edge.TOP:
            painter.drawLine(QPointF(pixel, THICKNESS - 1), QPointF(pixel, THICKNESS - 1 - length))
        else:
            painter.drawLine(QPointF(THICKNESS - 1, pixel), QPointF(THICKNESS - 1 - length, pixel))
        if is_labelled:
            self._paint_label(painter, pixel, f"{self._sign * value + 0.0:g}")

    def _paint_label(self, painter: QPainter, pixel: float, text: str) -> None:
        """Beside its tick, read to the right or upward; left out where the ruler's end would cut it off."""
        long = painter.fontMetrics().horizontalAdvance(text) + 1.0
        end = self.width() if self._edge is Edge.TOP else self.height()
        start = pixel + _FROM_TICK if self._edge is Edge.TOP else pixel - _FROM_TICK - long
        if not (0.0 <= pixel <= end and start >= 0.0 and start + long <= end):
            return
        painter.save()
        if self._edge is Edge.LEFT:
            painter.translate(0, start + long)
            painter.rotate(-90)
        else:
            painter.translate(start, 0)
        flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
        painter.drawText(QRectF(0, 0, long, _LABEL_HEIGHT), flags, text)
        painter.restore()
        self.values.append((text, start, start + long))

    def _pixel(self, mm: float) -> float:
        transform = self._view.viewportTransform()
        return transform.map(QPointF(mm, 0.0)).x() if self._edge is Edge.TOP else transform.map(QPointF(0.0, mm)).y()

    def _paint_pointer(self, painter: QPainter) -> None:
        if self._at is None:
            return
        painter.setPen(QPen(QColor(self._theme.guide), 1.0))
        if self._edge is Edge.TOP:
            pixel = self._pixel(self._at.x)
            painter.drawLine(QPointF(pixel, 0), QPointF(pixel, THICKNESS))
        else:
            pixel = self._pixel(self._at.y)
            painter.drawLine(QPointF(0, pixel), QPointF(THICKNESS, pixel))


def beside_rulers(view: PanelView, top: Ruler, left: Ruler) -> QGridLayout:
    """A view with its rulers along two sides."""
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setSpacing(0)
    grid.addWidget(top, 0, 1)
    grid.addWidget(left, 1, 0)
    grid.addWidget(view, 1, 1)
    return grid
