"""Keeps the open errors about the equipment of the option on the screen up to date, on a thread of its own."""

from concurrent.futures import Future
from functools import partial

from PySide6.QtCore import QObject, Signal

from panelcad.desktop.after_rest import AfterRest, Work
from panelcad.desktop.document import Document
from panelcad.errors import PanelcadError
from panelcad.model.finding import Finding
from panelcad.model.project import Project


class EquipmentJudge(QObject):
    """`judged` when `errors`, or why there is no answer, may have become others. Gestures under way are not judged."""

    judged = Signal()

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        self._beside = AfterRest("equipment", self._wanted, self._take)
        self._known: tuple[Project, str] | None = None
        """The project and the option that were judged last, or are being judged; None where that is of no use now."""
        self.errors: tuple[Finding, ...] = ()
        self.fault = ""
        """Why the equipment could not be judged; '' where it could."""
        document.changed.connect(self._beside.ask)
        document.option_changed.connect(self._start_over)
        document.replaced.connect(self._start_over)

    @property
    def words(self) -> str:
        """How many errors are open, or that nobody knows; '' where there is none."""
        from panelcad.planning.wording import equipment_errors_text  # noqa: PLC0415 - the window is painted first

        if self.fault:
            return "equipment not judged"
        return equipment_errors_text(len(self.errors)) if self.errors else ""

    def _start_over(self) -> None:
        """What was said of another option is said no longer."""
        self._known = None
        self.errors, self.fault = (), ""
        self.judged.emit()
        self._beside.ask()

    def _wanted(self) -> Work | None:
        project, option_id = self._document.project, self._document.option_id
        if self._is_known(project, option_id):
            return None
        self._known = project, option_id
        return partial(_errors, project, option_id)

    def _is_known(self, project: Project, option_id: str) -> bool:
        return self._known is not None and self._known[0] is project and self._known[1] == option_id

    def _take(self, finished: "Future[tuple[Finding, ...]]") -> None:
        if self._known is not None:
            self._adopt(finished)
        self._beside.ask()

    def _adopt(self, finished: "Future[tuple[Finding, ...]]") -> None:
        try:
            self.errors, self.fault = finished.result(), ""
        except PanelcadError as fault:
            self.errors, self.fault = (), str(fault)
        self.judged.emit()

    def stop(self) -> None:
        """Wait for what is being judged, and judge nothing else."""
        self._beside.stop()


def _errors(project: Project, option_id: str) -> tuple[Finding, ...]:
    from panelcad.planning.judge import equipment_errors  # noqa: PLC0415 - shapely and the library wait

    return equipment_errors(project, project.option(option_id))
