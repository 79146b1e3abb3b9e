"""Keeps the check report of what is on the screen up to date, also while a gesture is under way."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from panelcad.desktop.document import Document
from panelcad.model.project import Project

if TYPE_CHECKING:
    from panelcad.checks.live import LiveChecker
    from panelcad.checks.report import CheckReport


class Judge(QObject):
    """`reported` after each check. Several changes before the screen is idle are judged once."""

    reported = Signal()

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._checker: LiveChecker | None = None
        self._wanted: Project | None = None
        self.report: CheckReport | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self.check_now)
        document.changed.connect(self._check_soon)
        document.option_changed.connect(self._check_soon)
        document.replaced.connect(self._start_over)
        document.proposed.connect(self._check_proposal)

    def _start_over(self) -> None:
        self._checker = None
        self.report = None
        self._check_soon()

    def _check_soon(self) -> None:
        self._wanted = None
        self._soon.start(0)

    def _check_proposal(self, project: Project) -> None:
        self._wanted = project
        self._soon.start(0)

    def check_now(self) -> None:
        """Bring the report up to date at once."""
        self._soon.stop()
        if self._checker is None:
            from panelcad.checks.live import LiveChecker  # noqa: PLC0415 - shapely waits until the window is painted

            self._checker = LiveChecker()
        self.report = self._checker.update(self._wanted or self._document.project, self._document.option_id)
        self.reported.emit()
