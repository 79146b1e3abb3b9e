"""Put a dimension on the drawing: two points that hold on to parts, and how far its line stands off."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.hooks import hook_near, stand_off
from panelcad.editing.marks import add_dimension
from panelcad.geometry.point import Point, distance
from panelcad.model.layout import PlateLayout
from panelcad.model.marked import hook_point
from panelcad.model.markup import Along, Hook
from panelcad.units import format_length

_REACH_PX: Final = 10.0
_FROM: Final = "Click what to measure from: a centre, an edge of a bezel or of the sheet · Alt takes the bare point"
_TO: Final = "Click what to measure to"
_OFF: Final = "Pull the line to its place: above or below for the width, beside for the height, between for the way"


class DimensionTool(Tool):
    hint = _FROM
    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._ends: list[Hook] = []

    def start(self) -> None:
        self.bench.told.emit(self.hint)

    def works_in(self, view: ViewKind) -> bool:
        return view.id == self.home

    def _plate(self) -> PlateLayout:
        return self.bench.stage.layout().plate(self.bench.stage.plate_id)

    def _hook(self, pointer: Pointer) -> Hook:
        at = self.bench.stage.to_plate(pointer.at)
        if pointer.held.free:
            return Hook(x=at.x, y=at.y)
        return hook_near(self._plate(), at, _REACH_PX * pointer.mm_per_pixel)

    def press(self, pointer: Pointer) -> None:
        if len(self._ends) == 2:
            self._put(pointer)
            return
        hook = self._hook(pointer)
        if hook not in self._ends:  # two equal ends measure nothing
            self._ends.append(hook)
        self._tell()

    def move(self, pointer: Pointer) -> None:
        plate = self._plate()
        points = [hook_point(plate, hook) for hook in self._ends]
        if len(points) < 2:
            self._show_hold(points, self._hook(pointer), plate)
            return
        along, offset = stand_off(points[0], points[1], self.bench.stage.to_plate(pointer.at))
        self._show((_line(points, along, offset, self._words(points, along)),))

    def _show_hold(self, points: list[Point], hook: Hook, plate: PlateLayout) -> None:
        """What would be taken hold of, and the way there from the first end."""
        at = hook_point(plate, hook)
        what = f"{hook.hold.value} of {self.bench.name_of(hook.part)}" if hook.part else "the point"
        start = points[0] if points else at
        self._show((Guide(start, at, f"{what} · {format_length(distance(start, at), self.bench.unit)}"),))

    def _words(self, points: list[Point], along: Along) -> str:
        a, b = points
        values = {Along.ACROSS: abs(b.x - a.x), Along.UP: abs(b.y - a.y), Along.STRAIGHT: distance(a, b)}
        return format_length(values[along], self.bench.unit)

    def _show(self, guides: tuple[Guide, ...]) -> None:
        to_picture = self.bench.stage.to_picture
        self.bench.stage.scene.set_guides(
            tuple(Guide(to_picture(guide.start), to_picture(guide.end), guide.label) for guide in guides)
        )

    def _put(self, pointer: Pointer) -> None:
        plate = self._plate()
        start, end = self._ends
        at = self.bench.stage.to_plate(pointer.at)
        along, offset = stand_off(hook_point(plate, start), hook_point(plate, end), at)
        fine = self.bench.settings.step("fine", self.bench.unit)
        offset = round(offset / fine) * fine
        plate_id = self.bench.stage.plate_id
        self._forget()
        self.bench.edit(
            "Put a dimension on the drawing",
            lambda project, option: add_dimension(project, option, plate_id, start, end, along, offset)[0],
        )

    def _forget(self) -> None:
        self._ends = []
        self.bench.stage.scene.set_guides(())
        self._tell()

    def _tell(self) -> None:
        self.hint = (_FROM, _TO, _OFF)[len(self._ends)]
        self.bench.told.emit(self.hint)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._ends:
                self._forget()
            else:
                self.bench.take_tool("select")
            return True
        return super().key(event)

    def cancel(self) -> None:
        self._ends = []
        self.bench.stage.scene.set_guides(())


def _line(points: list[Point], along: Along, offset: float, words: str) -> Guide:
    """The dimension line as it will stand."""
    a, b = points
    if along is Along.ACROSS:
        return Guide(Point(a.x, a.y + offset), Point(b.x, a.y + offset), words)
    if along is Along.UP:
        return Guide(Point(a.x + offset, a.y), Point(a.x + offset, b.y), words)
    span = distance(a, b) or 1.0
    dx, dy = -(b.y - a.y) / span * offset, (b.x - a.x) / span * offset
    return Guide(a.moved(dx, dy), b.moved(dx, dy), words)
