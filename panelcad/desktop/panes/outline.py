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
        self.row("Corner", self.corner)
        self.across, self.up = self._length("Corner x"), self._length("Corner y")
        self.row("x", self.across)
        self.row("y", self.up)
        self.radius, self.leg = self._length("Corner radius"), self._length("Leg of the cut")
        self._row(
            "Rounding", self.radius, self._button("Round all", "Round every corner by this radius", self._all_round)
        )
        self._row("Leg", self.leg, self._button("Cut off", "Cut the corner off", self._cut_off))
        self.line()
        self.edge = self.words("", "faint")
        self.rise, self.bow = self._length("Rise of the edge"), self._length("Radius of the edge")
        self._row("Rise", self.rise, self._button("Straighten", "Straighten the edge", _straight))
        self.row("Radius", self.bow)
        add = self._button("Add after", "Add a corner", _one_more)
        self.add(_beside(add, self._button("Take away", "Take a corner away", SharpOutline.without)))
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
        field.refused.connect(self._bench.refused)
        return field

    def _row(self, word: str, field: QWidget, button: QPushButton) -> None:
        """A field and the button that uses it."""
        holder = _beside(field, button)
        holder.setFocusProxy(field)
        holder.setAccessibleName(field.accessibleName())
        self.row(word, holder)

    def _button(self, words: str, title: str, change: Change) -> QPushButton:
        button = QPushButton(words)
        button.setToolTip(title)
        button.clicked.connect(self._doing(title, change))
        return button

    def _all_round(self, outline: SharpOutline, _: int) -> SharpOutline:
        return outline.all_rounded_by(self.radius.value)

    def _cut_off(self, outline: SharpOutline, corner: int) -> SharpOutline:
        return outline.cut_off(corner, self.leg.value)

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


def _beside(*widgets: QWidget) -> QWidget:
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(6)
    for widget in widgets:
        row.addWidget(widget, 1)
    return holder


def _straight(outline: SharpOutline, edge: int) -> SharpOutline:
    return outline.reshaped(bow_by(outline.sharp, edge, 0.0))


def _one_more(outline: SharpOutline, edge: int) -> SharpOutline:
    return outline.with_corner(edge, outline.edges[edge].at(0.5))


def _bowed(sharp: Outline, edge: int, radius: float) -> Outline:
    """By this radius in mm; 0 is straight."""
    return bow_by_radius(sharp, edge, radius) if radius else bow_by(sharp, edge, 0.0)
