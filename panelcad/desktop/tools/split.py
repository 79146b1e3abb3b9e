"""Split the plate along a straight line: click two points of it; a dialog shows them in figures."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.label import Label
from panelcad.desktop.canvas.sketch import Drawn, Sketch
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.moving import caught_place, end_of_move, spot
from panelcad.desktop.workbench import Workbench
from panelcad.editing.split_plates import split_plate
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point, bearing, distance, middle
from panelcad.geometry.split import through_box
from panelcad.units import format_angle, format_length


class SplitTool(Tool):
    hint = "Click two points of the line · Shift keeps it level or upright · Alt draws freely · Esc is done"
    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._start: Point | None = None
        self._sketch = Sketch(bench.stage.scene)

    def start(self) -> None:
        self.bench.selection.clear()
        self.bench.stage.look_from("front")
        self.bench.told.emit(self.hint)

    def press(self, pointer: Pointer) -> None:
        at = self._caught(pointer)
        if self._start is None:
            self._start = at
        elif at != self._start:
            line = (self._start, at)
            QTimer.singleShot(0, self.bench, lambda: self._ask(line))

    def move(self, pointer: Pointer) -> None:
        at = self._caught(pointer)
        if self._start is not None and at != self._start:
            self._show(self._start, at)

    def _caught(self, pointer: Pointer) -> Point:
        spots = (spot("the first point", self._start),) if self._start is not None else ()
        return caught_place(self.bench, pointer, self._start, spots)

    def _show(self, start: Point, end: Point) -> None:
        """The line as far as the plate reaches, and why it cannot be where it cannot."""
        document, stage = self.bench.document, self.bench.stage
        refusal = ""
        try:
            split_plate(document.project, document.option_id, stage.plate_id, start, end)
        except PanelcadError as problem:
            refusal = str(problem)
            self.bench.told.emit(refusal)
        line = through_box(stage.layout().plate(stage.plate_id).outline.bounds, start, end)
        words = f"{format_length(distance(start, end), self.bench.unit)}   {format_angle(bearing(start, end))}"
        points = tuple(stage.to_picture(at) for at in (start, end))
        run = tuple(stage.to_picture(at) for at in line)
        self._sketch.show(
            Drawn(
                coming=(run,),
                is_refused=bool(refusal),
                points=points,
                labels=(Label(middle(*points), words, run=run),),
            ),
            self.bench.theme,
        )

    def _ask(self, line: tuple[Point, Point]) -> None:
        """The dialog opens once the mouse button's event is over."""
        from panelcad.desktop.dialogs.sheets import split_sheet  # noqa: PLC0415 - a dialog's module loads late

        self.bench.take_tool("select")
        split_sheet(self.bench, self.bench.view.window(), line)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() != Qt.Key.Key_Escape:
            return super().key(event)
        if self._start is None:
            self.bench.take_tool("select")
        self._forget()
        return True

    def _forget(self) -> None:
        self._start = None
        self._sketch.clear()
        end_of_move(self.bench)

    def cancel(self) -> None:
        self._forget()
