"""Keeps the comparison of all options up to date while somebody looks at it, on a thread of its own."""

from concurrent.futures import Future
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from panelcad.desktop.after_rest import AfterRest, Work
from panelcad.desktop.document import Document
from panelcad.model.project import Project

if TYPE_CHECKING:
    from panelcad.planning.compare import Comparison


class Comparer(QObject):
    """`compared` after each comparison, `failed` with a sentence where it could not be made."""

    compared = Signal()
    failed = Signal(str)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._beside = AfterRest("comparison", self._begin, self._take)
        self._compared_project: Project | None = None
        self._is_wanted = False
        self.comparison: Comparison | None = None
        document.changed.connect(self._ask)
        document.replaced.connect(self._ask)

    def want(self, *, wanted: bool) -> None:
        """Compare as long as somebody looks; nothing is reckoned for a table that nobody sees."""
        self._is_wanted = wanted
        if wanted:
            self._ask()

    def _ask(self) -> None:
        if self._is_wanted and self._document.project is not self._compared_project:
            self._beside.ask()

    def _begin(self) -> Work:
        self._compared_project = self._document.project
        return partial(_compare, self._compared_project, self.comparison)

    def _take(self, finished: "Future[Comparison]") -> None:
        fault = finished.exception()
        if fault is None:
            self.comparison = finished.result()
            self.compared.emit()
        else:
            self.failed.emit(str(fault))
        self._ask()

    def stop(self) -> None:
        """Wait for the comparison that is running and start no other."""
        self._is_wanted = False
        self._beside.stop()


def _compare(project: Project, kept: "Comparison | None") -> "Comparison":
    from panelcad.planning.compare import compare  # noqa: PLC0415 - shapely and the library wait until they are needed

    return compare(project, kept=kept)
