"""Work that takes a while is done beside the window, says what it is at, and can be stopped."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from threading import Event
from typing import Any, Final, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.help.ask import explained_by_key
from panelcad.desktop.help.topics import Dialog

Tell = Callable[[str], None]
_T = TypeVar("_T")
_PATIENCE: Final = 0.4
"""Seconds that work may take before the window says so."""
_WIDTH: Final = 380


class Stopped(Exception):
    """The person stopped the work."""


def done_beside(parent: QWidget, title: str, first: str, work: Callable[[Tell], _T], *, only_reads: bool = False) -> _T:
    """What `work` returns, done on a thread of its own while a dialog of this title says what it is at.

    `work` gets a function that it tells its steps to; after a stop the next step is not begun. Work that only reads is
    left to itself at once. Raises `Stopped`, and whatever `work` raises.
    """
    stop = Event()
    with_words = _Words(parent, title, first, stop, may_leave=only_reads)

    def tell(words: str) -> None:
        if stop.is_set():
            raise Stopped
        with_words.told.emit(words)

    thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="long work")
    running = thread.submit(work, tell)
    thread.shutdown(wait=False)
    with_words.show_until(running)
    if stop.is_set():
        if not only_reads:
            running.exception()
        raise Stopped
    return running.result()


class _Words(QDialog):
    """What is done now, a bar that moves, and a button that stops it."""

    told = Signal(str)
    _finished = Signal()

    def __init__(self, parent: QWidget, title: str, first: str, stop: Event, *, may_leave: bool) -> None:
        super().__init__(parent)
        self._stop, self._may_leave = stop, may_leave
        self.setWindowTitle(title)
        self.setMinimumWidth(_WIDTH)
        self.words = QLabel(first)
        self.words.setWordWrap(True)
        self.bar = QProgressBar()
        self.bar.setRange(0, 0)
        self.bar.setAccessibleName("At work")
        self.button = QPushButton("&Stop")
        self.button.setAutoDefault(False)
        self.button.clicked.connect(self.reject)
        self._lay_out()
        explained_by_key(self, Dialog.LONG_WORK)
        self.told.connect(self._say, Qt.ConnectionType.QueuedConnection)
        self._finished.connect(self.accept, Qt.ConnectionType.QueuedConnection)

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.button)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(self.words)
        column.addWidget(self.bar)
        column.addLayout(row)

    def show_until(self, running: "Future[Any]") -> None:
        """Come up if the work takes a while, and stay until it is over."""
        if not wait([running], _PATIENCE).not_done:
            self.deleteLater()
            return
        running.add_done_callback(lambda _: self._finished.emit())
        self.exec()
        self.deleteLater()

    def _say(self, words: str) -> None:
        if not self._stop.is_set():
            self.words.setText(words)

    def reject(self) -> None:
        """Escape and the frame's button stop the work too; a step that was begun is finished first."""
        self._stop.set()
        self.button.setEnabled(False)
        self.words.setText("Stopping after this step")
        if self._may_leave:
            super().reject()
