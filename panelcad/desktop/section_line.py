"""Where the section runs: an upright or a level line over the plate."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from panelcad.geometry.across import Across

if TYPE_CHECKING:
    from panelcad.drawing.views.section import SectionLine


class SectionDesk(QObject):
    """`changed` when the line is another one, `shown` when it appears on the canvas or goes."""

    changed = Signal()
    shown = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.across = Across.VERTICAL
        self.at = 0.0
        self.is_shown = False
        self.is_chosen = False
        """Whether anybody put it where it is."""

    @property
    def line(self) -> "SectionLine":
        from panelcad.drawing.views.section import SectionLine  # noqa: PLC0415 - loads shapely

        return SectionLine(self.across, self.at)

    def run_at(self, at: float) -> None:
        """Along the same way, at x or y in mm."""
        self.run_along(self.across, at)

    def run_along(self, across: Across, at: float) -> None:
        if (across, at) != (self.across, self.at):
            self.across, self.at = across, at
            self.is_chosen = True
            self.changed.emit()

    def show(self, *, shown: bool) -> None:
        if shown != self.is_shown:
            self.is_shown = shown
            self.shown.emit()
