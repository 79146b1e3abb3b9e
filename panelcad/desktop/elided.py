"""A line of words that ends in dots where there is no room for all of them, and tells them whole at the pointer."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QLabel, QStyle, QStyleOption, QStylePainter

_LEAST = 24


class ElidedLabel(QLabel):
    def setText(self, text: str) -> None:
        super().setText(text)
        self._tell_whole()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._tell_whole()

    def minimumSizeHint(self) -> QSize:
        return QSize(_LEAST, super().minimumSizeHint().height())

    @property
    def shown_text(self) -> str:
        width = self.contentsRect().width() - 2 * self.margin()
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, width)

    def _tell_whole(self) -> None:
        self.setToolTip(self.text() if self.shown_text != self.text() else "")

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002 - the whole line is painted
        painter, option = QStylePainter(self), QStyleOption()
        option.initFrom(self)
        painter.drawPrimitive(QStyle.PrimitiveElement.PE_Widget, option)
        self.style().drawItemText(
            painter,
            self.contentsRect(),
            self.alignment(),
            self.palette(),
            self.isEnabled(),
            self.shown_text,
            self.foregroundRole(),
        )
        painter.end()
