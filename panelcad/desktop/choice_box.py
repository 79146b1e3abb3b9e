"""A box to choose from that shortens its words where it is narrow, tells them whole at the pointer, and leaves the
wheel to what it stands in.
"""

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QStyle, QStyleOptionComboBox, QStylePainter, QToolTip, QWidget

_LEAST_LETTERS = 6
_SLACK = 4


class ChoiceBox(QComboBox):
    """As wide as its longest entry where there is room, and never wider than what it stands in.

    `closed` when its list was open and is no longer.
    """

    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        """Its longest entry whole, in the style it has now."""
        hint = super().sizeHint()
        longest = max((self.fontMetrics().horizontalAdvance(self.itemText(i)) for i in range(self.count())), default=0)
        arrow = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, self._option(), QStyle.SubControl.SC_ComboBoxEditField, self
        )
        return hint.expandedTo(QSize(longest + self.width() - arrow.width() + _SLACK, hint.height()))

    def minimumSizeHint(self) -> QSize:
        words = QSize(self.fontMetrics().horizontalAdvance("n" * _LEAST_LETTERS), self.fontMetrics().height())
        kind = QStyle.ContentsType.CT_ComboBox
        least = self.style().sizeFromContents(kind, self._option(), words, self)
        return QSize(least.width(), self.sizeHint().height())

    @property
    def shown_text(self) -> str:
        """What of the chosen entry's words there is room for."""
        option = self._option()
        room = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, option, QStyle.SubControl.SC_ComboBoxEditField, self
        )
        return self.fontMetrics().elidedText(self.currentText(), Qt.TextElideMode.ElideRight, room.width() - 2)

    def _option(self) -> QStyleOptionComboBox:
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        return option

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.isEditable():
            super().paintEvent(event)
            return
        painter = QStylePainter(self)
        option = self._option()
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        option.currentText = self.shown_text
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()

    def hidePopup(self) -> None:
        was_open = self.view().isVisible()
        super().hidePopup()
        if was_open:
            self.closed.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll the form; a choice is made by a click or by keys."""
        event.ignore()

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and not self.toolTip() and self.shown_text != self.currentText():
            QToolTip.showText(event.globalPos(), self.currentText(), self)
            return True
        return super().event(event)
