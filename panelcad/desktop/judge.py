"""Keeps the check report of what is on the screen up to date, also while a gesture is under way.

Checks run beside the window on a thread of their own, one at a time, always of the newest project; projects are
frozen, so nothing they read can change under them. While a gesture is under way no cures are looked for: nobody reads
them before it ends.
"""

import sys
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, QTimer, Signal

from panelcad.desktop.document import Document
from panelcad.model.finding import Finding
from panelcad.model.project import Project

if TYPE_CHECKING:
    from panelcad.checks.live import LiveChecker
    from panelcad.checks.report import CheckReport

_SWITCH_SECONDS: Final = 0.001
"""How long the checking thread may keep the interpreter to itself while the window wants it."""

CHECKING: Final = "Checking…"
"""What stands meanwhile where findings are counted."""
_NOTICED_MS: Final = 500
"""How long a check may take before the window says that one is under way."""


@dataclass(frozen=True)
class _Order:
    project: Project
    option_id: str
    is_proposal: bool = False


class Judge(QObject):
    """`reported` after each check, `waited` while one takes long enough to be noticed.

    Of several changes while a check is running only the last one is judged.
    """

    reported = Signal()
    waited = Signal()
    _finished = Signal(object)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._checker: LiveChecker | None = None
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="checks")
        self._next: _Order | None = None
        self._running: Future[CheckReport] | None = None
        self.report: CheckReport | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self._start)
        self._slow = QTimer(self)
        self._slow.setSingleShot(True)
        self._slow.setInterval(_NOTICED_MS)
        self._slow.timeout.connect(self.waited)
        self._finished.connect(self._take)
        sys.setswitchinterval(_SWITCH_SECONDS)
        document.changed.connect(self._check_soon)
        document.option_changed.connect(self._check_soon)
        document.replaced.connect(self._start_over)
        document.proposed.connect(self._propose)

    def _start_over(self) -> None:
        self._wait()
        self._checker = None
        self.report = None
        self._check_soon()

    def _check_soon(self) -> None:
        self._order(_Order(self._document.project, self._document.option_id))

    def _propose(self, project: Project) -> None:
        self._order(_Order(project, self._document.option_id, is_proposal=True))

    def _order(self, order: _Order) -> None:
        self._next = order
        if self._running is None:
            self._soon.start(0)

    def _start(self) -> None:
        if self._next is None or self._running is not None:
            return
        order, self._next = self._next, None
        self._slow.start()
        self._running = self._thread.submit(self._check, order)
        self._running.add_done_callback(self._finished.emit)

    def _check(self, order: _Order) -> "CheckReport":
        if self._checker is None:
            from panelcad.checks.live import LiveChecker  # noqa: PLC0415 - shapely waits until the window is painted

            self._checker = LiveChecker()
        return self._checker.update(order.project, order.option_id, with_cures=not order.is_proposal)

    def _take(self, finished: "Future[CheckReport]") -> None:
        if finished is not self._running or finished.cancelled():
            return
        self._running = None
        self._slow.stop()
        if self._next is not None:
            self._start()
        self.report = finished.result()
        self.reported.emit()

    def finding(self, identity: str) -> Finding | None:
        """The finding of this identity, accepted or not; None where there is none now."""
        report = self.report
        if report is None:
            return None
        everything = (*report.findings, *(accepted.finding for accepted in report.accepted))
        return next((one for one in everything if one.identity == identity), None)

    def check_now(self) -> None:
        """Bring the report up to date and wait for it."""
        self._wait()
        self._soon.stop()
        self._slow.stop()
        order = self._next or _Order(self._document.project, self._document.option_id)
        self._next = None
        self.report = self._thread.submit(self._check, order).result()
        self.reported.emit()

    def _wait(self) -> None:
        if self._running is not None:
            running, self._running = self._running, None
            running.exception()

    def stop(self) -> None:
        """Wait for the check that is running and start no other."""
        self._soon.stop()
        self._slow.stop()
        self._next = self._running = None
        self._thread.shutdown(wait=True, cancel_futures=True)
