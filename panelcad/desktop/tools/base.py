"""What a tool is, and what all of them do alike."""

from typing import Final, Protocol

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.marks import pull_dimensions
from panelcad.editing.move import move_by
from panelcad.editing.taken_along import moved_with
from panelcad.model.project import Project

DRAG_PX: Final = 4.0
ARROWS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}


class Gesture(Protocol):
    """What goes on between a press and a release."""

    def move(self, pointer: Pointer) -> None: ...
    def release(self, pointer: Pointer) -> None: ...
    def cancel(self) -> None: ...


class Tool:
    """A tool that does nothing but nudge the selection with the arrow keys."""

    hint = ""
    cursor = Qt.CursorShape.ArrowCursor
    pane = ""
    """The pane that comes with the tool."""
    home = "front"
    """The view to go to where it does not work in the one that is shown."""

    def __init__(self, bench: Workbench) -> None:
        self.bench = bench

    def start(self) -> None:
        """The tool was taken up."""

    def works_in(self, view: ViewKind) -> bool:
        """Whether a place of the picture leads back to the plate, and what the tool makes is seen."""
        return view.moves_things

    def press(self, pointer: Pointer) -> None: ...

    def move(self, pointer: Pointer) -> None: ...

    def release(self, pointer: Pointer) -> None: ...

    def double_click(self, pointer: Pointer) -> None: ...

    def key(self, event: QKeyEvent) -> bool:
        """True where the key was meant for the tool."""
        if event.key() in ARROWS:
            nudge(self.bench, event, mirrored=self.bench.stage.view.is_mirrored)
            return True
        return False

    @property
    def own_step(self) -> str:
        """What undo would take back of the tool's own doing, '' where that is nothing."""
        return ""

    def take_back(self) -> None:
        """Undo while the tool has a step of its own."""

    def cancel(self) -> None:
        """Put everything back as it was before the gesture."""

    def put_away(self) -> None:
        """Another tool is taken up."""
        self.cancel()

    def nudge_step(self, event: QKeyEvent) -> tuple[float, float]:
        """The mm of the plate that an arrow key means: a fine step, or a coarse one with Shift."""
        return nudge_step(self.bench, event, mirrored=self.bench.stage.view.is_mirrored)


def nudge_step(bench: Workbench, event: QKeyEvent, *, mirrored: bool) -> tuple[float, float]:
    """The mm of the plate that an arrow key means in a picture: a fine step, or a coarse one with Shift."""
    step = "coarse" if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else "fine"
    length = bench.settings.step(step, bench.unit)
    right, up = ARROWS[Qt.Key(event.key())]
    return length * (-right if mirrored else right), length * up


def nudge(bench: Workbench, event: QKeyEvent, *, mirrored: bool = False) -> None:
    """Move what is selected by one step; one undo step, which goes on while the key is held down."""
    ids = bench.selection.ids
    if not ids:
        return
    dx, dy = nudge_step(bench, event, mirrored=mirrored)
    whole = moved_with(bench.document.project, bench.document.option, ids)
    title = "Nudge on" if event.isAutoRepeat() else "Nudge"

    def nudged(project: Project, option_id: str) -> Project:
        moved = move_by(project, option_id, whole, dx, dy)
        return moved if whole else pull_dimensions(moved, option_id, ids, dx, dy)

    bench.edit(title, nudged)
