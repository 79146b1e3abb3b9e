"""The tool bar: icons at the left, choosers at the right; in a narrow window the choosers' words give way first."""

from typing import Final

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QToolBar, QToolButton, QWidget

from panelcad.desktop.choosers import Chooser

_OVERFLOW: Final = "qt_toolbar_ext_button"
"""The name that Qt gives the button behind which it puts what has no room."""


class Bar(QToolBar):
    def __init__(self, choosers: tuple[Chooser, ...]) -> None:
        super().__init__("Tools")
        self._choosers = choosers
        self.setObjectName("bar")
        self.setMovable(False)
        self.setIconSize(QSize(20, 20))
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonIconOnly)
        self._name_overflow()

    def _name_overflow(self) -> None:
        """What has no room is reached by the keyboard too."""
        button = self.findChild(QToolButton, _OVERFLOW)
        if button is not None:
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            button.setAccessibleName("More of the tool bar")
            button.setToolTip("More of the tool bar")

    def add_choosers(self) -> None:
        """The choosers, at the right of what is there."""
        room = QWidget()
        room.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.addWidget(room)
        for chooser in self._choosers:
            chooser.on_bar = self.addWidget(chooser)
            chooser.refresh()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self._fit()
        super().resizeEvent(event)

    def event(self, event: QEvent) -> bool:
        """Another chooser, or a longer name, asks for other room."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest:
            self._fit()
        return done

    def _fit(self) -> None:
        """Words are shown where everything has room with them."""
        shown = [chooser for chooser in self._choosers if chooser.on_bar is not None and chooser.on_bar.isVisible()]
        icons = sum(
            widget.sizeHint().width()
            for action in self.actions()
            if (widget := self.widgetForAction(action)) is not None and widget not in self._choosers
        )
        layout = self.layout()
        gaps = (len(self.actions()) + 1) * (layout.spacing() if layout is not None else 0)
        wanted = icons + gaps + sum(chooser.whole_width() for chooser in shown)
        for chooser in self._choosers:
            chooser.show_word(shown=wanted <= self.width())
