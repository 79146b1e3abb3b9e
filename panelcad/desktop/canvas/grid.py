"""The grid over the sheet: thin lines at the step, or at a multiple of it where they would stand too close."""

from math import ceil, floor
from typing import Final

from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QColor, QPainter, QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from panelcad.desktop.canvas.overlay import thin

_LEAST_PX: Final = 9.0
_HEIGHT: Final = 0.5
"""Above the sheet, below its cuts."""


class GridItem(QGraphicsItem):
    def __init__(self) -> None:
        super().__init__()
        self._step = 0.0
        self._area = QPainterPath()
        self._colour = QColor()
        self.setZValue(_HEIGHT)
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)

    def lay(self, area: QPainterPath, step: float, colour: QColor) -> None:
        """Cover this area with lines `step` mm apart through the origin; none where it is 0."""
        self.prepareGeometryChange()
        self._area, self._step, self._colour = area, step, colour
        self.setVisible(step > 0)

    def boundingRect(self) -> QRectF:
        return self._area.boundingRect()

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002
        """Draw the lines of the part that is painted anew, and no others."""
        step = coarsened(self._step, painter.worldTransform().m11())
        part = option.exposedRect.intersected(self._area.boundingRect())
        painter.save()
        painter.setClipPath(self._area)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.setPen(thin(self._colour, 1.0, painter.device().devicePixelRatioF()))
        painter.drawLines(_lines(part, step))
        painter.restore()


def coarsened(step: float, pixels_per_mm: float) -> float:
    """The step, doubled until its lines stand far enough apart on the screen."""
    while step * pixels_per_mm < _LEAST_PX:
        step *= 2
    return step


def _lines(part: QRectF, step: float) -> list[QLineF]:
    upright = range(ceil(part.left() / step), floor(part.right() / step) + 1)
    level = range(ceil(part.top() / step), floor(part.bottom() / step) + 1)
    return [QLineF(i * step, part.top(), i * step, part.bottom()) for i in upright] + [
        QLineF(part.left(), i * step, part.right(), i * step) for i in level
    ]
