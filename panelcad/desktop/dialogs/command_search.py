"""Find an action, a pane or a section of help by words, and do or show it."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout

from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.findable import Findable, Finder
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.window_parts import Parts


class CommandSearch(FittedDialog):
    """A line to type in and what suits it; what cannot be done now says so and is faint."""

    def __init__(self, parts: Parts) -> None:
        super().__init__(parts.window)
        self.setWindowTitle("Find an action")
        self.setMinimumSize(460, 380)
        self._finder = Finder(parts)
        self._found: list[Findable] = []
        self.words = QLineEdit()
        self.words.setPlaceholderText("What do you want to do, or to know?")
        self.words.setAccessibleName("What do you want to do, or to know?")
        self.list = QListWidget()
        self.list.setAccessibleName("Actions, panes and help")
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.none = QLabel("Nothing suits these words. Try fewer, or others.")
        self.none.setProperty("role", "faint")
        self.none.setWordWrap(True)
        self.why_not = QLabel()
        self.why_not.setProperty("role", "wrong")
        self.why_not.setWordWrap(True)
        column = QVBoxLayout(self)
        column.addWidget(self.words)
        column.addWidget(self.none)
        column.addWidget(self.list)
        column.addWidget(self.why_not)
        explained(self, Dialog.FIND_ACTION)
        self.words.textChanged.connect(self.refresh)
        self.words.installEventFilter(self)
        self.list.itemActivated.connect(lambda _: self._do())
        self.refresh()

    def refresh(self) -> None:
        self._found = self._finder.find(self.words.text())
        self.list.clear()
        for found in self._found:
            entry = QListWidgetItem(found.shown if found.enabled else f"{found.shown}    (not now)")
            entry.setToolTip(found.hint or found.shown)
            if not found.enabled:
                entry.setForeground(self.palette().placeholderText())
            self.list.addItem(entry)
        self.none.setVisible(not self._found)
        self._say_why_not("")
        self.list.setCurrentRow(0)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Up and down walk through the list while one types; Enter does what is chosen."""
        if not isinstance(event, QKeyEvent) or event.type() is not QEvent.Type.KeyPress:
            return super().eventFilter(watched, event)
        steps = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}
        key = Qt.Key(event.key())
        if key in steps:
            row = self.list.currentRow() + steps[key]
            self.list.setCurrentRow(min(max(row, 0), self.list.count() - 1))
            return True
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._do()
            return True
        return super().eventFilter(watched, event)

    def _do(self) -> None:
        row = self.list.currentRow()
        if not 0 <= row < len(self._found):
            return
        if not self._found[row].enabled:
            self._say_why_not(self._found[row].why_not)
            return
        self.accept()
        self._found[row].run()

    def _say_why_not(self, words: str) -> None:
        self.why_not.setText(words)
        self.why_not.setVisible(bool(words))


def find_action(parts: Parts) -> None:
    CommandSearch(parts).exec()
