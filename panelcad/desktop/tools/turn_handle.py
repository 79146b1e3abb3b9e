"""The handle that turns what is selected: it stands outside the box around it, where there is room to be seen."""

from typing import Final

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.handles import TURN_RADIUS, Grip, Handle, Handles
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.display import Bounds
from panelcad.editing.rotate import can_turn
from panelcad.editing.taken_along import taken_along
from panelcad.geometry.point import Point

_AWAY_PX: Final = 30.0
_MARGIN_PX: Final = 14.0
_CORNER_PX: Final = 4.0
"""From a corner of the box; round things leave room there."""


class TurnHandle:
    def __init__(self, bench: Workbench) -> None:
        self._bench = bench
        self._handles = Handles(bench.stage.scene)
        self._box: Bounds | None = None
        self._looks_again = (bench.selection.changed, bench.stage.shown)
        self._stands_again = (bench.view.zoomed, bench.view.scrolled, bench.theme_changed)
        self._is_up = False

    def put_up(self) -> None:
        """Show it from now on whenever something is selected that can be turned."""
        self._is_up = True
        for signal in self._looks_again:
            signal.connect(self.look)
        for signal in self._stands_again:
            signal.connect(self._stand)
        self.look()

    def take_down(self) -> None:
        if self._is_up:
            self._is_up = False
            for signal in self._looks_again:
                signal.disconnect(self.look)
            for signal in self._stands_again:
                signal.disconnect(self._stand)
        self._handles.clear()

    def hide(self) -> None:
        """Out of the way until one looks again."""
        self._box = None
        self._handles.clear()

    def look(self) -> None:
        """Stand beside what is selected now."""
        self._box = self._box_around()
        self._stand()

    def _box_around(self) -> Bounds | None:
        stage, document = self._bench.stage, self._bench.document
        if not stage.view.moves_things or not self._bench.selection.ids:
            return None
        ids = taken_along(document.project, document.option, self._bench.selection.ids)
        if not can_turn(document.project, document.option, ids):
            return None
        return stage.scene.box(stage.whole(tuple(ids)))

    def _stand(self, *_: object) -> None:
        if self._box is None:
            self._handles.clear()
            return
        handle = Handle(Grip.TURN, 0, self._place(self._box))
        if self._handles.shown != (handle,):
            self._handles.show((handle,), self._bench.theme)

    def _place(self, box: Bounds) -> Point:
        """Above the box, or on the first side or corner of it that is in view and covers nothing else."""
        sides = _around(box, _AWAY_PX / self._bench.view.zoom, _CORNER_PX / self._bench.view.zoom)
        in_view = [at for at in sides if self._is_in_view(at)]
        return next(filter(self._is_clear, in_view), (in_view or sides)[0])

    def _is_in_view(self, at: Point) -> bool:
        left, bottom, right, top = self._bench.view.seen()
        margin = _MARGIN_PX / self._bench.view.zoom
        return left + margin < at.x < right - margin and bottom + margin < at.y < top - margin

    def _is_clear(self, at: Point) -> bool:
        """Whether nothing is there but a sheet and what is selected."""
        sheets = {plate.id for plate in self._bench.document.option.plates}
        own = self._bench.stage.whole(self._bench.selection.ids)
        there = self._bench.stage.scene.owners_at(at, TURN_RADIUS / self._bench.view.zoom)
        return (sheets | own).issuperset(there)

    @property
    def at(self) -> Point | None:
        """Where it stands on the picture."""
        return next((handle.at for handle in self._handles.shown), None)

    def show_at(self, at: Point) -> None:
        """Follow the pointer while something is turned."""
        self._handles.show((Handle(Grip.TURN, 0, at),), self._bench.theme)

    def is_under(self, pointer: Pointer) -> bool:
        return self._handles.at(pointer.at, pointer.mm_per_pixel) is not None


def _around(box: Bounds, away: float, corner: float) -> tuple[Point, ...]:
    """The sides of a box so far away, above first, and then its corners."""
    x1, y1, x2, y2 = box
    x, y = (x1 + x2) / 2, (y1 + y2) / 2
    above, below = Point(x, y2 + away), Point(x, y1 - away)
    right, left = Point(x2 + away, y), Point(x1 - away, y)
    corners = (Point(cx, cy) for cy in (y2 + corner, y1 - corner) for cx in (x2 + corner, x1 - corner))
    return (above, below, right, left, *corners)
