"""Pulling the line of a dimension nearer to what it measures, or farther from it."""

from itertools import product
from typing import Final

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.moving import end_of_move, plate_point
from panelcad.desktop.workbench import Workbench
from panelcad.editing.marks import in_line, pull_dimensions
from panelcad.geometry.point import Point, distance
from panelcad.model.layout import layout
from panelcad.model.marked import line_ends, measured
from panelcad.model.project import Project
from panelcad.units import format_length

_REACH_PX: Final = 8.0


class DimensionDrag:
    """One pull from press to release; the line comes in line with another dimension's that is near."""

    def __init__(self, bench: Workbench, start: Pointer, dimension_id: str) -> None:
        self._bench, self._id = bench, dimension_id
        self._before = bench.document.project
        self._pressed = plate_point(bench, start.at)
        self._gesture = bench.document.begin("Move a dimension line")

    def move(self, pointer: Pointer) -> None:
        if self._gesture.is_over:
            return
        here, option_id = plate_point(self._bench, pointer.at), self._bench.document.option_id
        fine = self._bench.settings.step("fine", self._bench.unit)
        dx, dy = (round(shift / fine) * fine for shift in (here.x - self._pressed.x, here.y - self._pressed.y))
        project, other = pull_dimensions(self._before, option_id, (self._id,), dx, dy), ""
        if self._bench.settings.snaps and not pointer.held.free:
            project, other = in_line(project, option_id, self._id, _REACH_PX * pointer.mm_per_pixel)
        self._gesture.propose(project)
        self._bench.stage.preview(project)
        self._show(project, other)

    def _show(self, project: Project, other: str) -> None:
        offset = project.option(self._bench.document.option_id).dimension(self._id).offset
        words = f"Stands off {format_length(offset, self._bench.unit)}"
        guides = (Guide(*self._between(project, other), "in line"),) if other else ()
        self._bench.stage.scene.set_guides(guides)
        self._bench.told.emit(f"{words}, in line with another dimension" if other else words)

    def _between(self, project: Project, other: str) -> tuple[Point, Point]:
        """The nearest ends of both lines, on the picture."""
        option = project.option(self._bench.document.option_id)
        plate = layout(project, option).plate(self._bench.stage.plate_id)
        mine, its = (line_ends(measured(plate, one), one) for one in map(option.dimension, (self._id, other)))
        ends = min(product(mine, its), key=lambda pair: distance(*pair))
        return self._bench.stage.to_picture(ends[0]), self._bench.stage.to_picture(ends[1])

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        end_of_move(self._bench)
        self._gesture.finish()

    def cancel(self) -> None:
        end_of_move(self._bench)
        self._gesture.cancel()
