"""Shape the plate's outline: drag corners, bow edges, add and take away corners."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.handles import REACH_PX, Grip, Handle, Handles
from panelcad.desktop.tools.base import ARROWS, Tool
from panelcad.desktop.tools.outline_drag import OutlineDrag
from panelcad.desktop.workbench import Workbench
from panelcad.editing.sharp_outline import SharpOutline
from panelcad.errors import PanelcadError
from panelcad.geometry.point import distance

_SHORTEST_PX: Final = 28.0
"""An edge shorter than that on the screen has no handle of its own between its corners'."""
_REMOVES: Final = {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}


class OutlineTool(Tool):
    hint = (
        "Drag a corner, an edge's middle to bow it, a rounding's to change its radius · Double-click: another corner · "
        "Del takes a corner away · Arrow keys nudge · Esc is done"
    )
    cursor = Qt.CursorShape.CrossCursor
    pane = "outline"

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._handles = Handles(bench.stage.scene)
        self._drag: OutlineDrag | None = None
        self._is_taken = False

    def start(self) -> None:
        self._is_taken = True
        self.bench.selection.clear()
        self.bench.outline.changed.connect(self._show)
        self.bench.theme_changed.connect(self._show)
        self.bench.view.zoomed.connect(self._show)
        self._show()
        self.bench.told.emit(self.hint)

    def _show(self, *_: object) -> None:
        outline = self.bench.outline.outline
        self._handles.show(self._wanted(outline), self.bench.theme)

    def _wanted(self, outline: SharpOutline) -> tuple[Handle, ...]:
        picked, to_picture = self.bench.outline.corner, self.bench.stage.to_picture
        least = _SHORTEST_PX / self.bench.view.zoom
        made = []
        for i, edge in enumerate(outline.edges):
            made.append(Handle(Grip.CORNER, i, to_picture(edge.start), is_picked=i == picked))
            if edge.length > least:
                made.append(Handle(Grip.MIDDLE, i, to_picture(edge.at(0.5))))
            rounding = outline.rounding(i)
            if rounding is not None and distance(rounding.at(0.5), edge.start) > least / 2:
                made.append(Handle(Grip.ROUNDING, i, to_picture(rounding.at(0.5))))
        return tuple(made)

    @property
    def handles(self) -> tuple[Handle, ...]:
        return self._handles.shown

    def press(self, pointer: Pointer) -> None:
        handle = self._handles.at(pointer.at, pointer.mm_per_pixel)
        if handle is None:
            return
        self.bench.outline.pick(handle.number)
        try:
            self._drag = OutlineDrag(self.bench, handle, pointer)
        except PanelcadError as refusal:
            self.bench.refused.emit(str(refusal))

    def move(self, pointer: Pointer) -> None:
        if self._drag is not None:
            self._drag.move(pointer)
            self._handles.show(self._wanted(self._drag.outline), self.bench.theme)

    def release(self, pointer: Pointer) -> None:
        drag, self._drag = self._drag, None
        if drag is not None:
            drag.release(pointer)

    def double_click(self, pointer: Pointer) -> None:
        """Another corner where an edge was clicked."""
        desk, at = self.bench.outline, self.bench.stage.to_plate(pointer.at)
        segments = desk.outline.edges
        nearest = min(range(len(segments)), key=lambda i: distance(segments[i].nearest(at), at))
        if distance(segments[nearest].nearest(at), at) <= REACH_PX * pointer.mm_per_pixel:
            self._drop()
            desk.change("Add a corner", lambda outline, _: outline.with_corner(nearest, at))
            desk.pick(nearest + 1)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._drag is not None:
                self._drop()
            else:
                self.bench.take_tool("select")
            return True
        if event.key() in _REMOVES:
            self.bench.outline.change("Take a corner away", SharpOutline.without)
            return True
        if event.key() in ARROWS:
            self._nudge_corner(event)
            return True
        return False

    def _nudge_corner(self, event: QKeyEvent) -> None:
        dx, dy = self.nudge_step(event)
        self.bench.outline.change(
            "Nudge a corner",
            lambda outline, i: outline.moved(i, outline.at(i).moved(dx, dy)),
        )

    def _drop(self) -> None:
        drag, self._drag = self._drag, None
        if drag is not None:
            drag.cancel()

    def cancel(self) -> None:
        """Put the tool away."""
        self._drop()
        self._handles.clear()
        if self._is_taken:
            self._is_taken = False
            self.bench.outline.changed.disconnect(self._show)
            self.bench.theme_changed.disconnect(self._show)
            self.bench.view.zoomed.disconnect(self._show)
