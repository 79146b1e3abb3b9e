"""Whom a single key is for: a drawing leaves it to the tools, everything else keeps it for itself."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

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


def stays_in(focus: QWidget | None, event: QKeyEvent) -> bool:
    """Whether this key is no shortcut while the keyboard is there."""
    if focus is None or focus.isWindow() or isinstance(focus, PanelView):
        return False
    if event.key() == Qt.Key.Key_Delete and not event.modifiers():
        return not focus.property(_LISTS_THE_PANEL)
    return is_single(event)
