"""A tool with work of its own begun, while a view is shown in which it cannot go on."""

from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.views import view_kind
from panelcad.desktop.workbench import Workbench


class Resting:
    """It keeps what was begun and answers to keys; the pointer puts nothing down, and says where it would."""

    def __init__(self, bench: Workbench, tool: Tool) -> None:
        self._bench, self._tool = bench, tool

    def press(self, pointer: Pointer) -> None:  # noqa: ARG002
        home = view_kind(self._tool.home)
        self._bench.told.emit(f"What was begun goes on in the view '{home.title}' ({home.shortcut})")

    def move(self, pointer: Pointer) -> None: ...

    def release(self, pointer: Pointer) -> None: ...

    def double_click(self, pointer: Pointer) -> None: ...

    def key(self, event: QKeyEvent) -> bool:
        return self._tool.key(event)

    def cancel(self) -> None:
        self._tool.cancel()
