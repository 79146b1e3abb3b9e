"""The outline in numbers: where the picked corner is, how its edge runs, rounded and cut-off corners."""

from collections.abc import Callable

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.fields import LengthField
from panelcad.desktop.outline_desk import Change
from panelcad.desktop.panes.form import Form
from panelcad.desktop.tools.outline_drag import edge_words, rise_of
from panelcad.desktop.workbench import Workbench
from panelcad.editing.outline import (
    add_corner,
    bow_by,
    chamfer_corner,
    move_corner,
    remove_corner,
    round_corner,
    round_corners,
)
from panelcad.editing.outline import edges as edges_of
from panelcad.units import LengthUnit, format_number

_FIRST_RADIUS = {LengthUnit.INCH: 12.7, LengthUnit.MM: 12.0}


class OutlinePane(Form):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench, self._desk = bench, bench.outline
        self._unit = bench.unit
        self.corner = ChoiceBox()
        self.corner.setAccessibleName("Corner")
        self.corner.activated.connect(self._desk.pick)
        self.row("&Corner", self.corner)
        self.across, self.up = self._length("Corner x"), self._length("Corner y")
        self.row("&x", self.across)
        self.row("&y", self.up)
        self.rise = self._length("Rise of the edge")
        self.row("&Rise", self.rise)
        self.edge = self.words("", "faint")
        self.line()
        self.radius = self._length("Radius or leg")
        self.row("Roundin&g", self.radius)
        self._add_buttons()
        self.end()
        for field in (self.across, self.up):
            field.committed.connect(lambda _: self._move())
        self.rise.committed.connect(self._bow)
        self._desk.changed.connect(self.refresh)
        self.radius.show_value(_FIRST_RADIUS[self._unit])
        self.refresh()

    def _length(self, name: str) -> LengthField:
        field = LengthField(name, self._unit)
        field.refused.connect(self._bench.told)
        return field

    def _add_buttons(self) -> None:
        self._pair(
            ("Ro&und", "Round the corner", lambda o, i: round_corner(o, i, self.radius.value)),
            ("Round all", "Round every corner", lambda o, _: round_corners(o, self.radius.value)),
        )
        self._pair(
            ("Cut off", "Cut the corner off", lambda o, i: chamfer_corner(o, i, self.radius.value)),
            ("&Straighten", "Straighten the edge", lambda o, i: bow_by(o, i, 0.0)),
        )
        self._pair(
            ("A&dd after", "Add a corner", lambda o, i: add_corner(o, i, edges_of(o)[i].at(0.5))),
            ("Take a&way", "Take a corner away", remove_corner),
        )

    def _pair(self, *buttons: tuple[str, str, Change]) -> None:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        for words, title, change in buttons:
            button = QPushButton(words)
            button.setToolTip(title)
            button.clicked.connect(self._doing(title, change))
            row.addWidget(button, 1)
        self.add(holder)

    def _doing(self, title: str, change: Change) -> Callable[[], None]:
        def run() -> None:
            self._desk.change(title, change)

        return run

    def refresh(self) -> None:
        """Show the picked corner as it is now; a pane that is closed waits until it is opened."""
        if not self.isVisible():
            return
        if self._bench.unit is not self._unit:
            self._unit = self._bench.unit
            for field in (self.across, self.up, self.rise, self.radius):
                field.take_unit(self._unit)
            self.radius.show_value(_FIRST_RADIUS[self._unit])
        outline, number = self._desk.outline, self._desk.corner
        names = [
            f"{i + 1}: {format_number(c.x, self._unit)}, {format_number(c.y, self._unit)}"
            for i, c in enumerate(outline.corners)
        ]
        self.corner.clear()
        self.corner.addItems(names)
        self.corner.setCurrentIndex(number)
        corner, edge = outline.corners[number], self._desk.edge
        self.across.show_value(corner.x)
        self.up.show_value(corner.y)
        self.rise.show_value(rise_of(edge))
        self.edge.setText(f"The edge to the next corner is {edge_words(edge, self._bench)}.")

    def _move(self) -> None:
        x, y = self.across.value, self.up.value
        if not self._desk.change("Move a corner", lambda outline, i: move_corner(outline, i, x, y)):
            self.refresh()

    def _bow(self, rise: float) -> None:
        if not self._desk.change("Bow an edge", lambda outline, i: bow_by(outline, i, rise)):
            self.refresh()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
