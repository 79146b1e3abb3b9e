"""Move the view with the left button."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.geometry.point import Point


class PanTool(Tool):
    hint = "Drag to pan · Wheel zooms at the pointer · Esc is done"
    cursor = Qt.CursorShape.OpenHandCursor

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._from: Point | None = None

    def works_in(self, view: ViewKind) -> bool:  # noqa: ARG002 - in every one
        return True

    def press(self, pointer: Pointer) -> None:
        self._from = pointer.at
        self.bench.view.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def move(self, pointer: Pointer) -> None:
        if self._from is not None:
            self.bench.view.scroll_mm(self._from.x - pointer.at.x, self._from.y - pointer.at.y)

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002
        self.cancel()

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            self.bench.take_tool("select")
            return True
        return super().key(event)

    def cancel(self) -> None:
        self._from = None
        self.bench.view.viewport().setCursor(self.cursor)
