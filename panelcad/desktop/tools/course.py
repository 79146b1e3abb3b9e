"""Draw an outline point by point: click or type each point, close it at the first one."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.sketch import Sketch
from panelcad.desktop.drawing_desk import EdgeKind, Use
from panelcad.desktop.drawn import Drawn
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.course_picture import course_picture
from panelcad.desktop.tools.moving import caught_place, end_of_move, spot
from panelcad.desktop.workbench import Workbench
from panelcad.editing.outline import about_its_middle, set_outline
from panelcad.editing.plates import add_plate
from panelcad.geometry.point import Point, distance
from panelcad.model.plate import Plate, PlateState
from panelcad.model.shape import Outline

_REACH_PX: Final = 9.0
_FIGURES: Final = frozenset("0123456789.,-+")


@dataclass(frozen=True)
class Purpose:
    """What is drawn point by point, and what becomes of it."""

    id: str
    title: str
    shortcut: str
    hint: str
    use: Use

    @property
    def tool(self) -> Callable[[Workbench], Tool]:
        return partial(CourseTool, purpose=self)


def _as_outline(bench: Workbench, outline: Outline) -> bool:
    plate_id = bench.stage.plate_id
    return bench.edit("Draw the outline", lambda project, option: set_outline(project, option, plate_id, outline))


def _as_plate(bench: Workbench, outline: Outline) -> bool:
    like = bench.document.option.plate(bench.stage.plate_id)
    plate = Plate(
        id="plate",
        name="Another plate",
        state=PlateState.NEW,
        outline=outline,
        thickness=like.thickness,
        alloy=like.alloy,
    )
    done = bench.make("Draw another plate", lambda project, option: add_plate(project, option, plate))
    if done:
        bench.stage.look_at_plate(bench.document.option.plates[-1].id)
    return done


def _as_opening(bench: Workbench, outline: Outline) -> bool:
    from panelcad.desktop.dialogs.openings import inner_opening  # noqa: PLC0415 - a dialog's module loads late

    drawn = Drawn(*about_its_middle(outline))
    QTimer.singleShot(0, bench, lambda: inner_opening(bench, bench.view.window(), drawn))
    return True


COURSES: Final = (
    Purpose("outline", "Out&line, point by point", "Shift+P", "The plate's outline drawn anew", _as_outline),
    Purpose("plate", "Another plate, po&int by point", "", "A plate beside the ones there are", _as_plate),
    Purpose("hole", "Opening, point b&y point", "", "An opening of any form in the sheet itself", _as_opening),
)


class CourseTool(Tool):
    hint = (
        "Click each point, or type it · A: the next edge is an arc · Enter or a click on the first point closes · "
        "Backspace takes a point back · Shift keeps level or upright · Alt draws freely · Esc abandons"
    )
    cursor = Qt.CursorShape.CrossCursor
    pane = "drawing"

    def __init__(self, bench: Workbench, purpose: Purpose) -> None:
        super().__init__(bench)
        self._purpose = purpose
        self._desk = bench.drawing
        self._sketch = Sketch(bench.stage.scene)
        self._is_taken = False

    def start(self) -> None:
        self._is_taken = True
        self.bench.selection.clear()
        self.bench.stage.look_from("front")
        self._desk.begin(self._purpose.use)
        for signal in (self._desk.changed, self.bench.theme_changed, self.bench.view.zoomed, self.bench.stage.shown):
            signal.connect(self._show)
        self._desk.went_on.connect(self._keep_in_view)
        self._show()
        self.bench.told.emit(self.hint)

    def press(self, pointer: Pointer) -> None:
        self._desk.settle(self._caught(pointer))
        end_of_move(self.bench)

    def move(self, pointer: Pointer) -> None:
        self._desk.point_at(self._caught(pointer))
        coming = self._desk.coming()
        if coming is not None and coming.refusal:
            self.bench.told.emit(coming.refusal)

    def _caught(self, pointer: Pointer) -> Point:
        """The place under the pointer: the first point where it is near, else drawn to what is near."""
        at = self.bench.stage.to_plate(pointer.at)
        course = self._desk.course
        if course is None:
            return caught_place(self.bench, pointer, None)
        is_near = distance(at, course.first) <= _REACH_PX * pointer.mm_per_pixel
        if is_near and len(course.stations) > 1 and self._desk.arc_end is None:
            end_of_move(self.bench)
            return course.first
        spots = tuple(spot(f"point {number}", station.at) for number, station in enumerate(course.stations, 1))
        return caught_place(self.bench, pointer, course.last.at, spots)

    def key(self, event: QKeyEvent) -> bool:
        act = {
            Qt.Key.Key_Escape: self._desk.abandon,
            Qt.Key.Key_Backspace: self._desk.take_back,
            Qt.Key.Key_Return: self._desk.close,
            Qt.Key.Key_Enter: self._desk.close,
            Qt.Key.Key_A: self._turn_edge,
        }.get(Qt.Key(event.key()))
        if act is not None:
            act()
            return True
        if event.text() and event.text() in _FIGURES:
            self._desk.typed.emit(event.text())
            return True
        return False

    def _turn_edge(self) -> None:
        """Straight or through a place; other arcs are chosen in the pane."""
        self._desk.take_edge(EdgeKind.THROUGH if self._desk.edge is EdgeKind.STRAIGHT else EdgeKind.STRAIGHT)

    @property
    def own_step(self) -> str:
        return "" if self._desk.course is None else f"Point {len(self._desk.course.stations)}"

    def take_back(self) -> None:
        self._desk.take_back()

    def _show(self, *_: object) -> None:
        if self._is_taken:
            if self._desk.aim != self._desk.pointed:
                end_of_move(self.bench)
            self._sketch.show(course_picture(self.bench), self.bench.theme)

    def _keep_in_view(self) -> None:
        """The view grows with a point that is set beyond its edge."""
        course, view = self._desk.course, self.bench.view
        if course is None:
            return
        at, (x1, y1, x2, y2) = self.bench.stage.to_picture(course.last.at), view.seen()
        if not (x1 <= at.x <= x2 and y1 <= at.y <= y2):
            view.show_box((min(x1, at.x), min(y1, at.y), max(x2, at.x), max(y2, at.y)))

    def cancel(self) -> None:
        """Put the tool away."""
        if not self._is_taken:
            return
        self._is_taken = False
        self._sketch.clear()
        end_of_move(self.bench)
        for signal in (self._desk.changed, self.bench.theme_changed, self.bench.view.zoomed, self.bench.stage.shown):
            signal.disconnect(self._show)
        self._desk.went_on.disconnect(self._keep_in_view)
        self._desk.end()
