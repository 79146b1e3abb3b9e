"""Things dragged onto the canvas: a cutout of the library, or a project file."""

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QMimeData, QTimer
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent

from panelcad.desktop.canvas.gesture import Held
from panelcad.desktop.tools.carry import Carry
from panelcad.desktop.workbench import Workbench
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point

CUTOUT_MIME: Final = "application/x-panelcad-cutout"


class CanvasDrop:
    def __init__(self, bench: Workbench, open_file: Callable[[Path], None]) -> None:
        self._bench = bench
        self._open_file = open_file
        self._carry: Carry | None = None

    def accepts(self, event: QDragEnterEvent) -> bool:
        return bool(dropped_file(event.mimeData())) or self._take(event.mimeData())

    def _take(self, data: QMimeData) -> bool:
        if not data.hasFormat(CUTOUT_MIME):
            return False
        name = bytes(data.data(CUTOUT_MIME).data()).decode()
        try:
            self._carry = Carry(self._bench, self._bench.catalogue.cutout(name))
        except PanelcadError as refusal:
            self._bench.refused.emit(str(refusal))
        return self._carry is not None

    def hover(self, event: QDragMoveEvent, at: Point) -> None:
        if self._carry is not None:
            self._carry.follow(at, Held.of(event.modifiers()), 1 / self._bench.view.zoom)

    def leave(self) -> None:
        if self._carry is not None:
            self._carry.give_up()
            self._carry = None

    def drop(self, event: QDropEvent, at: Point) -> None:
        path = dropped_file(event.mimeData())
        if path is not None:
            open_after(path, self._open_file)
        elif self._carry is not None:
            self._carry.follow(at, Held.of(event.modifiers()), 1 / self._bench.view.zoom)
            self._carry.put_down()
            self._carry = None


def open_after(path: Path, open_file: Callable[[Path], None]) -> None:
    """Open once the drop is over: a question in the midst of it would hold up the program that it came from."""
    QTimer.singleShot(0, lambda: open_file(path))


def dropped_file(data: QMimeData) -> Path | None:
    """The first local file that is dragged, if any."""
    files = [url.toLocalFile() for url in data.urls() if url.isLocalFile()]
    return Path(files[0]) if files else None
