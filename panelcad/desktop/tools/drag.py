"""Moving the selection with the pointer: only its picture moves until the button is released.

Labels go along with their controls, save while the key is held that suspends snapping.
"""

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.guides import way_words
from panelcad.desktop.tools.moving import Follower, end_of_move, plate_point
from panelcad.desktop.workbench import Workbench
from panelcad.editing.move import move_by
from panelcad.editing.places import places_among
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.snap import Snap
from panelcad.editing.snapping.standing import Standing, around
from panelcad.editing.taken_along import moved_with, taken_along
from panelcad.geometry.point import Point
from panelcad.model.project import Project


class Drag:
    """One drag from press to release. Raises `EditRefused` where the selection is held fast."""

    def __init__(self, bench: Workbench, start: Pointer, grabbed: str) -> None:
        self._bench = bench
        self._start = plate_point(bench, start.at)
        project, option = bench.document.project, bench.document.option
        self._labelled = tuple(moved_with(project, option, bench.selection.ids))
        self._alone = tuple(taken_along(project, option, bench.selection.ids))
        self._take(self._labelled)
        self._moved = Snap(0.0, 0.0)
        self._before = bench.document.project
        self._project_after(1.0, 1.0)
        layout = bench.stage.layout()
        self._follower = Follower(bench, layout, self._whole, self._standing(grabbed))
        self.gesture = bench.document.begin(f"Move {bench.selection_words()}")

    def _take(self, ids: tuple[str, ...]) -> None:
        """Go on with these."""
        self._ids, self._whole = ids, self._bench.stage.whole(ids)

    def _standing(self, grabbed: str) -> Standing:
        """All that moves as one, about the origin of what was grabbed."""
        known = standings(self._bench.stage.layout(), self._bench.stage.plate_id)
        moving = {one: standing for one, standing in known.items() if one in self._whole}
        own = next(
            (f for f in self._bench.stage.layout().plate(self._bench.stage.plate_id).inner if f.id == grabbed), None
        )
        if own is not None:
            return Standing("opening", own.centre, own.contour.bounds)
        if not moving:
            at = self._origin(grabbed)
            return Standing("selection", at, (at.x, at.y, at.x, at.y))
        held = moving.get(grabbed)
        return around(moving.values(), "selection", held.centre if held else None)

    def _origin(self, grabbed: str) -> Point:
        """The place of a note, of lettering or of what stands around; they take up no room."""
        place = places_among(self._before, self._bench.document.option, frozenset({grabbed})).get(grabbed)
        return Point(place.x, place.y) if place is not None else self._start

    def move(self, pointer: Pointer) -> None:
        here = plate_point(self._bench, pointer.at)
        wanted_x, wanted_y = here.x - self._start.x, here.y - self._start.y
        self._moved = self._follower.settle(wanted_x, wanted_y, pointer.held, pointer.mm_per_pixel)
        self._take(self._alone if pointer.held.free else self._labelled)
        self._bench.stage.shift(self._whole, self._moved.dx, self._moved.dy)
        self._tell()
        if not self.gesture.is_over:
            self.gesture.propose(self._project_after(self._moved.dx, self._moved.dy))

    def _tell(self) -> None:
        """What caught it, and how far it was moved as it is seen."""
        dx = -self._moved.dx if self._bench.stage.view.is_mirrored else self._moved.dx
        caught = f"snapped to {self._moved.words}" if self._moved.words else ""
        way = way_words(dx, self._moved.dy, self._bench.unit)
        stays = "labels stay" if self._ids == self._alone != self._labelled else ""
        told = " · ".join(words for words in (caught, f"moved {way}" if way else "", stays) if words)
        self._bench.told.emit(told[:1].upper() + told[1:])

    def _project_after(self, dx: float, dy: float) -> Project:
        return move_by(self._before, self._bench.document.option_id, self._ids, dx, dy)

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        self._over()
        self.gesture.finish()

    def cancel(self) -> None:
        self._over()
        self.gesture.cancel()

    def _over(self) -> None:
        self._bench.stage.scene.unshift()
        end_of_move(self._bench)
