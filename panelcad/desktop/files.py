"""Project files as the window handles them: new, open, save, and the questions before anything is lost."""

from pathlib import Path
from socket import gethostname
from typing import Final
from uuid import uuid4

from PySide6.QtCore import QObject, QTimer, Signal

from panelcad.desktop.asking import Asking, Leaving
from panelcad.desktop.document import is_as_found
from panelcad.desktop.workbench import Workbench
from panelcad.errors import ChangedOnDisk, PanelcadError
from panelcad.model.project import Project
from panelcad.store.on_disk import DiskState, Seen, digest, disk_state, open_project, save_over
from panelcad.store.open_note import RENEW_EVERY, claim, release
from panelcad.store.project_file import SUFFIX

_FORBIDDEN: Final = '<>:"/\\|?*'


class FileDesk(QObject):
    """`opened` when another project lies on the desk, `written` when a file holds it now."""

    opened = Signal()
    written = Signal()

    def __init__(self, bench: Workbench, asking: Asking) -> None:
        super().__init__()
        self._bench = bench
        self._asking = asking
        self.session = uuid4().hex
        self.seen: Seen | None = None
        self._declined = ""
        self._renewal = QTimer(self)
        self._renewal.setInterval(int(RENEW_EVERY * 1000))
        self._renewal.timeout.connect(self._renew_note)
        self._renewal.start()
        bench.document.option_changed.connect(self._note_option)

    def new(self, project: Project) -> bool:
        """Begin with this project, which has no file yet, unless the person would rather keep what is there."""
        if not self.may_leave():
            return False
        self._lay(project, None, None)
        return True

    def ask_and_open(self) -> None:
        if self.may_leave():
            path = self._asking.file_to_open(self.folder())
            if path is not None:
                self._open(path)

    def open(self, path: Path) -> bool:
        """Open a file unless the person would rather keep what is there."""
        return self.may_leave() and self._open(path)

    def open_copy(self, path: Path) -> bool:
        """Open a sample as a project of one's own that has no file yet."""
        return self.may_leave() and self._open(path, as_copy=True)

    def _open(self, path: Path, *, as_copy: bool = False) -> bool:
        path = path.absolute()
        try:
            found = open_project(path)
        except PanelcadError as fault:
            self._asking.tell("The file cannot be opened", str(fault))
            return False
        if as_copy:
            self._lay(found.project, None, None)
            return True
        if not self._may_share(path):
            return False
        self._lay(found.project, path, found.seen)
        self._bench.settings.used_file(path)
        self._look_as_before(path)
        return True

    def _look_as_before(self, path: Path) -> None:
        """At the option that was on the canvas when the file was open last, if it is still there."""
        seen = self._bench.settings.option_seen_last(path)
        if seen in {option.id for option in self._bench.document.project.all_options}:
            self._bench.document.look_at(seen)

    def _note_option(self) -> None:
        """The panel as found is only glanced at."""
        document = self._bench.document
        if document.path is not None and not is_as_found(document.option):
            self._bench.settings.saw_option(document.path, document.option_id)

    def _may_share(self, path: Path) -> bool:
        """Whether a file is opened that another window has open already."""
        holder = claim(path, self.session)
        if holder is None:
            return True
        where = "" if holder.host == gethostname() else f" on the computer '{holder.host}'"
        question = f"'{path.name}' is open in another window{where}."
        detail = "You can look at it here too. Whoever saves last is warned before anything is overwritten."
        return (
            self._asking.choice("Open elsewhere", question, detail, "&Open here too", "&Leave it") == "&Open here too"
        )

    def take_up(self, project: Project, path: Path | None, *, file_is_as_it_was: bool) -> None:
        """Go on with work that was found again; it is not saved yet. A file that changed meanwhile is asked about."""
        known = _content_of(path) if path is not None and file_is_as_it_was else ""
        self._lay(project, path, Seen(known, (0, 0)) if path is not None else None)
        self._bench.document.forget_saved()

    def _lay(self, project: Project, path: Path | None, seen: Seen | None) -> None:
        self.leave_note()
        self.seen = seen
        self._declined = ""
        self._bench.document.replace(project, path)
        self.opened.emit()

    def save(self) -> bool:
        """Whether the project is in its file now."""
        path = self._bench.document.path
        return self._write(path, self.seen) if path is not None else self.save_as()

    def save_as(self) -> bool:
        path = self._asking.file_to_save(self._suggested())
        return path is not None and self._write(path, None)

    def _write(self, path: Path, seen: Seen | None) -> bool:
        project = self._bench.document.project
        try:
            written = save_over(project, path, seen)
        except ChangedOnDisk:
            return self._write_over_another(path)
        except PanelcadError as fault:
            self._asking.tell("The project was not saved", str(fault))
            return False
        self._saved(project, path, written)
        return True

    def _write_over_another(self, path: Path) -> bool:
        """The file holds something else by now: nothing is overwritten without a word."""
        over, beside = "&Save over it", "Save &under another name…"
        question = f"'{path.name}' was changed by another program or window since it was opened here."
        detail = "Saving over it loses what was changed there."
        answer = self._asking.choice("Changed on disk", question, detail, beside, over, "&Cancel")
        if answer == over:
            return self._write(path, None)
        return self.save_as() if answer == beside else False

    def _saved(self, project: Project, path: Path, seen: Seen) -> None:
        if path != self._bench.document.path:
            self.leave_note()
        self.seen = seen
        self._bench.document.mark_saved(path, project)
        self._note_option()
        claim(path, self.session)
        self._bench.settings.used_file(path)
        self._bench.told.emit(f"Saved {path.name}")
        self.written.emit()

    def look_at_disk(self) -> None:
        """Notice that the file was changed by something else, and offer what it holds now."""
        path = self._bench.document.path
        if path is None or self.seen is None or disk_state(path, self.seen) is not DiskState.CHANGED:
            return
        if _content_of(path) == self._declined:
            return
        load, keep = "&Load it", "&Keep what is here"
        is_saved = self._bench.document.is_saved
        lost = "" if is_saved else " Your own changes since the last save would be lost."
        question = f"'{path.name}' was changed by another program or window."
        detail = f"Load what it holds now?{lost}"
        if self._asking.choice("Changed on disk", question, detail, load, keep, loses="" if is_saved else load) == load:
            self._open(path)
        else:
            self._bench.document.forget_saved()
            self._declined = _content_of(path)

    def may_leave(self) -> bool:
        """Whether the project may be closed: nothing would be lost, or the person said so."""
        document = self._bench.document
        if document.is_untouched:
            return True
        answer = self._asking.leaving(document.name)
        return self.save() if answer is Leaving.SAVE else answer is Leaving.DISCARD

    def leave_note(self) -> None:
        """Take away the note that says this window has the file open."""
        if self._bench.document.path is not None:
            release(self._bench.document.path, self.session)

    def _renew_note(self) -> None:
        if self._bench.document.path is not None:
            claim(self._bench.document.path, self.session)

    def folder(self) -> Path:
        """Where the last file was."""
        recent = self._bench.settings.recent_files
        here = self._bench.document.path or (recent[0] if recent else None)
        return here.parent if here is not None else Path.home()

    def _suggested(self) -> Path:
        document = self._bench.document
        if document.path is not None:
            return document.path
        name = "".join("-" if char in _FORBIDDEN else char for char in document.project.title)
        return self.folder() / f"{name}{SUFFIX}"


def _content_of(path: Path) -> str:
    """The digest of what a file holds now, '' where it cannot be read."""
    try:
        return digest(path.read_bytes())
    except OSError:
        return ""
