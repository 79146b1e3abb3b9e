"""A person's hands: mouse and keys on the canvas, places given in mm of the plate."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.main_window import MainWindow
from panelcad.geometry.point import Point

LEFT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton
NONE = Qt.KeyboardModifier.NoModifier


class Hands:
    def __init__(self, window: MainWindow) -> None:
        self.window = window
        self.view = window.bench.view

    def pixel(self, x: float, y: float) -> QPoint:
        """Where a place of the plate is on the viewport."""
        at = self.window.bench.stage.to_picture(Point(x, y))
        return self.view.mapFromScene(QPointF(at.x, at.y))

    def _mouse(self, kind, at: QPoint, button, buttons, held) -> None:
        viewport = self.view.viewport()
        event = QMouseEvent(kind, QPointF(at), QPointF(viewport.mapToGlobal(at)), button, buttons, held)
        QApplication.sendEvent(viewport, event)

    def press(self, x, y, button=LEFT, held=NONE) -> None:
        self._mouse(QEvent.Type.MouseButtonPress, self.pixel(x, y), button, button, held)

    def move(self, x, y, button=LEFT, held=NONE) -> None:
        self._mouse(QEvent.Type.MouseMove, self.pixel(x, y), Qt.MouseButton.NoButton, button, held)

    def release(self, x, y, button=LEFT, held=NONE) -> None:
        self._mouse(QEvent.Type.MouseButtonRelease, self.pixel(x, y), button, Qt.MouseButton.NoButton, held)

    def hover(self, x, y) -> None:
        self._mouse(QEvent.Type.MouseMove, self.pixel(x, y), Qt.MouseButton.NoButton, Qt.MouseButton.NoButton, NONE)

    def click(self, x, y, held=NONE) -> None:
        self.press(x, y, held=held)
        self.release(x, y, held=held)

    def double_click(self, x, y) -> None:
        self.click(x, y)
        self.press_again(x, y)
        self.release(x, y)

    def press_again(self, x, y) -> None:
        """So soon after a click that it is the second press of a double click."""
        self._mouse(QEvent.Type.MouseButtonDblClick, self.pixel(x, y), LEFT, LEFT, NONE)

    def drag(self, start, end, held=NONE, button=LEFT, steps=4) -> None:
        """Press, move in steps, release."""
        self.press(*start, button=button, held=held)
        for i in range(1, steps + 1):
            share = i / steps
            x, y = (a + (b - a) * share for a, b in zip(start, end, strict=True))
            self.move(x, y, button=button, held=held)
        self.release(*end, button=button, held=held)

    def wheel(self, x, y, notches, held=NONE) -> None:
        viewport, at = self.view.viewport(), self.pixel(x, y)
        event = QWheelEvent(
            QPointF(at),
            QPointF(viewport.mapToGlobal(at)),
            QPoint(),
            QPoint(0, 120 * notches),
            Qt.MouseButton.NoButton,
            held,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
        QApplication.sendEvent(viewport, event)

    def key(self, key, held=NONE) -> None:
        QTest.keyClick(self.view, key, held)

    def action(self, action_id: str) -> None:
        self.window.menus.actions[action_id].trigger()

    def item(self, item_id: str):
        document = self.window.bench.document
        return document.option.item(item_id)
