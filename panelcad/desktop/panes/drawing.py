"""The next point of an outline that is being drawn, in figures."""

from dataclasses import dataclass
from enum import Enum
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.drawing_desk import EdgeKind
from panelcad.desktop.panes.form import Form
from panelcad.desktop.panes.point_entry import PointEntry
from panelcad.desktop.workbench import Workbench
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point, bearing, polar
from panelcad.units import format_brief, parse_angle, parse_length


class Manner(Enum):
    """How a point is given, and what its two figures are called."""

    PLACE = ("from the datum", "x", "y")
    STEP = ("from the last point", "Across", "Up")
    WAY = ("length and angle", "Length", "Angle")


@dataclass(frozen=True)
class _Defaults:
    """What empty figures stand for: mm, and degrees for an angle."""

    first: float
    second: float


_SIZES: Final = {EdgeKind.RADIUS: "Radius", EdgeKind.RISE: "Rise"}
_LINES: Final = 2
"""So many lines of words have their room whether they are there or not: nothing moves away under the pointer."""
_NOTHING: Final = "Nothing is being drawn: choose a form of 'point by point' in the Panel menu."


class DrawingPane(Form):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench, self._desk = bench, bench.drawing
        self.state = self.words("")
        self.manner = ChoiceBox()
        self.manner.setAccessibleName("Given as")
        for manner in Manner:
            self.manner.addItem(manner.value[0], manner)
        self.row("Given as", self.manner)
        self.figures = (PointEntry("x"), PointEntry("y"))
        self._names = (QLabel(), QLabel())
        for label, entry in zip(self._names, self.figures, strict=True):
            label.setProperty("role", "faint")
            self.label_row(label, entry)
        self.edge = ChoiceBox()
        self.edge.setAccessibleName("Edge to the point")
        for kind in EdgeKind:
            self.edge.addItem(kind.value, kind)
        self.row("Edge", self.edge)
        self.bow, self._bow_name = PointEntry("Radius"), QLabel()
        self._bow_name.setProperty("role", "faint")
        self.label_row(self._bow_name, self.bow)
        self.side = self.words("Above 0 it bows to the left of the way, below 0 to the right.", "faint")
        self.line()
        self.radius = PointEntry("Corner radius at the last point")
        self.row("Round it by", self.radius)
        self.problem = self.words("", "wrong")
        for label in (self.state, self.problem):
            label.ensurePolished()
            label.setMinimumHeight(_LINES * label.fontMetrics().lineSpacing())
            label.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._buttons = (
            *self._pair(("Set the point", self._set), ("Take back", self._desk.take_back)),
            *self._pair(("Close", self._desk.close), ("Abandon", self._desk.abandon)),
        )
        self.end()
        self._connect()

    def _pair(self, *buttons: tuple[str, object]) -> list[QPushButton]:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        made = []
        for words, act in buttons:
            button = QPushButton(words)
            button.clicked.connect(act)
            row.addWidget(button, 1)
            made.append(button)
        self.add(holder)
        return made

    def _connect(self) -> None:
        for entry in (*self.figures, self.bow):
            entry.edited.connect(self._preview)
            entry.entered.connect(self._set_or_close)
        self.bow.editingFinished.connect(self._tell_unreadable_size)
        self.radius.edited.connect(self._try_radius)
        self.radius.entered.connect(self._round_and_go_on)
        self.radius.editingFinished.connect(self._round)
        for entry in (*self.figures, self.bow, self.radius):
            entry.taken_back.connect(self._desk.take_back)
            entry.left.connect(self._desk.abandon)
        self.manner.activated.connect(lambda _: self._preview())
        self.edge.activated.connect(lambda _: self._take_edge())
        self._desk.changed.connect(self.refresh)
        self._desk.typed.connect(self.figures[0].begin)
        self.refresh()

    # What the fields say

    @property
    def _manner(self) -> Manner:
        manner = self.manner.currentData()
        return manner if isinstance(manner, Manner) else Manner.PLACE

    def _from(self) -> Point:
        return self._desk.last or Point(0.0, 0.0)

    def _defaults(self) -> _Defaults:
        last, aim = self._from(), self._desk.pointed
        if self._manner is Manner.PLACE:
            return _Defaults(last.x, last.y)
        if self._manner is Manner.STEP:
            return _Defaults(0.0, 0.0)
        return _Defaults(0.0, round(bearing(last, aim), 3) if aim is not None and aim != last else 0.0)

    def _point(self) -> Point:
        """Raises `UnreadableQuantity`."""
        start, defaults = self._from(), self._defaults()
        first = self.figures[0].value(self._length, defaults.first)
        second = self.figures[1].value(parse_angle if self._manner is Manner.WAY else self._length, defaults.second)
        if self._manner is Manner.PLACE:
            return Point(first, second)
        return start.moved(first, second) if self._manner is Manner.STEP else polar(start, first, second)

    def _length(self, text: str) -> float:
        return parse_length(text, self._bench.unit)

    @property
    def _is_typed(self) -> bool:
        return any(entry.text().strip() for entry in self.figures)

    # What they do

    def _set_or_close(self) -> None:
        """Enter sets the point that was typed; where none was typed it closes the outline."""
        if self._is_typed:
            self._set()
        else:
            self._desk.close()

    def _round_and_go_on(self) -> None:
        """Enter in the radius sets the point that was typed too; where none was typed it goes to the next point's."""
        if self._is_typed:
            self._set()
        elif self._round():
            self.figures[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def _set(self) -> None:
        if not self._round():
            return
        try:
            self._read_size()
            point = self._point()
        except PanelcadError as problem:
            self._tell(str(problem))
            return
        if self._desk.settle(point):
            for entry in self.figures:
                entry.clear()
            self.figures[0].setFocus(Qt.FocusReason.OtherFocusReason)
            self.refresh()

    def _preview(self) -> None:
        """The picture shows the point that is typed; what cannot be read yet leaves it."""
        try:
            self._read_size()
            if self._is_typed:
                self._desk.aim_at(self._point())
        except PanelcadError:
            return
        finally:
            self.refresh()

    def _take_edge(self) -> None:
        kind = self.edge.currentData()
        self._desk.take_edge(kind if isinstance(kind, EdgeKind) else EdgeKind.STRAIGHT, self._desk.size)
        self._preview()

    def _read_size(self) -> None:
        if self._desk.edge in _SIZES and self.bow.text().strip():
            size = self.bow.value(self._length, self._desk.size)
            if size != self._desk.size:
                self._desk.take_edge(self._desk.edge, size)

    def _tell_unreadable_size(self) -> None:
        """A click in the picture would go on with the size before."""
        try:
            self._read_size()
        except PanelcadError as problem:
            self._tell(str(problem))

    def _try_radius(self) -> None:
        """The picture shows the radius that is typed; what cannot be read yet changes nothing."""
        try:
            radius = self.radius.value(self._length, -1.0)
        except PanelcadError:
            return
        self._desk.try_radius(radius if radius >= 0 else None)

    def _round(self) -> bool:
        if not self.radius.text().strip():
            return True
        try:
            radius = self._length(self.radius.text())
        except PanelcadError as problem:
            self._tell(str(problem))
            return False
        if self._desk.round_last(radius):
            self.radius.clear()
            return True
        return False

    def _tell(self, words: str) -> None:
        self._show_problem(words)
        self._bench.told.emit(words)

    def _show_problem(self, words: str) -> None:
        """Between the fields and the buttons, so that it is seen in a low pane too."""
        self.problem.setText(words)

    # What they show

    def refresh(self) -> None:
        if not self.isVisible():
            return
        self.state.setText(self._state())
        for label, entry, name in zip(self._names, self.figures, self._manner.value[1:], strict=True):
            is_angle = name == "Angle"
            label.setText(f"{name}, {'°' if is_angle else self._bench.unit.value}")
            entry.setAccessibleName(name)
            entry.setToolTip("0 is to the right, 90 up" if is_angle else "")
        defaults = self._defaults()
        self.figures[0].setPlaceholderText(self._shown(defaults.first))
        is_angle = self._manner is Manner.WAY
        self.figures[1].setPlaceholderText(f"{defaults.second:g}" if is_angle else self._shown(defaults.second))
        self._show_edge()
        coming = self._desk.coming()
        is_typed = self._is_typed or self._desk.typed_radius is not None
        self._show_problem(coming.refusal if coming is not None and is_typed else "")
        for widget in (*self.figures, self.manner, self.edge, self.bow, *self._buttons):
            widget.setEnabled(self._desk.is_on)
        self.radius.setEnabled(self._desk.course is not None)

    def _shown(self, mm: float) -> str:
        return format_brief(mm, self._bench.unit)

    def _show_edge(self) -> None:
        kind = self._desk.edge
        self.edge.setCurrentIndex(list(EdgeKind).index(kind))
        name = _SIZES.get(kind, "")
        for widget in (self._bow_name, self.bow, self.side):
            widget.setVisible(bool(name))
        if name:
            self._bow_name.setText(f"{name}, {self._bench.unit.value}")
            self.bow.setAccessibleName(name)

    def _state(self) -> str:
        if not self._desk.is_on:
            return _NOTHING
        course = self._desk.course
        if course is None:
            return "The first point."
        if self._desk.arc_end is not None:
            return "A place that the arc passes through."
        count = len(course.stations)
        radius = course.last.radius
        place = f"{self._shown(course.last.at.x)}, {self._shown(course.last.at.y)}"
        words = f", rounded by {self._shown(radius)}" if radius else ""
        return f"Point {count + 1}. Point {count} is at {place}{words}."

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
