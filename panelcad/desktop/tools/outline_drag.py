"""One drag of a corner, or of the middle of an edge or a rounding; what would cross itself stays as it last was."""

from typing import Final

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.canvas.handles import Grip, Handle
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.moving import Follower, end_of_move, reading_step
from panelcad.desktop.workbench import Workbench
from panelcad.editing.outline import bow_through, outline_of
from panelcad.editing.sharp_outline import SharpOutline, sharpened
from panelcad.editing.snapping.standing import Standing
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point, distance, middle
from panelcad.geometry.segment import Arc, Segment
from panelcad.units import format_length, rounded

_TITLES: Final = {
    Grip.CORNER: "Move a corner",
    Grip.MIDDLE: "Bow an edge",
    Grip.ROUNDING: "Round the corner",
}


class OutlineDrag:
    """Raises `EditRefused` where the plate's outline stays as it is."""

    def __init__(self, bench: Workbench, handle: Handle, start: Pointer) -> None:
        self._bench, self._handle = bench, handle
        self._start = bench.stage.to_plate(start.at)
        self._before = bench.document.project
        self.outline = bench.outline.outline
        self._origin = self._at(self.outline)
        bench.outline.changed_project(self._before, bench.document.option_id, lambda outline, _: outline)
        spot = Standing("corner", self._origin, (*self._origin, *self._origin))
        self._follower = Follower(bench, bench.stage.layout(), (), spot, self._other_corners())
        self._gesture = bench.document.begin(_TITLES[handle.grip])

    def _at(self, outline: SharpOutline) -> Point:
        rounding = outline.rounding(self._handle.number) if self._handle.grip is Grip.ROUNDING else None
        if rounding is not None:
            return rounding.at(0.5)
        edge = outline.edges[self._handle.number]
        return edge.start if self._handle.grip is Grip.CORNER else edge.at(0.5)

    def _other_corners(self) -> tuple[Standing, ...]:
        spots = [self.outline.at(i) for i in range(len(self.outline.radii)) if i != self._handle.number]
        return tuple(Standing("another corner", spot, (*spot, *spot)) for spot in spots)

    def move(self, pointer: Pointer) -> None:
        here = self._bench.stage.to_plate(pointer.at)
        target = self._settled(Point(here.x - self._start.x, here.y - self._start.y), pointer)
        try:
            project = self._bench.outline.changed_project(
                self._before, self._bench.document.option_id, lambda outline, _: self._changed(outline, target)
            )
        except EditRefused as refusal:
            self._bench.refused.emit(str(refusal))
            return
        plate = project.option(self._bench.document.option_id).plate(self._bench.stage.plate_id)
        self.outline = sharpened(outline_of(plate.outline))
        self._gesture.propose(project)
        self._bench.stage.preview(project)
        self._show_measures()

    def _settled(self, wanted: Point, pointer: Pointer) -> Point:
        held = pointer.held if self._handle.grip is Grip.CORNER else Held(free=True)
        settled = self._follower.settle(wanted.x, wanted.y, held, pointer.mm_per_pixel)
        return self._origin.moved(settled.dx, settled.dy)

    def _changed(self, outline: SharpOutline, target: Point) -> SharpOutline:
        number = self._handle.number
        if self._handle.grip is Grip.CORNER:
            return outline.moved(number, target)
        if self._handle.grip is Grip.ROUNDING:
            step = reading_step(self._bench.unit)
            return outline.rounded_by(
                number, rounded(max(step, round(outline.radius_through(number, target) / step) * step))
            )
        return outline.reshaped(bow_through(outline.sharp, number, target))

    def _readable(self, radius: float) -> float:
        """A dragged radius at figures that people read; the corner stays a rounded one."""
        step = reading_step(self._bench.unit)
        return rounded(max(1, round(radius / step)) * step)

    def _show_measures(self) -> None:
        """What the edge that is bowed measures, or the radius."""
        to_picture, number = self._bench.stage.to_picture, self._handle.number
        if self._handle.grip is Grip.MIDDLE:
            edge = self.outline.edges[number]
            guide = Guide(to_picture(edge.start), to_picture(edge.end), edge_words(edge, self._bench))
        elif self._handle.grip is Grip.ROUNDING:
            words = f"radius {format_length(self.outline.radii[number], self._bench.unit)}"
            guide = Guide(to_picture(self.outline.at(number)), to_picture(self._at(self.outline)), words)
        else:
            return
        self._bench.stage.scene.set_guides((guide,))

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        end_of_move(self._bench)
        self._gesture.finish()

    def cancel(self) -> None:
        end_of_move(self._bench)
        self._gesture.cancel()
        self._bench.stage.refresh()


def rise_of(edge: Segment) -> float:
    """How far the middle of an edge stands outside its chord, in mm."""
    if not isinstance(edge, Arc):
        return 0.0
    height = distance(middle(edge.start, edge.end), edge.at(0.5))
    return height if edge.sweep > 0 else -height


def edge_words(edge: Segment, bench: Workbench) -> str:
    """'straight, 12.000 in', or 'radius 30.000 in, rise 1.250 in'; the rise of one bowed inside is negative."""
    if isinstance(edge, Arc):
        return arc_words(edge, rise_of(edge), bench)
    return f"straight, {format_length(edge.length, bench.unit)}"


def arc_words(arc: Arc, rise: float, bench: Workbench) -> str:
    """'radius 30.000 in, rise 1.250 in'."""
    return f"radius {format_length(arc.radius, bench.unit)}, rise {format_length(rise, bench.unit)}"
