"""Handles about a thing that stands around the panel, and pulling it larger or smaller by one of them."""

from dataclasses import replace
from typing import Final

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.canvas.handles import Grip, Handle, Handles
from panelcad.desktop.canvas.label import Label, LabelSide
from panelcad.desktop.panes.facts import size
from panelcad.desktop.tools.moving import Follower, end_of_move, plate_point, spot
from panelcad.desktop.workbench import Workbench
from panelcad.editing.depths import shape_of
from panelcad.editing.parts import Standing, standing_around
from panelcad.editing.places import place_of
from panelcad.editing.stretch import CORNERS, Pull, pulled_place, pulls, stretch
from panelcad.errors import EditRefused, PanelcadError
from panelcad.geometry.point import Point, distance
from panelcad.model.project import Project

_LEAST_PX: Final = 44.0
"""Between two handles across a thing: nearer they would leave nothing of it to take hold of."""
_QUARTER: Final = 90.0


class StretchHandles:
    def __init__(self, bench: Workbench) -> None:
        self._bench = bench
        self._handles = Handles(bench.stage.scene)
        self._pulls: tuple[Pull, ...] = ()
        self._signals = (bench.selection.changed, bench.stage.shown, bench.view.zoomed, bench.theme_changed)
        self._is_up = False

    def put_up(self) -> None:
        """Show them from now on whenever one thing is selected that can be stretched."""
        self._is_up = True
        for signal in self._signals:
            signal.connect(self.look)
        self.look()

    def take_down(self) -> None:
        if self._is_up:
            self._is_up = False
            for signal in self._signals:
                signal.disconnect(self.look)
        self.hide()

    def hide(self) -> None:
        """Out of the way until one looks again."""
        self._handles.clear()

    @property
    def shown(self) -> tuple[Handle, ...]:
        return self._handles.shown

    def look(self, *_: object) -> None:
        self.follow(self._bench.document.project)

    def follow(self, project: Project) -> None:
        """Stand about the thing as it is in a project."""
        thing = self._thing(project)
        self._pulls = self._roomy(thing) if thing is not None else ()
        handles = tuple(self._handle(number, thing, pull) for number, pull in enumerate(self._pulls) if thing)
        self._handles.show(handles, self._bench.theme)

    def _thing(self, project: Project) -> Standing | None:
        """The one that is selected, where it is seen and can be changed."""
        stage, selection = self._bench.stage, self._bench.selection
        if len(selection) != 1 or not stage.view.moves_things or stage.scene.box((selection.current,)) is None:
            return None
        return thing_around(project, selection.current)

    def _roomy(self, thing: Standing) -> tuple[Pull, ...]:
        """Those that stand far enough apart on the screen."""
        least = _LEAST_PX / self._bench.view.zoom
        offered = pulls(thing)
        wide = Pull(1, 0) in offered and distance(*_ends(thing, Pull(1, 0))) >= least
        high = Pull(0, 1) in offered and distance(*_ends(thing, Pull(0, 1))) >= least
        return tuple(pull for pull in offered if (not pull.across or wide) and (not pull.up or high))

    def _handle(self, number: int, thing: Standing, pull: Pull) -> Handle:
        grip = Grip.CORNER if pull in CORNERS else Grip.MIDDLE
        return Handle(grip, number, self._bench.stage.to_picture(pulled_place(thing, pull)))

    def under(self, pointer: Pointer) -> Pull | None:
        """What a pointer takes hold of."""
        handle = self._handles.at(pointer.at, pointer.mm_per_pixel)
        return self._pulls[handle.number] if handle is not None else None


def thing_around(project: Project, thing_id: str) -> Standing | None:
    return next((thing for thing in standing_around(project.surroundings) if thing.id == thing_id), None)


def _ends(thing: Standing, pull: Pull) -> tuple[Point, Point]:
    return pulled_place(thing, pull), pulled_place(thing, Pull(-pull.across, -pull.up))


class Stretch:
    """One pull from press to release. Raises `EditRefused` where the thing is locked."""

    def __init__(self, bench: Workbench, handles: StretchHandles, pull: Pull, start: Pointer) -> None:
        self._bench, self._handles, self._pull = bench, handles, pull
        self._start = plate_point(bench, start.at)
        self._before = bench.document.project
        thing = thing_around(self._before, bench.selection.current)
        if thing is None:
            raise EditRefused("One thing around the panel is to be selected to stretch it.")
        self._thing = thing
        self._origin = pulled_place(thing, pull)
        self._follower = Follower(bench, bench.stage.layout(), (), spot("side", self._origin))
        self._stretched(self._origin)
        self._gesture = bench.document.begin(f"Stretch {thing.name}")

    def _stretched(self, to: Point) -> Project:
        return stretch(self._before, self._bench.document.option_id, self._thing.id, self._pull, to)

    def move(self, pointer: Pointer) -> None:
        if self._gesture.is_over:
            return
        here = plate_point(self._bench, pointer.at)
        to = self._settled(here.x - self._start.x, here.y - self._start.y, pointer)
        try:
            project = self._stretched(to)
        except EditRefused as refusal:
            self._bench.refused.emit(str(refusal))
            return
        self._gesture.propose(project)
        self._bench.stage.preview(project)
        self._handles.follow(project)
        self._show_size(project)

    def _settled(self, dx: float, dy: float, pointer: Pointer) -> Point:
        """A side that lies level or upright is only caught on its own way."""
        held = replace(pointer.held, constrained=False)
        if not (self._pull.across and self._pull.up):
            dx, dy, held = self._on_its_way(dx, dy, held)
        settled = self._follower.settle(dx, dy, held, pointer.mm_per_pixel)
        return self._origin.moved(settled.dx, settled.dy)

    def _on_its_way(self, dx: float, dy: float, held: Held) -> tuple[float, float, Held]:
        rotation = place_of(self._thing).rotation
        if rotation % _QUARTER:
            return dx, dy, held
        goes_across = bool(self._pull.across) == (rotation % (2 * _QUARTER) == 0.0)
        return (dx, 0.0, replace(held, constrained=True)) if goes_across else (0.0, dy, replace(held, constrained=True))

    def _show_size(self, project: Project) -> None:
        thing, stage = thing_around(project, self._thing.id), self._bench.stage
        if thing is not None:
            words = size(shape_of(thing), self._bench.unit)
            at = stage.to_picture(pulled_place(thing, self._pull))
            side = LabelSide.ABOVE if self._pull.up >= 0 else LabelSide.BELOW
            stage.scene.overlay.set_words((Label(at, words, side),))

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        self._over()
        self._gesture.finish()

    def cancel(self) -> None:
        self._over()
        self._gesture.cancel()
        self._bench.stage.refresh()

    def _over(self) -> None:
        self._bench.stage.scene.overlay.set_words(())
        end_of_move(self._bench)


def try_stretch(bench: Workbench, handles: StretchHandles, pull: Pull, start: Pointer) -> Stretch | None:
    """A pull, or None and a word why not."""
    try:
        return Stretch(bench, handles, pull, start)
    except PanelcadError as refusal:
        bench.refused.emit(str(refusal))
        return None
