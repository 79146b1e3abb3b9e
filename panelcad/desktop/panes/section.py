"""The section: panel, bodies, obstacles and firewall in depth, along a line that is dragged on the canvas."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.canvas.ruler import Edge, Ruler, beside_rulers
from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.elided import ElidedLabel
from panelcad.desktop.fields import LengthField
from panelcad.desktop.tools.base import ARROWS, nudge
from panelcad.desktop.tools.picking import pickable
from panelcad.desktop.tools.section import turn_section
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.views.section import section_view
from panelcad.geometry.across import Across
from panelcad.model.layout import layout
from panelcad.model.project import Project

_REACH_PX = 3.0
_HEIGHT = 260
_ALONG = {
    Across.VERTICAL: {Qt.Key.Key_Up, Qt.Key.Key_Down},
    Across.HORIZONTAL: {Qt.Key.Key_Left, Qt.Key.Key_Right},
}
_WORDS = {
    Across.VERTICAL: "Upright section, seen from the right: the pilot is at the left",
    Across.HORIZONTAL: "Level section, seen from above: the pilot is at the bottom",
}


class SectionPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.scene = PanelScene(bench.theme)
        self.view = PanelView(self.scene, bench.theme)
        self.view.setObjectName("section")
        self.view.setAccessibleName("Section")
        self.view.setMinimumHeight(120)
        self.view.tool = _Pick(bench, self.scene)
        self.rulers = tuple(Ruler(self.view, edge, bench.theme, bench.unit) for edge in Edge)
        self.at = LengthField("Section at", bench.unit)
        self.way = ChoiceBox()
        self.way.setAccessibleName("Way of the section")
        self.way.addItem("upright, at x", Across.VERTICAL)
        self.way.addItem("level, at y", Across.HORIZONTAL)
        self.words = ElidedLabel()
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.words.setProperty("role", "faint")
        self._is_framed = False
        self._lay_out()
        self._connect()
        self.setFocusProxy(self.view)

    def sizeHint(self) -> QSize:
        """High enough to read depths in; the pane may be made lower."""
        return QSize(super().sizeHint().width(), _HEIGHT)

    def _lay_out(self) -> None:
        drag = QPushButton("Drag the line")
        drag.clicked.connect(lambda: self._bench.take_tool("section"))
        row = QHBoxLayout()
        row.addWidget(self.way)
        self.at.setMaximumWidth(110)
        row.addWidget(self.at)
        row.addWidget(drag)
        row.addWidget(self.words, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 6, 8, 6)
        column.addLayout(row)
        column.addLayout(beside_rulers(self.view, *self.rulers), 1)

    def _connect(self) -> None:
        bench = self._bench
        bench.section.changed.connect(self._reframe)
        bench.stage.shown.connect(self.refresh)
        bench.stage.plate_changed.connect(self._reframe)
        bench.document.proposed.connect(self._follow)
        bench.selection.changed.connect(self._select)
        bench.theme_changed.connect(self._take_theme)
        self.at.committed.connect(bench.section.run_at)
        self.at.refused.connect(bench.refused)
        self.way.activated.connect(self._turn)

    def _turn(self) -> None:
        if Across(self.way.currentData()) is not self._bench.section.across:
            turn_section(self._bench)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._bench.section.show(shown=True)
        self._reframe()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._bench.section.show(shown=False)

    def _take_theme(self) -> None:
        self.scene.themed(self._bench.theme)
        self.view.themed(self._bench.theme)
        self.refresh()

    def _reframe(self) -> None:
        """Another line: bring all of it into view."""
        self._is_framed = False
        self.refresh()

    def refresh(self) -> None:
        self._draw(self._bench.document.project)

    def _follow(self, project: Project) -> None:
        self._draw(project)

    def _draw(self, project: Project) -> None:
        if not self.isVisible():
            return
        line, stage = self._bench.section.line, self._bench.stage
        self.at.take_unit(self._bench.unit)
        self.at.show_value(line.at)
        self.way.setCurrentIndex(self.way.findData(line.across))
        self.words.setText(_WORDS[line.across])
        for ruler in self.rulers:
            ruler.take(self._bench.theme, self._bench.unit, mirrored=False)
        laid = layout(project, project.option(self._bench.document.option_id))
        self.scene.show(section_view(laid, stage.plate_id, line, self._bench.theme.view))
        self._select()
        if not self._is_framed:
            self._is_framed = True
            self.view.show_all()

    def _select(self) -> None:
        if self.isVisible():
            self.scene.select(self._bench.stage.whole(self._bench.selection.ids))


class _Pick:
    """A click in the section selects what is there, as it does on the canvas."""

    def __init__(self, bench: Workbench, scene: PanelScene) -> None:
        self._bench = bench
        self._scene = scene

    def press(self, pointer: Pointer) -> None:
        picked = pickable(self._bench, self._scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel))[:1]
        if pointer.held.takes_out:
            self._bench.selection.toggle(picked)
        elif pointer.held.adds:
            self._bench.selection.add(picked)
        else:
            self._bench.selection.set(picked)

    def move(self, pointer: Pointer) -> None:
        owners = self._scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel)
        self._bench.told.emit(self._bench.name_of(owners[0]) if owners else "")

    def release(self, pointer: Pointer) -> None: ...

    def double_click(self, pointer: Pointer) -> None: ...

    def key(self, event: QKeyEvent) -> bool:
        """Esc lets go what is selected, then the section; arrows nudge along the panel, never into its depth."""
        if event.key() == Qt.Key.Key_Escape and len(self._bench.selection):
            self._bench.selection.clear()
            return True
        if event.key() in ARROWS:
            if event.key() in _ALONG[self._bench.section.across]:
                nudge(self._bench, event)
            else:
                self._bench.told.emit("What is in depth follows from the equipment; arrows move along the panel")
            return True
        return False

    def cancel(self) -> None: ...
