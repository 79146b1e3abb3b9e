"""A place for words that change with every move of the pointer."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QWidget


class SteadyPlace(QWidget):
    """Holds a label of its own size, whatever the label says: other words never make a window be laid out anew."""

    def __init__(self, label: QLabel, least_width: int) -> None:
        super().__init__()
        self._label = label
        label.setParent(self)
        self.setMinimumWidth(least_width)

    def sizeHint(self) -> QSize:
        return QSize(self.minimumWidth(), self._label.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._label.setFixedSize(self.size())

    def make_room(self) -> None:
        """Widen for what the label says now. It never narrows again: words that come and go shift nothing."""
        self.setMinimumWidth(max(self.minimumWidth(), self._label.sizeHint().width()))
