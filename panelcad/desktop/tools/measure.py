"""Measure between two places; edges and centres catch the pointer, distances are read in x, y and straight."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.moving import plate_point
from panelcad.desktop.workbench import Workbench
from panelcad.editing.snapping.on_plate import standings
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc
from panelcad.model.layout import PlateLayout
from panelcad.units import format_length, format_number

_VOWELS: Final = frozenset("aeiou")
_REACH_PX: Final = 9.0


@dataclass(frozen=True)
class Spot:
    """A place that a measure holds on to, and what it is."""

    at: Point
    words: str


class MeasureTool(Tool):
    hint = "Click the first place, then the second; edges and centres catch · Alt measures freely · Esc is done"
    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, bench: Workbench) -> None:
        super().__init__(bench)
        self._start: Spot | None = None
        self._is_held = False

    def press(self, pointer: Pointer) -> None:
        spot = self._spot(pointer)
        if self._start is None or self._is_held:
            self._start, self._is_held = spot, False
            self._show(spot)
        else:
            self._show(spot)
            self._is_held = True

    def move(self, pointer: Pointer) -> None:
        if not self._is_held:
            self._show(self._spot(pointer))

    def _show(self, end: Spot) -> None:
        """The measure stays on the screen after the second click, until another begins."""
        if self._start is None:
            self.bench.told.emit(f"On {end.words}" if end.words else "")
            return
        unit = self.bench.unit
        a, b = self._start.at, end.at
        straight = format_length(distance(a, b), unit)
        words = f"{straight}   across {format_number(abs(b.x - a.x), unit)}, up {format_length(abs(b.y - a.y), unit)}"
        places = " to ".join(spot.words or "a free place" for spot in (self._start, end))
        stage = self.bench.stage
        stage.scene.set_guides((Guide(stage.to_picture(a), stage.to_picture(b), words),))
        self.bench.told.emit(f"{words}   from {places}")

    def _spot(self, pointer: Pointer) -> Spot:
        here = plate_point(self.bench, pointer.at)
        if pointer.held.free:
            return Spot(here, "")
        reach = _REACH_PX * pointer.mm_per_pixel
        laid = self.bench.stage.layout().plate(self.bench.stage.plate_id)
        exact = [spot for spot in self._exact(laid) if distance(spot.at, here) <= reach]
        near = exact or [spot for spot in _edges(laid, here) if distance(spot.at, here) <= reach]
        return min(near, key=lambda spot: distance(spot.at, here), default=Spot(here, ""))

    def _exact(self, laid: PlateLayout) -> Iterator[Spot]:
        """Centres of things and holes, and corners of the outline."""
        for standing in standings(self.bench.stage.layout(), laid.plate.id).values():
            yield Spot(standing.centre, f"the centre of {standing.name}")
        for feature in laid.features:
            yield Spot(feature.centre, f"the centre of {_one(feature.purpose)}")
        for segment in laid.outline.segments:
            yield Spot(segment.start, "a corner of the panel")
            if isinstance(segment, Arc):
                yield Spot(segment.centre, "the centre of an arc")

    def key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape:
            if self._start is None:
                self.bench.take_tool("select")
            self.cancel()
            return True
        return super().key(event)

    def cancel(self) -> None:
        self._start, self._is_held = None, False
        self.bench.stage.scene.set_guides(())


def _edges(laid: PlateLayout, here: Point) -> Iterator[Spot]:
    """The nearest place of each edge."""
    for segment in laid.outline.segments:
        yield Spot(segment.nearest(here), "the panel's edge")
    for feature in laid.features:
        for segment in feature.contour.segments:
            yield Spot(segment.nearest(here), f"the edge of {_one(feature.purpose)}")
    for item in laid.items:
        for segment in item.bezel.segments if item.bezel is not None else ():
            yield Spot(segment.nearest(here), f"the bezel of {item.item.name}")


def _one(purpose: str) -> str:
    """'an instrument', 'a toggle switch'."""
    return f"{'an' if purpose[:1].lower() in _VOWELS else 'a'} {purpose}"
