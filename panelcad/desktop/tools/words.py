"""Click where words go: a note on the drawing, or lettering in the metal; a dialog asks for them there."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.base import DRAG_PX, Tool
from panelcad.desktop.tools.moving import reading_point
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.hooks import hook_near
from panelcad.geometry.point import Point, distance
from panelcad.model.markup import Hook

_REACH_PX: Final = 10.0
_DIALOGS: Final = "panelcad.desktop.dialogs.words"


@dataclass(frozen=True)
class Wording:
    """Words of one kind; `function` names the dialog that asks for them."""

    id: str
    title: str
    shortcut: str
    hint: str
    function: str

    @property
    def tool(self) -> Callable[[Workbench], Tool]:
        return partial(WordsTool, wording=self)


WORDINGS: Final = (
    Wording("note", "&Note on the drawing", "N", "Click where it goes, or drag from what it points at", "note"),
    Wording("lettering", "&Lettering in the metal", "L", "Click where its middle goes", "lettering"),
)


class WordsTool(Tool):
    cursor = Qt.CursorShape.IBeamCursor

    def __init__(self, bench: Workbench, wording: Wording) -> None:
        super().__init__(bench)
        self._wording = wording
        self.hint = f"{wording.hint} · Esc is done"
        self._pressed: Point | None = None

    def start(self) -> None:
        self.bench.told.emit(self.hint)

    def works_in(self, view: ViewKind) -> bool:
        return view.id == self.home

    def press(self, pointer: Pointer) -> None:
        self._pressed = pointer.at

    def move(self, pointer: Pointer) -> None:
        if self._pressed is not None:
            self.bench.stage.scene.set_guides((Guide(self._pressed, pointer.at),))

    def release(self, pointer: Pointer) -> None:
        pressed, self._pressed = self._pressed, None
        self.bench.stage.scene.set_guides(())
        if pressed is None:
            return
        at = reading_point(self.bench, pointer.at)
        is_dragged = distance(pressed, pointer.at) > DRAG_PX * pointer.mm_per_pixel
        to = self._hook(self.bench.stage.to_plate(pressed), pointer) if is_dragged else None
        QTimer.singleShot(0, self.bench, lambda: self._ask(at, to))

    def _hook(self, at: Point, pointer: Pointer) -> Hook:
        plate = self.bench.stage.layout().plate(self.bench.stage.plate_id)
        return hook_near(plate, at, _REACH_PX * pointer.mm_per_pixel)

    def _ask(self, at: Point, to: Hook | None) -> None:
        self.bench.take_tool("select")
        getattr(import_module(_DIALOGS), self._wording.function)(self.bench, self.bench.view.window(), at, to)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            self.bench.take_tool("select")
            return True
        return super().key(event)

    def cancel(self) -> None:
        self._pressed = None
        self.bench.stage.scene.set_guides(())
