"""Turning the selection about its centre with the pointer, in steps or freely, or by an angle typed meanwhile."""

import math
from typing import Final

from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.label import LabelSide
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.moving import end_of_move, plate_point
from panelcad.desktop.tools.turn_handle import TurnHandle
from panelcad.desktop.tools.typed_angle import TypedAngle
from panelcad.desktop.workbench import Workbench
from panelcad.editing.extents import middle
from panelcad.editing.move import standing
from panelcad.editing.rotate import turn_as_one
from panelcad.editing.taken_along import taken_along
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point, distance, polar
from panelcad.model.project import Project

STEP: Final = 15.0
_LABEL_PX: Final = 10.0
_TURNING: Final = f"steps of {STEP:g}° · Alt or Ctrl turns freely · figures are the angle · Esc puts it back"
_TYPING: Final = "Enter turns · Backspace takes a figure back · Esc puts it back"
_FREE_STEP: Final = 0.1
"""Freely one turns by tenths of a degree; finer angles are typed."""


class Turn:
    """One turn from press to release. Raises `EditRefused` where the selection is held fast."""

    def __init__(self, bench: Workbench, handle: TurnHandle, start: Pointer) -> None:
        self._bench, self._handle = bench, handle
        document = bench.document
        self._before = document.project
        self._ids = tuple(bench.selection.ids)
        self._pivot = middle(self._before, document.option, taken_along(self._before, document.option, self._ids))
        self._pressed = plate_point(bench, start.at)
        self._radius = distance(self._pivot, self._pressed)
        self._stood = self._rotation()
        self._typed = TypedAngle()
        self._degrees = 0.0
        self._here = self._pressed
        self._is_free = False
        self._turned(1.0)
        self._gesture = document.begin(f"Turn {bench.selection_words()}")

    def _rotation(self) -> float:
        """How one thing is turned already; several are reckoned from where they stand."""
        if len(self._ids) != 1:
            return 0.0
        option = self._bench.document.option
        return standing(self._before, option, self._ids)[self._ids[0]].rotation

    def _turned(self, degrees: float) -> Project:
        if degrees == 0.0:
            return self._before
        return turn_as_one(self._before, self._bench.document.option_id, self._ids, degrees)

    def move(self, pointer: Pointer) -> None:
        if self._gesture.is_over:
            return
        self._here = plate_point(self._bench, pointer.at)
        self._is_free = pointer.held.free or not self._bench.settings.snaps
        self._turn_by(self._angle())

    def key(self, event: QKeyEvent) -> bool:
        """Figures are the angle, and it stays whatever the pointer does; without figures the pointer turns again."""
        if self._gesture.is_over or not self._typed.takes(event):
            return False
        self._turn_by(self._angle())
        return True

    def can_finish(self) -> bool:
        """Whether what was typed is an angle; where it is not, that is told."""
        if self._typed.text and self._typed.degrees is None:
            self._bench.told.emit(f"'{self._typed.text}' is no angle; an angle such as 45 or 90 - 7.5 is expected")
            return False
        return True

    def _angle(self) -> float:
        """What is typed; the last readable angle while figures are no angle; else what the pointer means."""
        if self._typed.text:
            degrees = self._typed.degrees
            return self._degrees if degrees is None else _plain(degrees)
        wanted = _bearing(self._pivot, self._here) - _bearing(self._pivot, self._pressed)
        return turn_to_step(self._stood, wanted, _FREE_STEP if self._is_free else STEP)

    def _turn_by(self, degrees: float) -> None:
        self._degrees = degrees
        project = self._turned(degrees)
        self._gesture.propose(project)
        self._bench.stage.preview(project)
        self._show(degrees)

    def _show(self, degrees: float) -> None:
        """Where it was and where it is now, with the angle between them; typed figures stand at the pointer."""
        to_picture = self._bench.stage.to_picture
        start = _bearing(self._pivot, self._pressed)
        was, now = (polar(self._pivot, self._radius, angle) for angle in (start, start + degrees))
        words = self._words(degrees)
        beyond = polar(self._pivot, self._radius + _LABEL_PX / self._bench.view.zoom, start + degrees)
        if self._typed.text:
            beyond = self._here
        side = LabelSide.ABOVE if beyond.y >= self._pivot.y else LabelSide.BELOW
        guides = (
            Guide(to_picture(self._pivot), to_picture(was)),
            Guide(to_picture(self._pivot), to_picture(now), words, to_picture(beyond), side),
        )
        self._bench.stage.scene.set_guides(guides)
        self._handle.show_at(to_picture(now))
        self._bench.told.emit(f"Turned {words} · {_TYPING if self._typed.text else _TURNING}")

    def _words(self, degrees: float) -> str:
        by = self._typed.words if self._typed.text else f"by {degrees:g}°"
        return by if len(self._ids) != 1 or self._stood == 0.0 else f"{by}, to {_plain(self._stood + degrees):g}°"

    def release(self, pointer: Pointer) -> None:  # noqa: ARG002 - the last move said where
        self.finish()

    def finish(self) -> None:
        end_of_move(self._bench)
        self._gesture.finish()

    def cancel(self) -> None:
        end_of_move(self._bench)
        self._gesture.cancel()


def turn_to_step(stood: float, wanted: float, step: float) -> float:
    """The turn nearest to the wanted one after which a thing that stood at `stood` stands at a multiple of `step`."""
    return _plain(round((stood + wanted) / step) * step - stood)


def _plain(degrees: float) -> float:
    """The same angle above -180° and up to 180°, to a millionth of a degree."""
    turned = round(degrees % 360.0, 6)
    return turned - 360.0 if turned > 180.0 else turned


def _bearing(pivot: Point, at: Point) -> float:
    return math.degrees(math.atan2(at.y - pivot.y, at.x - pivot.x))


def try_turn(bench: Workbench, handle: TurnHandle, start: Pointer) -> Turn | None:
    """A turn, or None and a word why not."""
    try:
        return Turn(bench, handle, start)
    except PanelcadError as refusal:
        bench.refused.emit(str(refusal))
        return None
