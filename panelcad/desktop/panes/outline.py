"""The outline in numbers: where the picked corner is, what it is rounded by, how its edge runs."""

from collections.abc import Callable

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.fields import LengthField
from panelcad.desktop.outline_desk import Change
from panelcad.desktop.panes.form import Form
from panelcad.desktop.tools.outline_drag import edge_words, rise_of
from panelcad.desktop.workbench import Workbench
from panelcad.editing.outline import bow_by, bow_by_radius
from panelcad.editing.sharp_outline import SharpOutline
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc
from panelcad.model.shape import Outline
from panelcad.units import LengthUnit, format_brief, format_number

_FIRST_LEG = {LengthUnit.INCH: 12.7, LengthUnit.MM: 12.0}


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
        self.radius = self._length("Corner radius")
        self.row("Roundin&g", self.radius)
        self._pair(
            ("Ro&und all", "Round every corner by this radius", lambda o, _: o.all_rounded_by(self.radius.value)),
            ("Take a&way", "Take a corner away", SharpOutline.without),
        )
        self.leg = self._length("Leg of the cut")
        self.row("&Leg", self.leg)
        self._pair(("Cut o&ff", "Cut the corner off", lambda o, i: o.cut_off(i, self.leg.value)))
        self.line()
        self.edge = self.words("", "faint")
        self.rise, self.bow = self._length("Rise of the edge"), self._length("Radius of the edge")
        self.row("&Rise", self.rise)
        self.row("&Bow radius", self.bow)
        self._pair(
            ("&Straighten", "Straighten the edge", lambda o, i: o.reshaped(bow_by(o.sharp, i, 0.0))),
            ("A&dd after", "Add a corner", lambda o, i: o.with_corner(i, o.edges[i].at(0.5))),
        )
        self.end()
        for field in (self.across, self.up):
            field.committed.connect(lambda _: self._move())
        self.radius.committed.connect(self._round)
        self.rise.committed.connect(self._bow)
        self.bow.committed.connect(self._bow_by_radius)
        self._desk.changed.connect(self.refresh)
        self.leg.show_value(_FIRST_LEG[self._unit])
        self.refresh()

    def _length(self, name: str) -> LengthField:
        field = LengthField(name, self._unit)
        field.refused.connect(self._bench.told)
        return field

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
            for field in (self.across, self.up, self.radius, self.leg, self.rise, self.bow):
                field.take_unit(self._unit)
            self.leg.show_value(_FIRST_LEG[self._unit])
        outline, number = self._desk.outline, self._desk.corner
        self.corner.clear()
        self.corner.addItems([self._name(outline, i) for i in range(len(outline.radii))])
        self.corner.setCurrentIndex(number)
        corner, edge = outline.at(number), outline.edges[number]
        self.across.show_value(corner.x)
        self.up.show_value(corner.y)
        self.radius.show_value(outline.radii[number])
        self.rise.show_value(rise_of(edge))
        self.bow.show_value(edge.radius if isinstance(edge, Arc) else 0.0)
        self.edge.setText(f"The edge to the next corner is {edge_words(edge, self._bench)}.")

    def _name(self, outline: SharpOutline, corner: int) -> str:
        at, radius = outline.at(corner), outline.radii[corner]
        place = f"{corner + 1}: {format_number(at.x, self._unit)}, {format_number(at.y, self._unit)}"
        return f"{place}, rounded {format_brief(radius, self._unit)}" if radius else place

    def _change(self, title: str, change: Change) -> None:
        if not self._desk.change(title, change):
            self.refresh()

    def _move(self) -> None:
        to = Point(self.across.value, self.up.value)
        self._change("Move a corner", lambda outline, i: outline.moved(i, to))

    def _round(self, radius: float) -> None:
        self._change("Round the corner", lambda outline, i: outline.rounded_by(i, radius))

    def _bow(self, rise: float) -> None:
        self._change("Bow an edge", lambda outline, i: outline.reshaped(bow_by(outline.sharp, i, rise)))

    def _bow_by_radius(self, radius: float) -> None:
        self._change("Bow an edge", lambda outline, i: outline.reshaped(_bowed(outline.sharp, i, radius)))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()


def _bowed(sharp: Outline, edge: int, radius: float) -> Outline:
    """By this radius in mm; 0 is straight."""
    return bow_by_radius(sharp, edge, radius) if radius else bow_by(sharp, edge, 0.0)
