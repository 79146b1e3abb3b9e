"""Drag the line along which the panel is seen in section."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.moving import plate_point, reading_step
from panelcad.desktop.views import SHOWS_SECTION, ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.snapping.on_plate import standings
from panelcad.geometry.across import Across
from panelcad.geometry.point import Point
from panelcad.units import format_length

_REACH_PX = 6.0


class SectionTool(Tool):
    hint = "Drag the section line; centres catch it · T turns it · Alt or Ctrl moves freely · Esc is done"
    cursor = Qt.CursorShape.CrossCursor
    pane = "section"

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._is_dragging = False

    def works_in(self, view: ViewKind) -> bool:
        return view.id in SHOWS_SECTION

    def press(self, pointer: Pointer) -> None:
        self._is_dragging = True
        self._follow(pointer)

    def move(self, pointer: Pointer) -> None:
        if self._is_dragging:
            self._follow(pointer)

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002
        self._is_dragging = False

    def _follow(self, pointer: Pointer) -> None:
        here = plate_point(self.bench, pointer.at)
        across = self.bench.section.across
        at, words = self._caught(_along(across, here), pointer)
        self.bench.section.run_at(at)
        name = "x" if across is Across.VERTICAL else "y"
        self.bench.told.emit(f"Section at {name} {format_length(at, self.bench.unit)}{words}")

    def _caught(self, at: float, pointer: Pointer) -> tuple[float, str]:
        """Drawn to the centre of a thing that is near."""
        across, stage = self.bench.section.across, self.bench.stage
        known = standings(stage.layout(), stage.plate_id).values()
        near = [(abs(_along(across, one.centre) - at), _along(across, one.centre), one.name) for one in known]
        reach = _REACH_PX * pointer.mm_per_pixel
        away, centre, name = min(near, default=(reach + 1.0, at, ""))
        if pointer.held.free or away > reach:
            step = reading_step(self.bench.unit)
            return round(at / step) * step, ""
        return centre, f" through the centre of {name}"

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            self.bench.take_tool("select")
            return True
        return super().key(event)


def turn_section(bench: Workbench) -> None:
    """Upright becomes level and the other way round, through the current thing or the middle of the sheet; told."""
    stage, line = bench.stage, bench.section
    known = standings(stage.layout(), stage.plate_id)
    x1, y1, x2, y2 = stage.layout().plate(stage.plate_id).outline.bounds
    middle = Point((x1 + x2) / 2, (y1 + y2) / 2)
    through = known[bench.selection.current].centre if bench.selection.current in known else middle
    across = Across.HORIZONTAL if line.across is Across.VERTICAL else Across.VERTICAL
    bench.section.run_along(across, _along(across, through))
    way, name = ("Upright", "x") if across is Across.VERTICAL else ("Level", "y")
    bench.told.emit(f"{way} section at {name} {format_length(bench.section.at, bench.unit)}")


def _along(across: Across, at: Point) -> float:
    """An upright line stands at x, a level one at y."""
    return at.x if across is Across.VERTICAL else at.y
