"""The title of a pane: its name, a button that gives it a window of its own or takes it back, one that closes it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDockWidget, QHBoxLayout, QLabel, QSizePolicy, QToolButton, QWidget

_OWN_WINDOW = "In a window of its own"
_BACK = "Back into the window"


class PaneTitle(QWidget):
    """Dragging and a double click stay the dock's. The keyboard has the pane's key and the View menu instead."""

    def __init__(self, dock: QDockWidget, keys: str) -> None:
        super().__init__(dock)
        self._dock = dock
        self.setObjectName("pane-title")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        name = QLabel(dock.windowTitle())
        name.setProperty("role", "heading")
        name.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.own_window = _button("pane-float")
        self.own_window.clicked.connect(lambda: dock.setFloating(not dock.isFloating()))
        self.close_button = _button("pane-close")
        self.close_button.clicked.connect(dock.close)
        _say(self.close_button, f"Close {dock.windowTitle()} ({keys})")
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 4, 6, 4)
        row.setSpacing(2)
        row.addWidget(name, 1)
        row.addWidget(self.own_window)
        row.addWidget(self.close_button)
        dock.topLevelChanged.connect(self._say_where)
        self._say_where(is_apart=dock.isFloating())

    def _say_where(self, is_apart: bool) -> None:  # noqa: FBT001 - Qt's own signal
        _say(self.own_window, _BACK if is_apart else _OWN_WINDOW)


def _button(role: str) -> QToolButton:
    button = QToolButton()
    button.setProperty("role", role)
    button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    return button


def _say(button: QToolButton, words: str) -> None:
    button.setToolTip(words)
    button.setAccessibleName(words)
