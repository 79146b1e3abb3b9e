"""A person at work, each gesture costed by the keystroke-level model.

Times in seconds: S. K. Card, T. P. Moran, A. Newell, "The keystroke-level model for user performance time with
interactive systems", Communications of the ACM 23 (7), July 1980: K 0.28 for an average typist who is no secretary, P
1.10, H 0.40, M 1.35; pressing or letting go a mouse button counts as a key. M stands before each unit of work.
"""

from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QLabel, QWidget

from tests.desktop.hands import Hands

KEY, POINT, HOME, THINK = 0.28, 1.10, 0.40, 1.35


class Operator:
    def __init__(self, hands: Hands) -> None:
        self.hands = hands
        self.seconds = 0.0
        self._on_mouse = True

    def think(self) -> None:
        self.seconds += THINK

    def _home(self, *, mouse: bool) -> None:
        if mouse is not self._on_mouse:
            self.seconds += HOME
            self._on_mouse = mouse

    def _focused(self) -> QWidget:
        """Where keys go: the field with the focus, or the window in front."""
        in_front = QApplication.activeModalWidget() or self.hands.window
        if not in_front.isActiveWindow():
            in_front.activateWindow()  # a screen's window manager does this when a dialog closes
            assert QTest.qWaitForWindowActive(in_front)
        return in_front.focusWidget() or in_front

    def keys(self, text: str, times: int = 1) -> None:
        """A combination such as 'Ctrl+T'; each modifier is a key too."""
        self._home(mouse=False)
        self.seconds += KEY * (text.count("+") + 1) * times
        pressed = QKeySequence(text)[0]
        for _ in range(times):
            QTest.keyClick(self._focused(), pressed.key(), pressed.keyboardModifiers())
            if text.startswith("Alt+"):
                QTest.qWait(150)  # a button that is pressed by its letter is seen to go down, for 100 ms

    def write(self, text: str) -> None:
        """Over what the field holds."""
        self._home(mouse=False)
        self.seconds += KEY * len(text)
        QTest.keyClicks(self._focused(), text)

    def click(self, x: float, y: float) -> None:
        """On the canvas, at a place of the plate in mm."""
        self._home(mouse=True)
        self.seconds += POINT + 2 * KEY
        self.hands.hover(x, y)
        self.hands.click(x, y)

    def in_dialog(self, open_it: Callable[[], None], fill: Callable[[], None]) -> None:
        """Open a dialog, fill it in, and be back when it is closed."""
        faults: list[BaseException] = []
        waiting = [True]

        def act() -> None:
            dialog = QApplication.activeModalWidget()
            if not isinstance(dialog, QDialog) or not dialog.isActiveWindow() or dialog.focusWidget() is None:
                QTimer.singleShot(10, act)
                return
            waiting.clear()
            try:
                fill()
            except BaseException as fault:  # noqa: BLE001 - told after the dialog is closed
                faults.append(fault)
            if dialog.isVisible():
                faults.append(AssertionError(f"'{dialog.windowTitle()}' is still open: {_said(dialog)}"))
                dialog.reject()

        QTimer.singleShot(0, act)
        before = QApplication.activeModalWidget()
        open_it()
        assert QApplication.activeModalWidget() is before
        assert not waiting, "no dialog was opened"
        if faults:
            raise faults[0]


def _said(dialog: QDialog) -> str:
    """What the dialog says, so that a failing test tells why."""
    return " | ".join(label.text() for label in dialog.findChildren(QLabel) if label.isVisible() and label.text())
