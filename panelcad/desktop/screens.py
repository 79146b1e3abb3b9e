"""The screen a widget is on.

`QWidget.screen()` is not asked: in PySide 6 the screen it gives goes with the widget, and the next look at it ends the
program.
"""

from PySide6.QtGui import QGuiApplication, QScreen
from PySide6.QtWidgets import QWidget


def screen_of(widget: QWidget) -> QScreen:
    """The screen under the widget's middle, the first one where it is on none."""
    return QGuiApplication.screenAt(widget.geometry().center()) or QGuiApplication.primaryScreen()
