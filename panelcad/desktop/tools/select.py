"""Pick, box and move things."""

from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.band import Band
from panelcad.desktop.tools.base import DRAG_PX, Gesture, Tool
from panelcad.desktop.tools.dimension_drag import DimensionDrag
from panelcad.desktop.tools.picking import all_at, is_within_outline, opening_at, pickable, picked_at
from panelcad.desktop.tools.stack_drag import try_drag
from panelcad.desktop.tools.stretch import StretchHandles, try_stretch
from panelcad.desktop.tools.turn import Turn, try_turn
from panelcad.desktop.tools.turn_handle import TurnHandle
from panelcad.desktop.views import ViewKind
from panelcad.desktop.workbench import Workbench
from panelcad.editing.groups import with_groups
from panelcad.editing.stretch import Pull
from panelcad.geometry.point import distance

_ON_HANDLE: Final = "Drag to turn in steps of 15° · Alt or Ctrl turns freely · figures typed meanwhile are the angle"
_ON_STRETCH: Final = "Drag to stretch; the other side stays · Alt or Ctrl stretches freely · Esc puts it back"
_ENTER: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class SelectTool(Tool):
    hint = "Drag to move · Shift keeps straight · Alt or Ctrl moves freely · Arrows nudge · Space or middle button pans"

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._pressed: Pointer | None = None
        self._grabbed = ""
        self._gesture: Gesture | None = None
        self._was_selected = False
        self._mark = ""
        """The finding whose mark was pressed: a click means it, a drag what lies below."""
        self._turn_handle = TurnHandle(bench)
        self._stretch_handles = StretchHandles(bench)
        self._pull: Pull | None = None
        self._is_within = False
        """Pressed within a bare outline: a click means it, a drag draws a box among what shows through."""
        self._told_of_handle = ""
        self._turns = False
        self._is_second_press = False
        """Of a double click: a drag moves what is selected, a click picks what lies below."""
        self._is_refused = False
        """Until the button is released the sentence that said so stays in sight."""

    def start(self) -> None:
        self._turn_handle.put_up()
        self._stretch_handles.put_up()

    def put_away(self) -> None:
        super().put_away()
        self._turn_handle.take_down()
        self._stretch_handles.take_down()

    @property
    def stretch_handles(self) -> StretchHandles:
        return self._stretch_handles

    @property
    def turn_handle(self) -> TurnHandle:
        return self._turn_handle

    def works_in(self, view: ViewKind) -> bool:  # noqa: ARG002 - in every one
        return True

    def press(self, pointer: Pointer) -> None:
        self._turns, self._mark = self._turn_handle.is_under(pointer), ""
        self._is_within = self._is_second_press = False
        self._pull = None if self._turns else self._stretch_handles.under(pointer)
        if self._turns or self._pull is not None:
            self._pressed = pointer
            return
        changes = pointer.held.adds or pointer.held.takes_out
        self._mark = "" if changes else self.bench.stage.scene.overlay.mark_at(pointer.at)
        self._pressed = pointer
        self._grabbed = picked_at(self.bench, pointer)
        self._was_selected = self._grabbed in self.bench.selection
        self._is_within = not self._was_selected and is_within_outline(self.bench, pointer, self._grabbed)
        if not self._mark and not self._is_within:
            self._pick_grabbed(pointer)

    def _pick_grabbed(self, pointer: Pointer) -> None:
        if self._grabbed and not self._was_selected:
            self._pick(self._grabbed, pointer)

    def _pick(self, part: str, pointer: Pointer) -> None:
        """A thing that is grouped brings its group along; Shift adds, Ctrl adds or takes out."""
        meant = pickable(self.bench, sorted(with_groups(self.bench.document.option, (part,))))
        ids = (*(one for one in meant if one != part), part)
        if pointer.held.takes_out:
            self.bench.selection.toggle(ids)
        elif pointer.held.adds:
            self.bench.selection.add(ids)
        else:
            self.bench.selection.set(ids)

    def move(self, pointer: Pointer) -> None:
        if self._gesture is None and self._pressed is not None and self._is_dragged(self._pressed, pointer):
            self._begin(self._pressed)
        if self._gesture is not None:
            self._gesture.move(pointer)
        elif self._pressed is None and not self._is_refused:
            self._hover(pointer)

    def _hover(self, pointer: Pointer) -> None:
        words = self._words_of_handle(pointer)
        self.bench.selection.hover("" if words else picked_at(self.bench, pointer))
        if words != self._told_of_handle:
            self._told_of_handle = words
            self.bench.told.emit(words)

    def _words_of_handle(self, pointer: Pointer) -> str:
        """What the handle under the pointer does; '' where there is none."""
        if self._turn_handle.is_under(pointer):
            return _ON_HANDLE
        return _ON_STRETCH if self._stretch_handles.under(pointer) is not None else ""

    def _is_dragged(self, start: Pointer, pointer: Pointer) -> bool:
        return distance(start.at, pointer.at) > DRAG_PX * pointer.mm_per_pixel

    def _begin(self, start: Pointer) -> None:
        self._gesture = self._begun(start)
        if self._gesture is None:
            self._pressed, self._is_refused = None, True
            self._told_of_handle = ""
            return
        if not self._turns:
            self._turn_handle.hide()
        if self._pull is None:
            self._stretch_handles.hide()

    def _begun(self, start: Pointer) -> Gesture | None:
        """What a drag from there does; None where it is refused, which is told."""
        if self._turns:
            return try_turn(self.bench, self._turn_handle, start)
        if self._pull is not None:
            return try_stretch(self.bench, self._stretch_handles, self._pull, start)
        if self._mark:
            self._pick_grabbed(start)
        if not self._grabbed or self._is_within:
            return Band(self.bench, start)
        if self._grabbed in {dimension.id for dimension in self.bench.document.option.dimensions}:
            return DimensionDrag(self.bench, start, self._grabbed)
        return try_drag(self.bench, start, self._grabbed)

    def release(self, pointer: Pointer) -> None:
        gesture, pressed = self._gesture, self._pressed
        self._gesture = self._pressed = None
        self._is_refused = False
        if gesture is not None:
            gesture.release(pointer)
            self._look_at_handles()
        elif pressed is not None and (self._turns or self._pull is not None):
            self._pick_under_handle(pointer)
        elif pressed is not None and self._mark:
            self._sign_clicked(pointer)
        elif pressed is not None and self._is_second_press:
            self._pick_below(pointer)
        elif pressed is not None:
            self._clicked(pointer)

    def _pick_under_handle(self, pointer: Pointer) -> None:
        """A click without a drag means what the handle stands over."""
        part = picked_at(self.bench, pointer)
        if part:
            self._pick(part, pointer)

    def _sign_clicked(self, pointer: Pointer) -> None:
        """A click picks what the finding is about, of several things the one below; the second of two goes there."""
        if self._is_second_press:
            self.bench.finding_chosen.emit(self._mark)
            return
        finding = self.bench.judge.finding(self._mark)
        about = finding.items if finding is not None else ()
        if self._grabbed and self.bench.stage.whole((self._grabbed,)) & set(about):
            self._pick(self._grabbed, pointer)
        else:
            self.bench.select_parts(about)
        self.bench.mark_finding(self._mark)

    def _clicked(self, pointer: Pointer) -> None:
        if not self._grabbed:
            if not (pointer.held.adds or pointer.held.takes_out):
                self.bench.selection.clear()
        elif self._is_within:
            self._pick(self._grabbed, pointer)
        elif self._was_selected:
            self._clicked_again(pointer)

    def _clicked_again(self, pointer: Pointer) -> None:
        """On what is selected already: Ctrl takes it out, Shift leaves it, a plain click leaves only it."""
        if pointer.held.takes_out:
            self.bench.selection.toggle((self._grabbed,))
        elif not pointer.held.adds and len(self.bench.selection) > 1:
            self.bench.selection.set((self._grabbed,))

    def double_click(self, pointer: Pointer) -> None:
        """A hand that picks a thing and drags it at once presses twice as fast as a double click."""
        self.press(pointer)
        self._is_second_press = not (pointer.held.adds or pointer.held.takes_out)

    def _pick_below(self, pointer: Pointer) -> None:
        """The next thing below: a case under a bezel, a cut under an item; an opening of the sheet is asked about."""
        under = all_at(self.bench, pointer)
        opening = opening_at(self.bench, pointer)
        if opening is not None:
            QTimer.singleShot(0, self.bench, lambda: self._ask_about(opening))
        current = self.bench.selection.current
        if current in under and len(under) > 1:
            self.bench.selection.set((under[(under.index(current) + 1) % len(under)],))

    def _ask_about(self, opening: int) -> None:
        """The dialog opens once the mouse button's event is over."""
        from panelcad.desktop.dialogs.openings import change_opening  # noqa: PLC0415 - a dialog's module loads late

        change_opening(self.bench, self.bench.view.window(), opening)

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._gesture is None:
                self.bench.selection.clear()
            self.cancel()
            return True
        return self._is_for_turn(event) or super().key(event)

    def _is_for_turn(self, event: QKeyEvent) -> bool:
        """While something is turned figures are the angle, and Enter finishes with the button still down."""
        turn = self._gesture
        if not isinstance(turn, Turn):
            return False
        if event.key() in _ENTER:
            if turn.can_finish():
                turn.finish()
                self._let_go()
            return True
        return turn.key(event)

    def _let_go(self) -> None:
        """The gesture is over while the button is still down."""
        self._gesture = self._pressed = None
        self._look_at_handles()

    def _look_at_handles(self) -> None:
        self._turn_handle.look()
        self._stretch_handles.look()

    def cancel(self) -> None:
        gesture = self._gesture
        self._gesture = self._pressed = None
        if gesture is not None:
            gesture.cancel()
            self._look_at_handles()
