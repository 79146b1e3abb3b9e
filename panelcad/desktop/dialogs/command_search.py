"""Find an action by words and do it."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.menus import Menus
from panelcad.library.search import Index

_ROLE = Qt.ItemDataRole.UserRole


class CommandSearch(FittedDialog):
    """A line to type in and the actions that suit it; what cannot be done now is faint."""

    def __init__(self, menus: Menus, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Find an action")
        self.setMinimumSize(460, 380)
        self._menus = menus
        self._index = Index(
            (action.id, action.plain_title, f"{action.menu.replace('&', '')} {action.hint}")
            for action in menus.table.values()
        )
        self.words = QLineEdit()
        self.words.setPlaceholderText("What do you want to do?")
        self.words.setAccessibleName("What do you want to do?")
        self.list = QListWidget()
        self.list.setAccessibleName("Actions")
        column = QVBoxLayout(self)
        column.addWidget(self.words)
        column.addWidget(self.list)
        explained(self, Dialog.FIND_ACTION)
        self.words.textChanged.connect(self.refresh)
        self.words.installEventFilter(self)
        self.list.itemActivated.connect(lambda _: self._do())
        self.refresh()

    def refresh(self) -> None:
        self.list.clear()
        for name in self._index.search(self.words.text()):
            action = self._menus.table[name]
            keys = f"    {action.keys}" if action.keys else ""
            entry = QListWidgetItem(f"{action.menu.replace('&', '')}: {action.plain_title}{keys}")
            entry.setData(_ROLE, name)
            entry.setToolTip(action.hint)
            if not self._menus.actions[name].isEnabled():
                entry.setForeground(self.palette().placeholderText())
            self.list.addItem(entry)
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
        entry = self.list.currentItem()
        if entry is not None:
            self.accept()
            self._menus.run(entry.data(_ROLE))


def find_action(menus: Menus, parent: QWidget) -> None:
    CommandSearch(menus, parent).exec()
