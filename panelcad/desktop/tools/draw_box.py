"""Draw something where it is: drag its box, and say the rest in a dialog; a plain click gives only the place."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.drawn import Drawn
from panelcad.desktop.tools.base import DRAG_PX, Tool
from panelcad.desktop.tools.moving import caught_place, end_of_move
from panelcad.desktop.workbench import Workbench
from panelcad.geometry.point import Point, distance, middle
from panelcad.model.shape import Rectangle
from panelcad.units import format_length, format_number

_DIALOGS: Final = "panelcad.desktop.dialogs"


@dataclass(frozen=True)
class Drawing:
    """A thing that is drawn with a box; `module` and `function` name the dialog that says the rest."""

    id: str
    title: str
    shortcut: str
    hint: str
    module: str
    function: str
    view: str
    """The view in which it is seen."""

    @property
    def tool(self) -> Callable[[Workbench], Tool]:
        return partial(BoxTool, drawing=self)


_AROUND: Final = "surroundings"
DRAWINGS: Final = (
    Drawing(
        "opening",
        "Draw an &opening",
        "Shift+O",
        "In the sheet itself, as for a glove box",
        "openings",
        "inner_opening",
        "front",
    ),
    Drawing("obstacle", "Draw an o&bstacle", "Shift+B", "A rib, tube or duct behind", _AROUND, "obstacle", "behind"),
    Drawing("keep-out", "Draw a &keep-out", "Shift+K", "To stay free in front", _AROUND, "keep_out", "front"),
    Drawing("depth", "Draw a &depth limit", "Shift+D", "How deep it is behind", _AROUND, "depth_limit", "behind"),
    Drawing("moving", "Draw a mo&ving part", "Shift+V", "A shaft and its travel", _AROUND, "moving_part", "behind"),
)


class BoxTool(Tool):
    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, bench: Workbench, drawing: Drawing) -> None:
        super().__init__(bench)
        self._drawing = drawing
        self.hint = (
            f"{drawing.title.replace('&', '')}: drag its box, or click for figures · Alt draws freely · Esc is done"
        )
        self._start: Point | None = None
        self._end = Point(0.0, 0.0)

    def start(self) -> None:
        self.bench.stage.look_from(self._drawing.view)
        self.bench.told.emit(self.hint)

    def press(self, pointer: Pointer) -> None:
        self._start = self._end = self._caught(pointer)

    def move(self, pointer: Pointer) -> None:
        self._end = self._caught(pointer)
        if self._start is not None:
            a, b = (self.bench.stage.to_picture(point) for point in (self._start, self._end))
            box = min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)
            self.bench.stage.scene.overlay.set_band(box)
            self._tell_size()

    def _caught(self, pointer: Pointer) -> Point:
        """The place under the pointer, drawn to what is near."""
        return caught_place(self.bench, pointer, None)

    def _tell_size(self) -> None:
        width, height = self._size()
        unit = self.bench.unit
        self.bench.told.emit(f"{format_number(width, unit)} × {format_length(height, unit)}")

    def _size(self) -> tuple[float, float]:
        start = self._start or self._end
        return abs(self._end.x - start.x), abs(self._end.y - start.y)

    def release(self, pointer: Pointer) -> None:
        start = self._start
        if start is None:
            return
        width, height = self._size()
        is_drawn = distance(start, self._end) > DRAG_PX * pointer.mm_per_pixel and width > 0 and height > 0
        shape = Rectangle(width=width, height=height) if is_drawn else None
        drawn = Drawn(shape, middle(start, self._end) if is_drawn else start)
        self._forget()
        QTimer.singleShot(0, self.bench, lambda: self._ask(drawn))

    def _ask(self, drawn: Drawn) -> None:
        """The dialog opens once the mouse button's event is over."""
        self.bench.take_tool("select")
        function = getattr(import_module(f"{_DIALOGS}.{self._drawing.module}"), self._drawing.function)
        function(self.bench, self.bench.view.window(), drawn)

    def _forget(self) -> None:
        self._start = None
        self.bench.stage.scene.overlay.set_band(None)
        end_of_move(self.bench)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._start is not None:
                self._forget()
            else:
                self.bench.take_tool("select")
            return True
        return super().key(event)

    def cancel(self) -> None:
        self._forget()
