"""A cutout of the library in one's hand: it follows the pointer, is judged where it would stand, and is put down."""

from panelcad.desktop.canvas.gesture import Held
from panelcad.desktop.document import Gesture
from panelcad.desktop.tools.moving import Follower, end_of_move, plate_point
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.move import move_by
from panelcad.editing.place import Placed, place
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.snap import Snap
from panelcad.editing.snapping.standing import Standing
from panelcad.editing.stack import add_to_stack
from panelcad.editing.stack_order import stack_at
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout
from panelcad.model.layout import layout


class Carry:
    """Raises `EditRefused` where the plate takes nothing."""

    def __init__(self, bench: Workbench, cutout: Cutout) -> None:
        self._bench = bench
        self.cutout = cutout
        document, stage = bench.document, bench.stage
        if not stage.view.moves_things:
            stage.look_from("front")
        self._before = document.project
        self._placed: Placed = place(document.project, document.option_id, stage.plate_id, cutout, 0.0, 0.0)
        laid = layout(self._placed.project, self._placed.project.option(document.option_id))
        known = standings(laid, stage.plate_id)
        moving = next((known[one] for one in self._placed.ids if one in known), _spot(cutout))
        self._follower = Follower(bench, laid, self._placed.ids, moving)
        self._settled = Snap(0.0, 0.0)
        self._made = self._on_plate()
        picture = stage.view.draw(laid, stage.plate_id, stage.theme)
        stage.scene.set_ghost(tuple(group for group in picture if group.owner in self._placed.ids))
        self._gesture: Gesture = document.begin(f"Place {cutout.title}")

    @property
    def is_stale(self) -> bool:
        """Another change came between."""
        return self._gesture.is_over or self._before is not self._bench.document.project

    def follow(self, at: Point, held: Held, mm_per_pixel: float) -> None:
        """Hold it over a place of the picture."""
        here = plate_point(self._bench, at)
        self._settled = self._follower.settle(here.x, here.y, Held(free=held.free), mm_per_pixel)
        shown = self._bench.stage.to_picture(Point(self._settled.dx, self._settled.dy))
        self._bench.stage.scene.move_ghost(shown.x, shown.y)
        self._made = self._in_stack(here) or self._on_plate()
        self._gesture.propose(self._made.project)

    def _in_stack(self, here: Point) -> Made | None:
        """A rack unit joins the stack that it is held over; why it cannot is told."""
        document = self._bench.document
        found = stack_at(self._before, document.option, self._bench.stage.plate_id, here)
        if self.cutout.rack is None or found is None:
            return None
        cut_id, position = found
        try:
            made = add_to_stack(self._before, document.option_id, cut_id, self.cutout, position)
        except PanelcadError as refusal:
            self._bench.refused.emit(str(refusal))
            return None
        self._bench.stage.scene.set_guides(())
        self._bench.told.emit(f"Into {self._bench.name_of(cut_id)}, place {position + 1} from above")
        return made

    def _on_plate(self) -> Made:
        option_id = self._bench.document.option_id
        dx, dy = self._settled.dx, self._settled.dy
        return Made(move_by(self._placed.project, option_id, self._placed.ids, dx, dy), self._placed.ids)

    def put_down(self) -> None:
        """Cut and fit it where it is held; it is selected then."""
        self._over()
        self._gesture.propose(self._bench.said(self._made.project, self._made.ids))
        self._gesture.finish()
        self._bench.settings.used_cutout(self.cutout.name)
        self._bench.selection.set(self._made.ids[:1])

    def give_up(self) -> None:
        self._over()
        self._gesture.cancel()

    def _over(self) -> None:
        self._bench.stage.scene.set_ghost(())
        end_of_move(self._bench)


def _spot(cutout: Cutout) -> Standing:
    return Standing(cutout.title, Point(0.0, 0.0), (0.0, 0.0, 0.0, 0.0))
