"""The screen measured with a bank card or a ruler, so that 'true size' is true."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QVBoxLayout, QWidget

_CARD: Final = (85.60, 53.98)
"""A bank card in mm, ID-1 of ISO/IEC 7810."""
_FINE: Final = 200.0
"""Steps of the slider for one pixel a mm."""


class ScreenSize(QWidget):
    def __init__(self, pixels_per_mm: float) -> None:
        super().__init__()
        self._card = _Card(pixels_per_mm)
        words = QLabel("Hold a bank card to the screen and make the picture as large as the card.")
        words.setWordWrap(True)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName("Size of the card on the screen")
        self.slider.setRange(int(1.5 * _FINE), int(8 * _FINE))
        self.slider.setValue(round(pixels_per_mm * _FINE))
        self.slider.valueChanged.connect(self._resize)
        self.figure = QLabel()
        row = QHBoxLayout()
        row.addWidget(self.slider, 1)
        row.addWidget(self.figure)
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addWidget(self._card, 1)
        column.addLayout(row)
        self._resize(self.slider.value())

    @property
    def pixels_per_mm(self) -> float:
        return self.slider.value() / _FINE

    def _resize(self, steps: int) -> None:
        self._card.pixels_per_mm = steps / _FINE
        self._card.update()
        self.figure.setText(f"{steps / _FINE * 25.4:.0f} pixels an inch")


class _Card(QWidget):
    def __init__(self, pixels_per_mm: float) -> None:
        super().__init__()
        self.pixels_per_mm = pixels_per_mm

    def sizeHint(self) -> QSize:
        return QSize(420, 270)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        width, height = (side * self.pixels_per_mm for side in _CARD)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().text().color(), 1.0))
        painter.setBrush(self.palette().alternateBase())
        corner = 3.18 * self.pixels_per_mm
        painter.drawRoundedRect(QRectF(QPointF(8.5, 8.5), QPointF(8.5 + width, 8.5 + height)), corner, corner)
