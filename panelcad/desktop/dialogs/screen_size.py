"""The screen measured with a bank card or a ruler, so that 'true size' is true."""

import math
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QVBoxLayout, QWidget

from panelcad.desktop.fields import LengthField
from panelcad.desktop.screens import screen_of
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit, format_length, parse_length

_CARD: Final = (85.60, 53.98)
"""A bank card in mm, ID-1 of ISO/IEC 7810."""
_LINE_PX: Final = 400
"""A line to lay a ruler along."""
_MARGIN: Final = 9
_AROUND: Final = QSize(80, 420)
"""What the dialog and its frame need around the card, and more."""
_FINE: Final = 200.0
"""Steps of the slider for one pixel a mm."""


class ScreenSize(QWidget):
    """`outgrown` when it asks for more room."""

    outgrown = Signal()

    def __init__(self, pixels_per_mm: float, unit: LengthUnit) -> None:
        super().__init__()
        self._unit = unit
        self._card = _Card(pixels_per_mm)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName("Size of the card on the screen")
        self.slider.setRange(int(1.5 * _FINE), int(8 * _FINE))
        self.slider.setValue(round(pixels_per_mm * _FINE))
        self.slider.valueChanged.connect(self._resize)
        self.slider.sliderReleased.connect(self._make_room)
        self.figure = QLabel()
        self.line = LengthField("Length of the line by a ruler", unit)
        self.line.committed.connect(self._take_length)
        self.refusal = QLabel()
        self.refusal.setProperty("role", "wrong")
        self.refusal.setWordWrap(True)
        self.line.refused.connect(self._refuse)
        column = QVBoxLayout(self)
        column.addWidget(_wrapped("Hold a bank card to the screen and make the picture as large as the card."))
        column.addWidget(self._card, 1)
        column.addLayout(_row(self.slider, self.figure))
        column.addWidget(_wrapped("Or lay a ruler along this line and say how long it is."))
        column.addWidget(_Line())
        column.addLayout(_row(self.line, QLabel(unit.value)))
        column.addWidget(self.refusal)
        self._resize(self.slider.value())

    @property
    def pixels_per_mm(self) -> float:
        return self.slider.value() / _FINE

    def _resize(self, steps: int) -> None:
        self._card.pixels_per_mm = steps / _FINE
        self._card.update()
        self.figure.setText(f"{steps / _FINE * LengthUnit.INCH.mm:.0f} pixels an inch")
        length = _LINE_PX / self.pixels_per_mm / self._unit.mm
        self.line.show_value(round(length, 2) * self._unit.mm)
        self.refusal.clear()
        if not self.slider.isSliderDown():
            self._make_room()

    def _make_room(self) -> None:
        """The card is seen whole; not while one drags, for the slider would run away under the pointer."""
        screen = screen_of(self).availableSize()
        self._card.setMinimumSize(self._card.sizeHint().boundedTo(screen - _AROUND))
        self.outgrown.emit()

    def take_typed(self) -> None:
        """Take what is being typed. Raises `UnreadableQuantity` where it is no length that the line can have."""
        if self.line.isModified():
            self.slider.setValue(self._steps(parse_length(self.line.text(), self._unit)))

    def _take_length(self, mm: float) -> None:
        try:
            self.slider.setValue(self._steps(mm))
        except UnreadableQuantity as fault:
            self._refuse(str(fault))

    def _refuse(self, words: str) -> None:
        self.refusal.setText(words)
        self.outgrown.emit()

    def _steps(self, mm: float) -> int:
        steps = round(_LINE_PX / mm * _FINE) if mm > 0 else 0
        if self.slider.minimum() <= steps <= self.slider.maximum():
            return steps
        ends = (_LINE_PX * _FINE / end for end in (self.slider.maximum(), self.slider.minimum()))
        least, most = (format_length(end, self._unit) for end in ends)
        raise UnreadableQuantity(self.line.text(), f"the length of the line, from {least} to {most}")


def _wrapped(words: str) -> QLabel:
    label = QLabel(words)
    label.setWordWrap(True)
    return label


def _row(wide: QWidget, narrow: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addWidget(wide, 1)
    row.addWidget(narrow)
    return row


class _Card(QWidget):
    def __init__(self, pixels_per_mm: float) -> None:
        super().__init__()
        self.pixels_per_mm = pixels_per_mm

    def sizeHint(self) -> QSize:
        return QSize(*(math.ceil(side * self.pixels_per_mm) + 2 * _MARGIN for side in _CARD))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        width, height = (side * self.pixels_per_mm for side in _CARD)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().text().color(), 1.0))
        painter.setBrush(self.palette().alternateBase())
        corner = 3.18 * self.pixels_per_mm
        painter.drawRoundedRect(QRectF(QPointF(8.5, 8.5), QPointF(8.5 + width, 8.5 + height)), corner, corner)


class _Line(QWidget):
    """As long on every screen in pixels; a stroke at each end says where it ends."""

    def sizeHint(self) -> QSize:
        return QSize(_LINE_PX + 2 * _MARGIN, 2 * _MARGIN)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        painter = QPainter(self)
        painter.setPen(QPen(self.palette().text().color(), 1.0))
        level = self.height() / 2
        start, end = QPointF(_MARGIN, level), QPointF(_MARGIN + _LINE_PX, level)
        up = QPointF(0.0, 0.7 * _MARGIN)
        for one, other in ((start, end), (start - up, start + up), (end - up, end + up)):
            painter.drawLine(one, other)
