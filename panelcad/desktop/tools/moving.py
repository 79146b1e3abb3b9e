"""What dragging and placing share: a thing follows the pointer, is caught by what is near, and is judged meanwhile."""

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.guides import guides
from panelcad.desktop.stage import Stage
from panelcad.desktop.workbench import Workbench
from panelcad.editing.snapping.on_plate import field_around, standings
from panelcad.editing.snapping.snap import Snap, snap, to_reading
from panelcad.editing.snapping.standing import Standing
from panelcad.geometry.point import Point
from panelcad.model.layout import Layout
from panelcad.units import LengthUnit, decimals

_REACH_PX: Final = 8.0


class Follower:
    """Settles moves of `moving` among everything else on the plate, and `more` that is no thing of it."""

    def __init__(
        self,
        bench: Workbench,
        layout: Layout,
        ids: Collection[str],
        moving: Standing,
        more: tuple[Standing, ...] = (),
    ) -> None:
        self._bench = bench
        self._moving = moving
        plate_id = bench.stage.plate_id
        self._panel = layout.plate(plate_id).outline.bounds
        field = field_around(layout, plate_id, ids, _grid(bench), standings(layout, plate_id))
        self._field = replace(field, others=(*field.others, *more))

    def settle(self, dx: float, dy: float, held: Held, mm_per_pixel: float) -> Snap:
        """The move that is made of a wanted one, its guides shown."""
        if held.constrained:
            dx, dy = (dx, 0.0) if abs(dx) >= abs(dy) else (0.0, dy)
        free = held.free or not self._bench.settings.snaps
        settled = Snap(dx, dy) if free else snap(self._moving, dx, dy, self._field, _REACH_PX * mm_per_pixel)
        if held.constrained:
            settled = _kept_straight(settled, dx, dy)
        settled = to_reading(settled, self._moving, reading_step(self._bench.unit))
        self._show(settled)
        return settled

    def _show(self, settled: Snap) -> None:
        moved = self._moving.moved(settled.dx, settled.dy)
        lines = guides(settled, moved, self._panel, self._bench.unit)
        stage = self._bench.stage
        stage.scene.set_guides(tuple(_in_picture(line, stage) for line in lines))
        self._bench.told.emit(f"Snapped to {settled.words}" if settled.words else "")


def reading_step(unit: LengthUnit) -> float:
    """The least length that is shown, in mm: 0.001 in or 0.01 mm."""
    return unit.mm * 10.0 ** -decimals(unit)


def reading_point(bench: Workbench, at: Point) -> Point:
    """The place of the plate under a place of the picture, at figures that people read."""
    here, step = plate_point(bench, at), reading_step(bench.unit)
    return Point(round(here.x / step) * step, round(here.y / step) * step)


def _in_picture(guide: Guide, stage: Stage) -> Guide:
    at = guide.label_at
    return replace(
        guide,
        start=stage.to_picture(guide.start),
        end=stage.to_picture(guide.end),
        label_at=stage.to_picture(at) if at is not None else None,
    )


def _kept_straight(settled: Snap, dx: float, dy: float) -> Snap:
    if dx == 0.0:
        return Snap(0.0, settled.dy, None, settled.y)
    return Snap(settled.dx, 0.0, settled.x, None) if dy == 0.0 else settled


def _grid(bench: Workbench) -> float:
    return bench.settings.step("grid", bench.unit) if bench.settings.shows_grid else 0.0


def caught_place(bench: Workbench, pointer: Pointer, start: Point | None, spots: tuple[Standing, ...] = ()) -> Point:
    """The place under the pointer, in mm of the plate, drawn to what is near; Shift keeps it level with `start` or
    upright over it. `spots` are places that catch it beside what is there.
    """
    at = bench.stage.to_plate(pointer.at)
    begin = start or at
    held = pointer.held if start is not None else Held(free=pointer.held.free)
    follower = Follower(bench, bench.stage.layout(), (), Standing("place", begin, (*begin, *begin)), spots)
    settled = follower.settle(at.x - begin.x, at.y - begin.y, held, pointer.mm_per_pixel)
    return begin.moved(settled.dx, settled.dy)


def spot(name: str, at: Point) -> Standing:
    """A mere place that others are caught by."""
    return Standing(name, at, (*at, *at))


def end_of_move(bench: Workbench) -> None:
    bench.stage.scene.set_guides(())
    bench.told.emit("")


def plate_point(bench: Workbench, at: Point) -> Point:
    return bench.stage.to_plate(at)
