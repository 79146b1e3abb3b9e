"""What stands against an option, found on a thread of its own while its picture is already shown."""

from concurrent.futures import Future, ThreadPoolExecutor

from PySide6.QtCore import QObject, Signal

from panelcad.model.project import Project


class OwnerFlaws(QObject):
    """`found` tells an option's id and its open errors in words, '' where there is none. Each option is judged once."""

    found = Signal(str, str)
    _finished = Signal(object)

    def __init__(self, project: Project) -> None:
        super().__init__()
        self._project = project
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="open errors")
        self._known: dict[str, str] = {}
        self._asked: set[str] = set()
        self._finished.connect(self._take)

    def of(self, option_id: str) -> str:
        """The words, '' while they are being found."""
        if option_id not in self._asked:
            self._asked.add(option_id)
            self._thread.submit(_judged, self._project, option_id).add_done_callback(self._finished.emit)
        return self._known.get(option_id, "")

    def stop(self) -> None:
        """Wait for the option that is being judged, and judge no other."""
        self._thread.shutdown(wait=True, cancel_futures=True)

    def _take(self, finished: "Future[tuple[str, str]]") -> None:
        if finished.cancelled():
            return
        option_id, words = finished.result()
        self._known[option_id] = words
        self.found.emit(option_id, words)


def _judged(project: Project, option_id: str) -> tuple[str, str]:
    from panelcad.planning.figures import open_errors  # noqa: PLC0415 - the picture comes first
    from panelcad.planning.judge import judge  # noqa: PLC0415

    return option_id, open_errors(judge(project, project.option(option_id)))
