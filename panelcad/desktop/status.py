"""The status bar: what the tool wants, what a move snapped to, where the pointer is, the zoom, what was found."""

from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QStatusBar

from panelcad.desktop.elided import ElidedLabel
from panelcad.desktop.judge import CHECKING
from panelcad.desktop.steady import SteadyPlace
from panelcad.desktop.window_parts import Parts
from panelcad.geometry.point import Point
from panelcad.model.finding import Severity
from panelcad.model.revision import revision_text
from panelcad.units import format_number

_PASSES_AFTER: Final = 12_000
"""ms until a passing word gives way to what the tool in hand does."""


class Status(QStatusBar):
    def __init__(self, parts: Parts) -> None:
        super().__init__()
        self._parts = parts
        self.setSizeGripEnabled(False)
        self.words = ElidedLabel()
        self.place, self.zoom, self.found, self.revision = QLabel(), QLabel(), QLabel(), QLabel()
        self.found_place = SteadyPlace(self.found, 0)
        shown = (
            (self.revision, "Revision", self.revision),
            (self.found, "Findings", self.found_place),
            (self.place, "Pointer", SteadyPlace(self.place, self._pointer_width())),
            (self.zoom, "Zoom", self.zoom),
        )
        self.addWidget(SteadyPlace(self.words, 60), 1)
        for label, name, widget in shown:
            label.setAccessibleName(name)
            self.addPermanentWidget(widget)
        self.help = self._help_button()
        self.addPermanentWidget(self.help)
        bench = parts.bench
        self._passing = QTimer(self)
        self._passing.setSingleShot(True)
        self._passing.setInterval(_PASSES_AFTER)
        self._passing.timeout.connect(lambda: self._tell(""))
        self._of_the_panel = ""
        """What was counted of the panel at last."""
        self._told_of = bench.document.project
        self._is_being_told = False
        bench.selection.changed.connect(self._turn_to_something_else)
        bench.document.changed.connect(self._forget)
        for signal in (bench.document.option_changed, bench.document.replaced):
            signal.connect(lambda: self._tell(""))
        bench.told.connect(self._tell)
        bench.refused.connect(self._refuse)
        bench.view.pointed.connect(self._point)
        bench.view.left.connect(self.place.clear)
        bench.view.zoomed.connect(self._show_zoom)
        bench.judge.reported.connect(self._count)
        bench.equipment_judge.judged.connect(self._count_equipment)
        bench.judge.waited.connect(self._say_checking)
        bench.document.replaced.connect(self.found.clear)
        parts.toolbox.changed.connect(lambda: self._tell(""))
        for signal in (bench.document.changed, bench.document.option_changed, bench.document.replaced):
            signal.connect(self._show_revision)
        self._show_revision()
        self._tell("")

    def _help_button(self) -> QPushButton:
        """Says at any time which key explains what one is at."""
        action = self._parts.window.menus.table["help.here"]
        button = QPushButton(f"Help ({action.keys})")
        button.setProperty("quiet", True)
        button.setToolTip(action.hint)
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        button.clicked.connect(lambda: self._parts.window.menus.run(action.id))
        return button

    def _pointer_width(self) -> int:
        return self.fontMetrics().horizontalAdvance("x -000.000   y -000.000 mm") + 20

    def _show_revision(self) -> None:
        document = self._parts.bench.document
        self.revision.setText(revision_text(document.project, document.option))

    def _tell(self, words: str) -> None:
        """A passing word, or what the tool in hand does."""
        self._told_of = self._parts.bench.document.project
        if words:
            self._passing.start()
            self._is_being_told = True
            QTimer.singleShot(0, self, self._was_told)
        tool = self._parts.toolbox.tool
        text = words or (tool.hint if tool is not None else "")
        self.words.setText(text)
        self._dress("")

    def _refuse(self, words: str) -> None:
        """What was asked for was not done."""
        self._tell(words)
        self._dress("wrong")

    def _dress(self, role: str) -> None:
        if self.words.property("role") != role:
            self.words.setProperty("role", role)
            self.words.style().unpolish(self.words)
            self.words.style().polish(self.words)

    def _was_told(self) -> None:
        self._is_being_told = False

    def _turn_to_something_else(self) -> None:
        """Words stay that belong to the very step by which something else is selected."""
        if not self._is_being_told:
            self._tell("")

    def _forget(self) -> None:
        """What was said of the project as it was is said no longer."""
        if self._parts.bench.document.project is not self._told_of:
            self._tell("")

    def _point(self, at: Point) -> None:
        bench = self._parts.bench
        here = bench.stage.to_plate(at)
        x, y = format_number(here.x, bench.unit), format_number(here.y, bench.unit)
        self.place.setText(f"x {x}   y {y} {bench.unit.value}")

    def _show_zoom(self, pixels_per_mm: float) -> None:
        per_mm = self._parts.bench.settings.pixels_per_mm or self._parts.bench.view.physicalDpiX() / 25.4
        self.zoom.setText(f"{pixels_per_mm / per_mm:.0%}")

    def _say_checking(self) -> None:
        """What stands here is of the project as it was, unless a dialog only tries something."""
        if QApplication.activeModalWidget() is not None:
            return
        self.found.setText(CHECKING)
        self.found_place.make_room()

    def _count(self) -> None:
        """What a dialog only tries is not announced."""
        report = self._parts.bench.judge.report
        is_tried = QApplication.activeModalWidget() is not None and self.found.text() != CHECKING
        if report is None or is_tried:
            return
        counts = [(report.count(severity), severity.value) for severity in Severity]
        words = [f"{count} {word}{'s' if count != 1 and word != 'advice' else ''}" for count, word in counts if count]
        if report.not_judged:
            count = len(report.not_judged)
            words.append(f"{count} rule{'s' if count != 1 else ''} could not judge")
        self._of_the_panel = ", ".join(words)
        self._show_found()

    def _count_equipment(self) -> None:
        if self.found.text() not in {"", CHECKING}:
            self._show_found()

    def _show_found(self) -> None:
        counted = (self._of_the_panel, self._parts.bench.equipment_judge.words)
        self.found.setText(", ".join(words for words in counted if words) or "nothing found")
        self.found_place.make_room()
