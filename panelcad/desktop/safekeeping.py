"""Unsaved work is kept in a recovery copy, and offered at the next start after a crash."""

from pathlib import Path
from time import monotonic

from PySide6.QtCore import QObject, QTimer

from panelcad.desktop.asking import Asking
from panelcad.desktop.files import FileDesk
from panelcad.desktop.workbench import Workbench
from panelcad.errors import PanelcadError
from panelcad.store.autosave import LATEST, REST, Autosave, Match, Recovered, discard, search
from panelcad.store.open_note import RENEW_EVERY


class Safekeeping(QObject):
    def __init__(self, bench: Workbench, desk: FileDesk, asking: Asking) -> None:
        super().__init__()
        self._bench, self._desk, self._asking = bench, desk, asking
        self._autosave = Autosave(desk.session)
        self._soon = _timer(self, REST, self._keep_between_gestures)
        self._soon.setSingleShot(True)
        self._first: float | None = None
        """When the first change was made that is in no copy yet."""
        self._alive = _timer(self, RENEW_EVERY, self._still_here)
        self._alive.start()
        bench.document.changed.connect(self._changed)
        bench.document.option_changed.connect(self._changed)
        bench.document.replaced.connect(self._forget)
        desk.written.connect(self._forget)

    def _changed(self) -> None:
        """Wait for a rest, but not for ever."""
        if self._bench.document.is_untouched:
            return
        self._first = monotonic() if self._first is None else self._first
        rest = min(REST, max(0.0, self._first + LATEST - monotonic()))
        self._soon.start(round(rest * 1000))

    def _keep_between_gestures(self) -> None:
        """A drag under way is not held up; what it ends with is another change."""
        if self._bench.document.current_gesture is not None:
            self._soon.start(round(REST * 250))
        else:
            self.keep()

    def keep(self) -> None:
        """Write the recovery copy now. A data folder that cannot be written is told in the status bar."""
        document = self._bench.document
        self._soon.stop()
        self._first = None
        if document.is_untouched:
            self._forget()
            return
        try:
            base = self._desk.seen.digest if self._desk.seen is not None else None
            self._autosave.keep(document.project, document.path, base, document.option_id)
        except PanelcadError as fault:
            self._bench.told.emit(f"No recovery copy: {fault}")

    def _still_here(self) -> None:
        if self._autosave.copy.exists():
            self._autosave.still_here()

    def _forget(self) -> None:
        self._soon.stop()
        self._first = None
        self._autosave.forget()

    def stop(self) -> None:
        """The window closes on purpose: what was given up is gone."""
        self._alive.stop()
        self._forget()

    def offer_recovered(self, file: Path | None = None) -> bool:
        """Ask about each piece of unsaved work that a crash left behind, on one file only where one is given.

        Whether work was taken up again.
        """
        found = search(self._desk.session)
        for copy, reason in found.unreadable:
            self._bench.told.emit(f"A recovery copy cannot be read and is left where it is: {copy} ({reason})")
        wanted = [one for one in found.recovered if file is None or _is_of(one, file)]
        return any(self._offer(recovered) for recovered in wanted)

    def _offer(self, recovered: Recovered) -> bool:
        """Whether the work was taken up again."""
        title = recovered.file.name if recovered.file is not None else recovered.project.title
        take, later, away = "&Take it up again", "&Ask again next time", "&Discard it"
        question = f"The program ended before changes to '{title}' were saved. Take them up again?"
        answer = self._asking.choice("Unsaved work was found", question, _detail(recovered), take, later, away)
        if answer == away and self._is_sure(title):
            discard(recovered.copy)
        if answer != take:
            return False
        as_it_was = recovered.match is Match.FILE_AS_IT_WAS
        self._desk.take_up(recovered.project, recovered.file, file_is_as_it_was=as_it_was)
        self._look_where_one_was(recovered.option)
        self.keep()
        discard(recovered.copy)
        return True

    def _look_where_one_was(self, option_id: str) -> None:
        document = self._bench.document
        if any(option.id == option_id for option in document.project.all_options):
            document.look_at(option_id)

    def _is_sure(self, title: str) -> bool:
        """This cannot be undone."""
        away, keep = "&Discard it", "&Keep it"
        question = f"Discard the unsaved changes to '{title}' for good?"
        return self._asking.choice("Discard unsaved work", question, "", away, keep, loses=away) == away


def _is_of(recovered: Recovered, file: Path) -> bool:
    return recovered.file is not None and recovered.file.resolve() == file.resolve()


def _detail(recovered: Recovered) -> str:
    """How the file stands to the work that was found."""
    words = f"{recovered.match.value.capitalize()}."
    if recovered.match is Match.FILE_CHANGED:
        words += " Saving will ask before it overwrites what the file holds now."
    return words


def _timer(parent: QObject, seconds: float, run: object) -> QTimer:
    timer = QTimer(parent)
    timer.setInterval(int(seconds * 1000))
    timer.timeout.connect(run)
    return timer
