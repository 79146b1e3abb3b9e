"""The one open project: what it is now, what it was, what is saved, and who wants to know.

An undo entry is one gesture: its title and the project before and after it. Undo puts a reference back, so nothing can
be half undone. Writing papers is a barrier: the release log stands outside undo.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from panelcad.model.project import AS_FOUND, Option, Project


@dataclass(frozen=True)
class Step:
    """One gesture that can be taken back."""

    title: str
    before: Project
    after: Project


class Gesture:
    """A change that is being made: propose as often as the pointer moves, then finish or cancel once."""

    def __init__(self, document: "Document", title: str) -> None:
        self._document = document
        self.title = title
        self.start = document.project
        self.proposal = document.project
        self.is_over = False

    def propose(self, project: Project) -> None:
        """Show this project without making it the document's yet."""
        if self.is_over:
            raise RuntimeError(f"the gesture '{self.title}' is over")
        self.proposal = project
        self._document.proposed.emit(project)

    def finish(self) -> None:
        """Make the last proposal the document's project, as one entry of the undo list."""
        if not self.is_over:
            self.is_over = True
            self._document.gesture_ended(self)

    def cancel(self) -> None:
        """Leave everything as it was before the gesture."""
        if not self.is_over:
            self.is_over = True
            self.proposal = self.start
            self._document.gesture_ended(self)


class Document(QObject):
    """Signals: `changed` after the project is another one, `proposed` while a gesture is under way, `option_changed`
    when another option is looked at, `replaced` when another file is open, `saved` when the dirty mark may differ.
    """

    changed = Signal()
    proposed = Signal(object)
    option_changed = Signal()
    replaced = Signal()
    saved = Signal()

    def __init__(self, project: Project, path: Path | None = None) -> None:
        super().__init__()
        self._take(project, path)

    def _take(self, project: Project, path: Path | None) -> None:
        self.project = project
        self.path = path
        self.saved_project: Project | None = project if path is not None else None
        self.done: list[Step] = []
        self.undone: list[Step] = []
        self.is_new = path is None
        self._gesture: Gesture | None = None
        self._option_id = (project.options[0] if project.options else project.as_found).id

    @property
    def is_saved(self) -> bool:
        return self.project is self.saved_project

    @property
    def is_untouched(self) -> bool:
        """Nothing would be lost by closing."""
        return self.is_saved or (self.is_new and not self.done and not self.undone)

    @property
    def name(self) -> str:
        return self.path.name if self.path else self.project.title

    @property
    def option(self) -> Option:
        """The option that is looked at; the panel as found where it is no longer there."""
        return next((o for o in self.project.all_options if o.id == self._option_id), self.project.as_found)

    @property
    def option_id(self) -> str:
        return self.option.id

    @property
    def current_gesture(self) -> Gesture | None:
        return self._gesture

    def look_at(self, option_id: str) -> None:
        """Show another option. Raises `UnknownName`."""
        option = self.project.option(option_id)
        if option.id != self._option_id:
            self._option_id = option.id
            self.option_changed.emit()

    def begin(self, title: str) -> Gesture:
        """A gesture that ends later, with the mouse button. One that was still under way is cancelled."""
        if self._gesture is not None:
            self._gesture.cancel()
        self._gesture = Gesture(self, title)
        return self._gesture

    @contextmanager
    def gesture(self, title: str) -> Iterator[Gesture]:
        """A gesture that ends with the block; an error cancels it and goes on."""
        under_way = self.begin(title)
        try:
            yield under_way
        except BaseException:
            under_way.cancel()
            raise
        under_way.finish()

    def apply(self, title: str, project: Project) -> None:
        """One change at once."""
        with self.gesture(title) as under_way:
            under_way.propose(project)

    def gesture_ended(self, gesture: Gesture) -> None:
        """Called by the gesture itself."""
        self._gesture = None
        if gesture.proposal is not self.project:
            self.done.append(Step(gesture.title, self.project, gesture.proposal))
            self.undone.clear()
            self.project = gesture.proposal
        self._tell()

    def undo(self) -> None:
        if self.done:
            step = self.done.pop()
            self.undone.append(step)
            self._go_to(step.before)

    def redo(self) -> None:
        if self.undone:
            step = self.undone.pop()
            self.done.append(step)
            self._go_to(step.after)

    def record_release(self, project: Project) -> None:
        """Take over a project whose release log has grown; what was done before cannot be undone any more.

        Papers are out: the project is never again one that was only begun, even where it was not saved yet.
        """
        self.done.clear()
        self.undone.clear()
        self.is_new = False
        self._go_to(project)

    def mark_saved(self, path: Path, project: Project) -> None:
        """`project` is safely in `path`."""
        self.path = path
        self.saved_project = project
        self.saved.emit()

    def forget_saved(self) -> None:
        """No file holds this project any more, or not yet."""
        self.saved_project = None
        self.is_new = False
        self.saved.emit()

    def replace(self, project: Project, path: Path | None) -> None:
        """Open another project in place of this one."""
        self._take(project, path)
        self.replaced.emit()

    def _go_to(self, project: Project) -> None:
        if self._gesture is not None:
            self._gesture.cancel()
        self.project = project
        self._tell()

    def _tell(self) -> None:
        self.changed.emit()
        self.saved.emit()


def is_as_found(option: Option) -> bool:
    return option.id == AS_FOUND
