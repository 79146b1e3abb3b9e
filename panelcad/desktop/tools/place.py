"""Place a cutout of the library: it hangs at the pointer, each click puts one down."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.carry import Carry
from panelcad.desktop.workbench import Workbench
from panelcad.errors import PanelcadError
from panelcad.model.cutout import Cutout


class PlaceTool(Tool):
    hint = "Click to place · Alt or Ctrl places freely · Esc is done"
    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, bench: Workbench, cutout: Cutout) -> None:
        super().__init__(bench)
        self._cutout = cutout
        self._carry: Carry | None = None

    def move(self, pointer: Pointer) -> None:
        if self._in_hand():
            self._carried().follow(pointer.at, pointer.held, pointer.mm_per_pixel)

    def press(self, pointer: Pointer) -> None:
        if self._in_hand():
            self._carried().follow(pointer.at, pointer.held, pointer.mm_per_pixel)
            self._carried().put_down()
            self._carry = None

    def _in_hand(self) -> bool:
        """Take a fresh one in hand where the last was put down or the project changed meanwhile."""
        if self._carry is not None and not self._carry.is_stale:
            return True
        self.cancel()
        try:
            self._carry = Carry(self.bench, self._cutout)
        except PanelcadError as refusal:
            self.bench.refused.emit(str(refusal))
        return self._carry is not None

    def _carried(self) -> Carry:
        if self._carry is None:
            raise RuntimeError("nothing is in hand")
        return self._carry

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            self.cancel()
            self.bench.take_tool("select")
            return True
        return super().key(event)

    def cancel(self) -> None:
        if self._carry is not None:
            self._carry.give_up()
            self._carry = None
