"""The middle of the window: cautions above, rulers along two sides, the canvas between them."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QColor, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.canvas.grid import GridItem
from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.canvas.ruler import Edge, Ruler, beside_rulers
from panelcad.desktop.cautions import SHORT, SHORTEST
from panelcad.desktop.views import SHOWS_SECTION
from panelcad.desktop.workbench import Workbench
from panelcad.geometry.across import Across
from panelcad.geometry.point import Point

_NARROW: Final = 480
"""Pixels below which the cautions are shortened."""


class CautionBar(QFrame):
    """The cautions in two sentences; they stay until they are put away, and come back at the next start.

    Where they would take the room that the panel needs, the first sentence stands alone.
    """

    read_all = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "caution")
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 6, 8, 6)
        self.words = QLabel(SHORT)
        self.words.setWordWrap(True)
        row.addWidget(self.words, 1)
        more = QPushButton("All cautions")
        more.clicked.connect(self.read_all)
        away = QPushButton("Put away")
        away.clicked.connect(self.hide)
        buttons = QVBoxLayout()
        buttons.setSpacing(0)
        for button in (more, away):
            buttons.addWidget(button)
        row.addLayout(buttons)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        is_narrow = self.width() < _NARROW
        self.words.setText(SHORTEST if is_narrow else SHORT)
        self.setToolTip(SHORT if is_narrow else "")


class Workspace(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.cautions = CautionBar()
        self._rulers = [Ruler(bench.view, edge, bench.theme, bench.unit) for edge in Edge]
        self._grid = GridItem()
        bench.stage.scene.addItem(self._grid)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.cautions)
        column.addLayout(beside_rulers(bench.view, *self._rulers), 1)
        for signal in (bench.stage.shown, bench.theme_changed, bench.settings.changed, bench.stage.view_changed):
            signal.connect(self._refresh)
        bench.stage.previewed.connect(self._lay_grid)
        for signal in (bench.section.changed, bench.section.shown, bench.stage.shown, bench.theme_changed):
            signal.connect(self._show_section)

    def _show_section(self) -> None:
        """The section's line reaches a little over the sheet."""
        bench = self._bench
        if not bench.section.is_shown or bench.stage.view.id not in SHOWS_SECTION:
            bench.stage.scene.overlay.set_section(None)
            return
        line = bench.section
        x1, y1, x2, y2 = bench.stage.layout().plate(bench.stage.plate_id).outline.bounds
        over = (y2 - y1) * 0.06
        upright = line.across is Across.VERTICAL
        start = Point(line.at, y1 - over) if upright else Point(x1 - over, line.at)
        end = Point(line.at, y2 + over) if upright else Point(x2 + over, line.at)
        stage = bench.stage
        stage.scene.overlay.set_section(Guide(stage.to_picture(start), stage.to_picture(end), "Section"))

    def _refresh(self) -> None:
        self._bench.view.keep_all()
        bench = self._bench
        for ruler in self._rulers:
            ruler.take(bench.theme, bench.unit, mirrored=bench.stage.view.is_mirrored)
        self._lay_grid()

    def _lay_grid(self) -> None:
        bench = self._bench
        step = bench.settings.step("grid", bench.unit) if bench.settings.shows_grid else 0.0
        ink = QColor(bench.theme.ink)
        ink.setAlphaF(0.10)
        self._grid.lay(bench.stage.scene.area(bench.stage.plate_id), step, ink)
