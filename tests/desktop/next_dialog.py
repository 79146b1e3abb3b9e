"""A person's answer to the dialog that opens next, given from inside its event loop."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog

_EVERY_MS = 10
_FOR_THE_KEYBOARD = 50
"""How often one looks whether the dialog has the keyboard before one goes on without: some platforms never say so."""
_FOR_ANOTHER = 500
"""How often one looks before something else that stands in the way is closed, so that no test hangs."""
_waiting: list["_Answer"] = []


def in_dialog(act: Callable[[Any], object], kind: type[QDialog] = QDialog) -> None:
    """Do this in the dialog of this kind that opens next; it is closed afterwards whatever happens.

    Said before the dialog is opened. A test at whose end it has not opened fails.
    """
    _waiting.append(_Answer(act, kind))


def stop_waiting() -> list[str]:
    """End what still waits; the kinds of dialogs that never opened."""
    never = [answer.kind.__name__ for answer in _waiting]
    for answer in tuple(_waiting):
        answer.stop()
    return never


class _Answer:
    def __init__(self, act: Callable[[Any], object], kind: type[QDialog]) -> None:
        self.kind = kind
        self._act = act
        self._tries = 0
        self._timer = QTimer()
        self._timer.setInterval(_EVERY_MS)
        self._timer.timeout.connect(self._look)
        self._timer.start()

    def stop(self) -> None:
        self._timer.stop()
        _waiting.remove(self)

    def _look(self) -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None:
            return
        self._tries += 1
        if isinstance(dialog, self.kind) and dialog.isVisible():
            if dialog.isActiveWindow() or self._tries > _FOR_THE_KEYBOARD:
                self.stop()
                self._answer(dialog)
        elif self._tries > _FOR_ANOTHER:
            self._close(dialog)

    def _answer(self, dialog: QDialog) -> None:
        try:
            self._act(dialog)
        finally:
            if dialog.isVisible():
                dialog.reject()

    def _close(self, other: Any) -> None:
        self.stop()
        other.close()
        raise AssertionError(f"'{other.windowTitle()}' was open instead of a {self.kind.__name__}")
