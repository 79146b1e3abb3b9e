"""Where the section runs: an upright or a level line over the plate."""

from PySide6.QtCore import QObject, Signal

from panelcad.drawing.views.section import SectionLine
from panelcad.geometry.chord import Across


class SectionDesk(QObject):
    """`changed` when the line is another one, `shown` when it appears on the canvas or goes."""

    changed = Signal()
    shown = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.line = SectionLine(Across.VERTICAL, 0.0)
        self.is_shown = False

    def run_at(self, at: float) -> None:
        """Along the same way, at x or y in mm."""
        self._take(SectionLine(self.line.across, at))

    def run_along(self, across: Across, at: float) -> None:
        self._take(SectionLine(across, at))

    def _take(self, line: SectionLine) -> None:
        if line != self.line:
            self.line = line
            self.changed.emit()

    def show(self, *, shown: bool) -> None:
        if shown != self.is_shown:
            self.is_shown = shown
            self.shown.emit()
