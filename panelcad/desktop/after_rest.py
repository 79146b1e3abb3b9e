"""Work on a thread of its own that begins once the project has rested."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer, Signal

_PATIENCE_MS: Final = 250
"""How long the project must rest before work begins."""
Work = Callable[[], Any]


class AfterRest(QObject):
    """`wanted` gives what is to be done now, or None; `answered` takes its future, on the window's own thread.

    One piece of work runs at a time; what is asked for meanwhile must be asked for again by `answered`.
    """

    _finished = Signal(object)

    def __init__(self, name: str, wanted: Callable[[], Work | None], answered: Callable[[Future[Any]], None]) -> None:
        super().__init__()
        self._wanted, self._answered = wanted, answered
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix=name)
        self._running: Future[Any] | None = None
        self._soon = QTimer(self, singleShot=True, interval=_PATIENCE_MS)
        self._soon.timeout.connect(self._start)
        self._finished.connect(self._take)

    def ask(self) -> None:
        """Begin once nothing has been asked for a while."""
        self._soon.start()

    def _start(self) -> None:
        work = self._wanted() if self._running is None else None
        if work is not None:
            self._running = self._thread.submit(work)
            self._running.add_done_callback(self._finished.emit)

    def _take(self, finished: Future[Any]) -> None:
        if finished is self._running and not finished.cancelled():
            self._running = None
            self._answered(finished)

    def stop(self) -> None:
        """Wait for the work that is running and start no other."""
        self._soon.stop()
        self._running = None
        self._thread.shutdown(wait=True, cancel_futures=True)
