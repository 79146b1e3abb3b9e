"""The properties of several things: how many, how large together, and a move in figures."""

from PySide6.QtWidgets import QLabel, QPushButton

from panelcad.desktop.fields import LengthField
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.move import move_by
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.standing import around
from panelcad.editing.taken_along import moved_with
from panelcad.model.layout import layout
from panelcad.model.project import Project
from panelcad.units import format_length, format_number


class ManyThings(Form):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.heading(f"{len(bench.selection)} things")
        self.together = QLabel()
        self.row("Together", self.together)
        self.line()
        self.heading("Move by")
        self.dx, self.dy = LengthField("Move right by", bench.unit), LengthField("Move up by", bench.unit)
        for field in (self.dx, self.dy):
            field.show_value(0.0)
            field.refused.connect(bench.refused)
            field.done.connect(self._move)
        self.row("&Right", self.dx)
        self.row("&Up", self.dy)
        self.move_button = QPushButton("&Move")
        self.move_button.clicked.connect(self._move)
        self.row("", self.move_button)
        self.end()
        self.refresh(bench.document.project)

    def refresh(self, project: Project) -> None:
        known = standings(layout(project, project.option(self._bench.document.option_id)), self._bench.stage.plate_id)
        chosen = [known[one] for one in self._bench.selection.ids if one in known]
        if not chosen:
            self.together.clear()
            return
        x1, y1, x2, y2 = around(chosen, "").box
        unit = self._bench.unit
        self.together.setText(f"{format_number(x2 - x1, unit)} × {format_length(y2 - y1, unit)}")

    def _move(self) -> None:
        """As typed, once: the fields say nothing more afterwards, so that the next figure is a move of its own."""
        if not (self.dx.take_typed() and self.dy.take_typed()):
            return
        ids, dx, dy = self._bench.selection.ids, self.dx.value, self.dy.value
        if dx == dy == 0.0:
            return

        def moved(project: Project, option_id: str) -> Project:
            return move_by(project, option_id, moved_with(project, project.option(option_id), ids), dx, dy)

        if self._bench.edit(f"Move {len(ids)} things", moved):
            self.dx.show_value(0.0)
            self.dy.show_value(0.0)
