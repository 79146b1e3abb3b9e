"""Dialogs that fit the screen they are on: no larger than it, wholly on it, and scrolled where it is too low."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QFrame, QScrollArea, QWidget

from panelcad.desktop.screens import screen_of

_FRAME: Final = QSize(16, 48)
"""Room that the window manager's frame takes around a dialog."""


class FittedDialog(QDialog):
    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._scrolled: QWidget | None = None
        self._area: QScrollArea | None = None

    def scrolled(self, form: QWidget) -> QScrollArea:
        """An area in which the form is scrolled up and down where it has not its whole height."""
        self._scrolled, self._area = form, QScrollArea()
        self._area.setWidget(form)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        return self._area

    def showEvent(self, event: QShowEvent) -> None:
        """Qt opens a dialog at two thirds of the screen at most; what asks for more gets it where there is room."""
        super().showEvent(event)
        if self._area is not None:
            self._area.setAccessibleName(self.windowTitle())
        self.resize(self.size().expandedTo(self._wanted()))
        self.fit()

    def done(self, result: int) -> None:
        """What was answered may be read until the event that opened the dialog is over; then it is gone."""
        super().done(result)
        self.deleteLater()

    def adjustSize(self) -> None:
        """As large as what it shows asks for, within the screen."""
        self.resize(self._wanted().expandedTo(self.minimumSize()).boundedTo(self._room().size()))

    def _wanted(self) -> QSize:
        """A scrolling area asks for a few lines only; this asks for all that it scrolls."""
        if self._area is None or self._scrolled is None:
            return self.sizeHint()
        form, area = self._scrolled.sizeHint(), self._area.sizeHint()
        bar = self._area.verticalScrollBar().sizeHint().width()
        self._area.setMinimumWidth(self._scrolled.minimumSizeHint().width() + bar)
        return self.sizeHint() + QSize(max(0, form.width() - area.width()), max(0, form.height() - area.height()))

    def grow(self) -> None:
        """Higher where what it shows has become higher, so that a sentence more scrolls nothing away."""
        layout = self.layout()
        if not self.isVisible() or layout is None:
            return
        layout.activate()
        scrolled = self._wanted().height() - self.sizeHint().height()
        height = layout.totalHeightForWidth(self.width()) if layout.hasHeightForWidth() else self.sizeHint().height()
        if height + scrolled > self.height():
            self.resize(self.width(), height + scrolled)
            self.fit()

    def fit(self) -> None:
        """Within the screen, as near as can be to where it is."""
        room = self._room()
        self.resize(self.size().boundedTo(room.size()))
        x = max(room.left(), min(self.x(), room.right() - self.width()))
        y = max(room.top(), min(self.y(), room.bottom() - self.height()))
        self.move(x, y)

    def _room(self) -> QRect:
        whole = screen_of(self).availableGeometry()
        return QRect(whole.topLeft(), whole.size() - _FRAME)
