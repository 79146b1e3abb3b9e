"""Move the pilot's eye: the panel is seen from where it is dragged to."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.document import Gesture
from panelcad.desktop.tools.base import DRAG_PX, Tool
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.eye import move_eye
from panelcad.geometry.point import distance
from panelcad.model.project import Project
from panelcad.units import format_length

PILOT_VIEW: Final = "pilot"
_WAYS: Final = {
    Qt.Key.Key_Left: (-1.0, 0.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0, 0.0),
    Qt.Key.Key_Down: (0.0, -1.0, 0.0),
    Qt.Key.Key_PageUp: (0.0, 0.0, 1.0),
    Qt.Key.Key_PageDown: (0.0, 0.0, -1.0),
}


class EyeTool(Tool):
    hint = "Drag to move the eye · Arrow keys nudge · Page up and down go nearer and farther · Esc is done"
    cursor = Qt.CursorShape.SizeAllCursor
    home = PILOT_VIEW

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._start: Pointer | None = None
        self._gesture: Gesture | None = None
        self._before: Project = bench.document.project

    def start(self) -> None:
        self._tell(self.bench.document.project)

    def works_in(self, view: ViewKind) -> bool:
        return view.id == PILOT_VIEW

    def press(self, pointer: Pointer) -> None:
        self._start = pointer
        self._before = self.bench.document.project

    def move(self, pointer: Pointer) -> None:
        if self._start is None:
            return
        if self._gesture is None:
            if distance(self._start.at, pointer.at) < DRAG_PX * pointer.mm_per_pixel:
                return
            self._gesture = self.bench.document.begin("Move the eye point")
        dx, dy = pointer.at.x - self._start.at.x, pointer.at.y - self._start.at.y
        if pointer.held.constrained:
            dx, dy = (dx, 0.0) if abs(dx) >= abs(dy) else (0.0, dy)
        self._show(move_eye(self._before, dx, dy))

    def _show(self, project: Project) -> None:
        if self._gesture is not None and not self._gesture.is_over:
            self._gesture.propose(project)
            self.bench.stage.preview(project)
            self._tell(project)

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        gesture, self._gesture, self._start = self._gesture, None, None
        if gesture is not None:
            gesture.finish()

    def cancel(self) -> None:
        gesture, self._gesture, self._start = self._gesture, None, None
        if gesture is not None:
            gesture.cancel()
            self.bench.stage.refresh()

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._start is None:
                self.bench.take_tool("select")
            self.cancel()
            return True
        way = _WAYS.get(Qt.Key(event.key()))
        if way is None:
            return False
        step = "coarse" if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else "fine"
        dx, dy, dz = (part * self.bench.settings.step(step, self.bench.unit) for part in way)
        self.bench.edit("Nudge the eye point", lambda project, _: move_eye(project, dx, dy, dz))
        self._tell(self.bench.document.project)
        return True

    def _tell(self, project: Project) -> None:
        eye = project.surroundings.eye
        if eye is None:
            self.bench.told.emit("No eye point yet: drag anywhere to set one")
            return
        x, y, z = (format_length(value, self.bench.unit) for value in (eye.x, eye.y, eye.z))
        self.bench.told.emit(f"Eye at x {x}, y {y}, z {z}")
