"""Selecting with a box: drawn to the right it takes what lies wholly inside, to the left what it touches."""

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.picking import pickable
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point


class Band:
    def __init__(self, bench: Workbench, start: Pointer) -> None:
        self._bench = bench
        self._start = start.at
        self._before = bench.selection.ids

    def move(self, pointer: Pointer) -> None:
        self._bench.stage.scene.overlay.set_band(_box(self._start, pointer.at))

    def release(self, pointer: Pointer) -> None:
        self.cancel()
        scene, box = self._bench.stage.scene, _box(self._start, pointer.at)
        inside = pointer.at.x >= self._start.x
        found = scene.owners_within(box) if inside else scene.owners_touching(box)
        chosen = pickable(self._bench, found)
        if pointer.held.takes_out:
            self._bench.selection.toggle(chosen)
        elif pointer.held.adds:
            self._bench.selection.add(chosen)
        else:
            self._bench.selection.set(chosen)

    def cancel(self) -> None:
        self._bench.stage.scene.overlay.set_band(None)


def _box(a: Point, b: Point) -> Bounds:
    return min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)
