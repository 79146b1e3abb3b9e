"""What was done, newest first; a click goes back or forward to there."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.workbench import Workbench


class HistoryPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._document = bench.document
        self.list = QListWidget()
        self.list.setAccessibleName("What was done")
        self.list.setWordWrap(True)
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.list)
        self.list.itemClicked.connect(lambda entry: self.go_to(entry.data(Qt.ItemDataRole.UserRole)))
        self.list.itemActivated.connect(lambda entry: self.go_to(entry.data(Qt.ItemDataRole.UserRole)))
        for signal in (bench.document.changed, bench.document.replaced):
            signal.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Steps that can be redone stand above, slanted and called so; the current one is chosen."""
        done, undone = self._document.done, self._document.undone
        self.list.clear()
        steps = [*(step.title for step in done), *(step.title for step in reversed(undone))]
        for place, title in reversed([(0, "As it was opened"), *enumerate(steps, 1)]):
            is_undone = place > len(done)
            entry = QListWidgetItem(f"{title} (undone)" if is_undone else title)
            entry.setData(Qt.ItemDataRole.UserRole, place)
            if is_undone:
                font = entry.font()
                font.setItalic(True)
                entry.setFont(font)
            self.list.addItem(entry)
            if place == len(done):
                self.list.setCurrentItem(entry)

    def showEvent(self, event: QShowEvent) -> None:
        """The rows get the height that the window's style asks for."""
        super().showEvent(event)
        self.list.doItemsLayout()

    def go_to(self, place: int) -> None:
        """Undo or redo until so many steps are done."""
        while len(self._document.done) > place:
            self._document.undo()
        while len(self._document.done) < place:
            self._document.redo()
