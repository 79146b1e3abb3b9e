"""Keeps the open errors about the equipment of the option on the screen up to date, on a thread of its own."""

from concurrent.futures import Future, ThreadPoolExecutor
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from panelcad.desktop.document import Document
from panelcad.errors import PanelcadError
from panelcad.model.finding import Finding
from panelcad.model.project import Project

_PATIENCE_MS: Final = 250
"""How long the project must rest before its equipment is judged again."""


class EquipmentJudge(QObject):
    """`judged` when `errors`, or why there is no answer, may have become others. Gestures under way are not judged."""

    judged = Signal()
    _finished = Signal(object)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="equipment")
        self._running: Future[tuple[Finding, ...]] | None = None
        self._known: tuple[Project, str] | None = None
        """The project and the option that were judged last, or are being judged; None where that is of no use now."""
        self.errors: tuple[Finding, ...] = ()
        self.fault = ""
        """Why the equipment could not be judged; '' where it could."""
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_PATIENCE_MS)
        self._soon.timeout.connect(self._start)
        self._finished.connect(self._take)
        document.changed.connect(self._ask)
        document.option_changed.connect(self._start_over)
        document.replaced.connect(self._start_over)

    @property
    def words(self) -> str:
        """How many errors are open, or that nobody knows; '' where there is none."""
        from panelcad.planning.wording import equipment_errors_text  # noqa: PLC0415 - the window is painted first

        if self.fault:
            return "equipment not judged"
        return equipment_errors_text(len(self.errors)) if self.errors else ""

    def _ask(self) -> None:
        self._soon.start()

    def _start_over(self) -> None:
        """What was said of another option is said no longer."""
        self._known = None
        self.errors, self.fault = (), ""
        self.judged.emit()
        self._ask()

    def _start(self) -> None:
        project, option_id = self._document.project, self._document.option_id
        if self._running is not None or self._is_known(project, option_id):
            return
        self._known = project, option_id
        self._running = self._thread.submit(_errors, project, option_id)
        self._running.add_done_callback(self._finished.emit)

    def _is_known(self, project: Project, option_id: str) -> bool:
        return self._known is not None and self._known[0] is project and self._known[1] == option_id

    def _take(self, finished: "Future[tuple[Finding, ...]]") -> None:
        if finished is not self._running or finished.cancelled():
            return
        self._running = None
        if self._known is not None:
            self._adopt(finished)
        self._ask()

    def _adopt(self, finished: "Future[tuple[Finding, ...]]") -> None:
        try:
            self.errors, self.fault = finished.result(), ""
        except PanelcadError as fault:
            self.errors, self.fault = (), str(fault)
        self.judged.emit()

    def stop(self) -> None:
        """Wait for what is being judged, and judge nothing else."""
        self._soon.stop()
        self._running = None
        self._thread.shutdown(wait=True, cancel_futures=True)


def _errors(project: Project, option_id: str) -> tuple[Finding, ...]:
    from panelcad.planning.judge import equipment_errors  # noqa: PLC0415 - shapely and the library wait

    return equipment_errors(project, project.option(option_id))
