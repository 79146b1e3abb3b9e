"""Whom a single key is for: a drawing leaves it to the tools, everything else keeps it for itself."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QWidget

from panelcad.desktop.canvas.view import PanelView

_FIRST_THAT_WRITES_NOTHING = Qt.Key.Key_Escape
_WITH_OTHERS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier
_LISTS_THE_PANEL = "lists-the-panel"


def lists_the_panel(widget: QWidget) -> None:
    """What is chosen in this list is what is selected on the panel, so that Delete means it here too."""
    widget.setProperty(_LISTS_THE_PANEL, True)


def is_single(event: QKeyEvent) -> bool:
    """A key that writes a letter or figure, with Shift or without it."""
    return event.key() < _FIRST_THAT_WRITES_NOTHING and not event.modifiers() & _WITH_OTHERS


def keep_from_shortcuts(event: QEvent) -> bool:
    """Whether the event asked if a key is a shortcut, and was told that it is the widget's with the keyboard."""
    if event.type() is not QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
        return False
    if stays_in(QApplication.focusWidget(), event):
        event.accept()
        return True
    return False


def stays_in(focus: QWidget | None, event: QKeyEvent) -> bool:
    """Whether this key is no shortcut while the keyboard is there."""
    if focus is None or focus.isWindow() or isinstance(focus, PanelView):
        return False
    if event.key() == Qt.Key.Key_Delete and not event.modifiers():
        return not focus.property(_LISTS_THE_PANEL)
    return is_single(event)
