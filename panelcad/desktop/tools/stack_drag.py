"""Taking hold of one unit of a stack: along the stack it goes past its neighbours, any other way the stack moves."""

from dataclasses import dataclass
from typing import Final, Self

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.label import LabelSide
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.drag import Drag
from panelcad.desktop.tools.moving import end_of_move, plate_point
from panelcad.desktop.workbench import Workbench
from panelcad.editing.place import cut_with_id
from panelcad.editing.stack import is_stack, move_in_stack
from panelcad.editing.stack_order import place_in_order, units_from_above
from panelcad.errors import PanelcadError
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.project import Item, Project

_WHOLE: Final = "Shift, Alt or Ctrl moves the whole stack"


@dataclass(frozen=True)
class _Stood:
    """The unit as it stood when it was taken hold of, its place from above, and of how many."""

    unit: Item
    place: int
    count: int

    @classmethod
    def of(cls, bench: Workbench, item_id: str) -> Self | None:
        """None for what is in no stack, or alone in it."""
        project, option = bench.document.project, bench.document.option
        unit = next((item for item in option.items if item.id == item_id), None)
        if unit is None or unit.cut is None or not is_stack(project, option, unit.cut):
            return None
        order = [one.id for one in units_from_above(option, cut_with_id(option, unit.cut)[1])]
        return cls(unit, order.index(item_id), len(order)) if len(order) > 1 else None

    def is_along(self, dx: float, dy: float) -> bool:
        """Whether a way in mm of the plate runs along the stack rather than across it."""
        way = Placement(rotation=-self.unit.rotation).point(Point(dx, dy))
        return abs(way.y) >= abs(way.x)


class StackDrag:
    """One drag from press to release. Raises `EditRefused` where neither the unit nor the stack can move."""

    def __init__(self, bench: Workbench, start: Pointer, stood: _Stood) -> None:
        self._bench, self._stood = bench, stood
        self._pressed = plate_point(bench, start.at)
        self._before = bench.document.project
        self._whole: Drag | None = None
        self._why_not = ""
        try:
            self._whole = Drag(bench, start, stood.unit.id)
        except PanelcadError as refusal:
            self._why_not = str(refusal)
            self._in_order((stood.place + 1) % stood.count)
        self._gesture = self._whole.gesture if self._whole else bench.document.begin("")
        self._title = self._gesture.title
        self._is_in_order = False

    def move(self, pointer: Pointer) -> None:
        if self._gesture.is_over:
            return
        place = self._place(pointer)
        if place is not None:
            self._reorder(place)
            return
        if self._is_in_order:
            self._show(self._before)
            self._is_in_order = False
        self._gesture.title = self._title
        if self._whole is not None:
            self._whole.move(pointer)
        else:
            end_of_move(self._bench)
            self._bench.told.emit(self._why_not)

    def _place(self, pointer: Pointer) -> int | None:
        """Where in the order the pointer holds the unit; None where the whole stack is meant."""
        here = plate_point(self._bench, pointer.at)
        is_along = self._stood.is_along(here.x - self._pressed.x, here.y - self._pressed.y)
        if pointer.held.free or pointer.held.constrained or not is_along:
            return None
        return place_in_order(self._before, self._bench.document.option, self._stood.unit.id, here)

    def _in_order(self, place: int) -> Project:
        if place == self._stood.place:
            return self._before
        return move_in_stack(self._before, self._bench.document.option_id, self._stood.unit.id, place)

    def _reorder(self, place: int) -> None:
        self._is_in_order = True
        unit = self._stood.unit
        try:
            project = self._in_order(place)
        except PanelcadError as refusal:
            self._show(self._before)
            end_of_move(self._bench)
            self._bench.refused.emit(str(refusal))
            return
        self._gesture.title = f"Move {unit.name} in its stack"
        self._show(project)
        words = f"{place + 1} of {self._stood.count} from above"
        self._bench.stage.scene.set_guides(self._frame(project, words))
        self._bench.told.emit(f"{unit.name} goes to place {words} · {_WHOLE}")

    def _show(self, project: Project) -> None:
        self._gesture.propose(project)
        self._bench.stage.preview(project)

    def _frame(self, project: Project, words: str) -> tuple[Guide, ...]:
        """Around the place that the unit takes; below it words say which that is."""
        unit = project.option(self._bench.document.option_id).item(self._stood.unit.id)
        rack = project.cutout(unit.cutout or "").rack
        if rack is None:
            return ()
        at, (x, y) = Placement(unit.x, unit.y, unit.rotation), (rack.rail_distance / 2, rack.height / 2)
        corners = [Point(-x, y), Point(x, y), Point(x, -y), Point(-x, -y)]
        spots = [self._bench.stage.to_picture(at.point(corner)) for corner in corners]
        sides = [Guide(start, end) for start, end in zip(spots, [*spots[1:], spots[0]], strict=True)]
        below = self._bench.stage.to_picture(at.point(Point(0.0, -y)))
        return (*sides, Guide(below, below, words, below, LabelSide.BELOW))

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        self._over()
        self._gesture.finish()

    def cancel(self) -> None:
        self._over()
        self._gesture.cancel()

    def _over(self) -> None:
        self._bench.stage.scene.unshift()
        end_of_move(self._bench)


def begin_drag(bench: Workbench, start: Pointer, grabbed: str) -> Drag | StackDrag:
    """A drag of what is selected. Raises `EditRefused` where it is held fast."""
    stood = _Stood.of(bench, grabbed) if tuple(bench.selection.ids) == (grabbed,) else None
    return Drag(bench, start, grabbed) if stood is None else StackDrag(bench, start, stood)


def try_drag(bench: Workbench, start: Pointer, grabbed: str) -> Drag | StackDrag | None:
    """A drag, or None and a word why not."""
    if not bench.stage.view.moves_things:
        bench.told.emit(f"Things are moved in the front view; {bench.stage.view.title} only shows them")
        return None
    try:
        return begin_drag(bench, start, grabbed)
    except PanelcadError as refusal:
        bench.refused.emit(str(refusal))
        return None
