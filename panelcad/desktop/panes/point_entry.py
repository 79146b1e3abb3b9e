"""A figure of the next point: read when the point is set; empty, it stands for what its placeholder says."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from panelcad.errors import UnreadableQuantity

_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class PointEntry(QLineEdit):
    """Signals: `edited` at each key, `entered` with Enter; when it is empty, `taken_back` with Backspace and `left`
    with Escape.
    """

    edited = Signal()
    entered = Signal()
    taken_back = Signal()
    left = Signal()

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setMinimumHeight(self.sizeHint().height())
        self.textEdited.connect(lambda _: self.edited.emit())

    def value(self, read: Callable[[str], float], default: float) -> float:
        """What is typed, or the default where nothing is. Raises `UnreadableQuantity`."""
        if not self.text().strip():
            return default
        try:
            return read(self.text())
        except UnreadableQuantity as fault:
            raise fault.of(self.accessibleName()) from None

    def begin(self, text: str) -> None:
        """Take the focus with the first key of a figure."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.setText(text)
        self.edited.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in _ENTERS:
            self.entered.emit()
        elif key == Qt.Key.Key_Backspace and not self.text():
            self.taken_back.emit()
        elif key == Qt.Key.Key_Escape:
            if self.text():
                self.clear()
                self.edited.emit()
            else:
                self.left.emit()
        else:
            super().keyPressEvent(event)
