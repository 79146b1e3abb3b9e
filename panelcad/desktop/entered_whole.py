"""A figure is one word: the click that enters its field means all of it."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QLineEdit


def entered_whole(field: QLineEdit) -> None:
    """A click that enters the field selects all, so that what is typed stands for it; the next one sets the cursor."""
    field.installEventFilter(_EntersWhole(field))


class _EntersWhole(QObject):
    def __init__(self, field: QLineEdit) -> None:
        super().__init__(field)
        self._field = field
        self._is_entering = False
        """The mouse button that entered it is still down."""

    def eventFilter(self, _: QObject, event: QEvent) -> bool:
        if isinstance(event, QFocusEvent) and event.gotFocus():
            self._is_entering = event.reason() is Qt.FocusReason.MouseFocusReason
        elif event.type() is QEvent.Type.MouseButtonRelease and self._is_entering:
            self._is_entering = False
            if not self._field.hasSelectedText():
                self._field.selectAll()
        elif event.type() is QEvent.Type.MouseButtonDblClick:
            self._field.selectAll()
            return True
        return False
