"""A list that says in its own place why nothing is in it: nothing beside it moves when something comes or goes."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QListView

_AROUND = 10


class ListWithWords(QListView):
    """`words` are shown, and said as its description, while the list is empty."""

    def __init__(self) -> None:
        super().__init__()
        self._words = ""

    @property
    def words(self) -> str:
        return self._words

    def say(self, words: str) -> None:
        """Show these from now on; '' for none."""
        if words != self._words:
            self._words = words
            self.setAccessibleDescription(words)
            self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._words and self.model() is not None and not self.model().rowCount():
            painter = QPainter(self.viewport())
            painter.setPen(self.palette().color(QPalette.ColorRole.PlaceholderText))
            room = self.viewport().rect().adjusted(_AROUND, _AROUND, -_AROUND, -_AROUND)
            painter.drawText(room, Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap, self._words)
            painter.end()
