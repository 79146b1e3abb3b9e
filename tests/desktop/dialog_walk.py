"""Opens every dialog that an action leads to, and gives each to a function before it is closed again."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QMessageBox

from panelcad.desktop.actions import all_actions
from panelcad.desktop.main_window import MainWindow

Look = Callable[[str, QDialog], None]
_OF_THE_PLATFORM = (QFileDialog, QMessageBox)


def dialog_actions() -> Iterator[str]:
    """Ids of the actions that ask something first: their titles end with dots."""
    return (action.id for action in all_actions() if action.title.endswith("…"))


def walk_dialog(window: MainWindow, action_id: str, look: Look) -> bool:
    """Do the action; look at the first dialog it opens, and close all that it opens. False where none opened."""
    walk = _Walk(action_id, look)
    walk.begin()
    window.menus.actions[action_id].trigger()
    for _ in range(5):
        QApplication.processEvents()
    walk.end()
    return walk.has_opened


class _Walk:
    """Waits beside the event loop of the dialogs of one action, and for no longer than that action."""

    def __init__(self, action_id: str, look: Look) -> None:
        self._action_id, self._look = action_id, look
        self._timer = QTimer()
        self._timer.setInterval(5)
        self._timer.timeout.connect(self._see)
        self.has_opened = False

    def begin(self) -> None:
        self._timer.start()

    def end(self) -> None:
        self._timer.stop()

    def _see(self) -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None or not dialog.isVisible():
            return
        self._timer.stop()
        try:
            if isinstance(dialog, QDialog) and not self.has_opened and not isinstance(dialog, _OF_THE_PLATFORM):
                QApplication.processEvents()
                self._look(self._action_id, dialog)
            self.has_opened = True
        finally:
            dialog.reject() if isinstance(dialog, QDialog) else dialog.close()
            self._timer.start()
