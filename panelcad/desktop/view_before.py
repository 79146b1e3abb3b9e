"""The way back to the view that one had before one was taken elsewhere, as to a finding."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF

from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.stage import Stage

_SAME_PX: Final = 2.0
"""Within so many pixels, and the same zoom to a thousandth, a view is still the same."""


@dataclass(frozen=True)
class _Seen:
    plate_id: str
    view_id: str
    centre: QPointF
    zoom: float
    is_all: bool
    """All of the picture was wanted in view."""

    def is_like(self, other: "_Seen") -> bool:
        off = (self.centre - other.centre) * self.zoom
        is_near = abs(off.x()) < _SAME_PX and abs(off.y()) < _SAME_PX and abs(self.zoom / other.zoom - 1) < 1e-3
        return is_near and (self.plate_id, self.view_id) == (other.plate_id, other.view_id)


class ViewBefore:
    """From finding to finding the view before stays the one that was last set by hand."""

    def __init__(self, view: PanelView, stage: Stage) -> None:
        self._view, self._stage = view, stage
        self._before: _Seen | None = None
        self._arrived: _Seen | None = None

    def forget(self) -> None:
        self._before = self._arrived = None

    @contextmanager
    def kept(self) -> Iterator[None]:
        """The view is taken elsewhere within."""
        here = self._seen()
        if self._arrived is None or not here.is_like(self._arrived):
            self._before = here
        yield
        self._arrived = self._seen()

    def go_back(self) -> bool:
        """To the view before, from which the same leads here again; whether there was one."""
        to, here = self._before, self._seen()
        if to is None:
            return False
        self._stage.look_at_plate(to.plate_id)
        self._stage.look_from(to.view_id)
        self._view.show_from(to.centre, to.zoom)
        if to.is_all:
            self._view.show_all()
        self._before, self._arrived = here, self._seen()
        return True

    def _seen(self) -> _Seen:
        view = self._view
        centre = view.scene_at(QPointF(view.viewport().rect().center()))
        return _Seen(self._stage.plate_id, self._stage.view.id, centre, view.zoom, view.wants_all)
