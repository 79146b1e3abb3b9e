"""Opens every dialog that an action leads to, and gives each to a function before it is closed again."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QMessageBox, QWidget

from panelcad.desktop.actions import all_actions
from panelcad.desktop.main_window import MainWindow

Look = Callable[[str, QDialog], None]


def dialog_actions() -> Iterator[str]:
    """Ids of the actions that ask something first: their titles end with dots."""
    return (action.id for action in all_actions() if action.title.endswith("…"))


def walk_dialog(window: MainWindow, action_id: str, look: Look) -> bool:
    """Do the action; look at the first dialog it opens, and close all that it opens. False where none opened."""
    seen: list[QWidget] = []

    def wait(tries: int = 100) -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None:
            if tries:
                QTimer.singleShot(5, lambda: wait(tries - 1))
            return
        try:
            if isinstance(dialog, QDialog) and not seen and not isinstance(dialog, QFileDialog | QMessageBox):
                QApplication.processEvents()
                look(action_id, dialog)
            seen.append(dialog)
        finally:
            dialog.reject() if isinstance(dialog, QDialog) else dialog.close()
            QTimer.singleShot(5, lambda: wait(3))

    QTimer.singleShot(0, wait)
    window.menus.actions[action_id].trigger()
    for _ in range(5):
        QApplication.processEvents()
    return bool(seen)
