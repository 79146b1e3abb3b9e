"""Project files as the window handles them: new, open, save, and the question before changes are lost."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Signal

from panelcad.desktop.asking import Asking, Leaving
from panelcad.desktop.workbench import Workbench
from panelcad.errors import PanelcadError
from panelcad.model.project import Project
from panelcad.store.project_file import SUFFIX, load, save

_FORBIDDEN: Final = '<>:"/\\|?*'


class FileDesk(QObject):
    """`opened` when another project lies on the desk, `written` when a file holds it now."""

    opened = Signal()
    written = Signal()

    def __init__(self, bench: Workbench, asking: Asking) -> None:
        super().__init__()
        self._bench = bench
        self._asking = asking

    def new(self, project: Project) -> None:
        """Begin with this project; it has no file yet."""
        if self.may_leave():
            self._bench.document.replace(project, None)
            self.opened.emit()

    def ask_and_open(self) -> None:
        if self.may_leave():
            path = self._asking.file_to_open(self.folder())
            if path is not None:
                self._open(path)

    def open(self, path: Path) -> bool:
        """Open a file unless the person would rather keep what is there."""
        return self.may_leave() and self._open(path)

    def _open(self, path: Path) -> bool:
        try:
            project = load(path)
        except PanelcadError as fault:
            self._asking.tell("The file cannot be opened", str(fault))
            return False
        self._bench.document.replace(project, path)
        self._bench.settings.used_file(path)
        self.opened.emit()
        return True

    def open_copy(self, path: Path) -> bool:
        """Open a sample as a project of one's own that has no file yet."""
        if not self.may_leave():
            return False
        try:
            project = load(path)
        except PanelcadError as fault:
            self._asking.tell("The file cannot be opened", str(fault))
            return False
        self._bench.document.replace(project, None)
        self.opened.emit()
        return True

    def save(self) -> bool:
        """Whether the project is in its file now."""
        path = self._bench.document.path
        return self._write(path) if path is not None else self.save_as()

    def save_as(self) -> bool:
        path = self._asking.file_to_save(self._suggested())
        return path is not None and self._write(path)

    def _write(self, path: Path) -> bool:
        document = self._bench.document
        project = document.project
        try:
            save(project, path)
        except PanelcadError as fault:
            self._asking.tell("The project was not saved", str(fault))
            return False
        document.mark_saved(path, project)
        self._bench.settings.used_file(path)
        self._bench.told.emit(f"Saved {path.name}")
        self.written.emit()
        return True

    def may_leave(self) -> bool:
        """Whether the project may be closed: nothing would be lost, or the person said so."""
        document = self._bench.document
        if document.is_untouched:
            return True
        answer = self._asking.leaving(document.name)
        return self.save() if answer is Leaving.SAVE else answer is Leaving.DISCARD

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
