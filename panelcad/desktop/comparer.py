"""Keeps the comparison of all options up to date while somebody looks at it, on a thread of its own."""

from concurrent.futures import Future, ThreadPoolExecutor
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, QTimer, Signal

from panelcad.desktop.document import Document
from panelcad.model.project import Project

if TYPE_CHECKING:
    from panelcad.planning.compare import Comparison

_PATIENCE_MS: Final = 250
"""How long the project must rest before it is compared again."""


class Comparer(QObject):
    """`compared` after each comparison, `failed` with a sentence where it could not be made."""

    compared = Signal()
    failed = Signal(str)
    _finished = Signal(object)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="comparison")
        self._running: Future[Comparison] | None = None
        self._compared_project: Project | None = None
        self._is_wanted = False
        self.comparison: Comparison | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_PATIENCE_MS)
        self._soon.timeout.connect(self._start)
        self._finished.connect(self._take)
        document.changed.connect(self._ask)
        document.replaced.connect(self._ask)

    def want(self, *, wanted: bool) -> None:
        """Compare as long as somebody looks; nothing is reckoned for a table that nobody sees."""
        self._is_wanted = wanted
        if wanted:
            self._ask()

    def _ask(self) -> None:
        if self._is_wanted and self._document.project is not self._compared_project:
            self._soon.start()

    def _start(self) -> None:
        if self._running is not None:
            return
        project = self._document.project
        self._compared_project = project
        self._running = self._thread.submit(_compare, project, self.comparison)
        self._running.add_done_callback(self._finished.emit)

    def _take(self, finished: "Future[Comparison]") -> None:
        if finished is not self._running:
            return
        self._running = None
        fault = finished.exception()
        if fault is None:
            self.comparison = finished.result()
            self.compared.emit()
        else:
            self.failed.emit(str(fault))
        self._ask()

    def stop(self) -> None:
        """Wait for the comparison that is running and start no other."""
        self._soon.stop()
        self._is_wanted = False
        self._running = None
        self._thread.shutdown(wait=True, cancel_futures=True)


def _compare(project: Project, kept: "Comparison | None") -> "Comparison":
    from panelcad.planning.compare import compare  # noqa: PLC0415 - shapely and the library wait until they are needed

    return compare(project, kept=kept)
