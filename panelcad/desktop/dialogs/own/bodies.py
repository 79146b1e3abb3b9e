"""The table of a cutout's bodies: what stands behind the sheet or in front of it."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.errors import UnreadableQuantity
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.shape import Circle, Rectangle, Shape
from panelcad.model.source import Source
from panelcad.units import LengthUnit, format_exact, parse_length

_COLUMNS: Final = ("Kind", "Width, ⌀", "Height", "From", "To", "x", "y")
_WIDTH, _HEIGHT, _FROM, _TO, _X, _Y = range(1, 7)
_FIRST: Final = {LengthUnit.INCH: ("3", "3", "0", "6", "0", "0"), LengthUnit.MM: ("75", "75", "0", "150", "0", "0")}
"""A first case; the user measures the real one."""


class BodiesTable(QWidget):
    """`edited` whenever a cell says something else. A body with no height is round.

    `opening` tells what the first case goes through, None where there is nothing yet.
    """

    edited = Signal()

    def __init__(
        self, unit: LengthUnit, bodies: tuple[Body, ...], opening: Callable[[], Shape | None] = lambda: None
    ) -> None:
        super().__init__()
        self._unit, self._opening = unit, opening
        self.table = QTableWidget(0, len(_COLUMNS))
        self.table.setHorizontalHeaderLabels(list(_COLUMNS))
        self.table.setAccessibleName("Bodies")
        self.table.verticalHeader().hide()
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.table.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Fixed)
        self.table.setMinimumHeight(120)
        self.table.setMinimumWidth(500)
        self.table.setTabKeyNavigation(False)
        self.add = QPushButton("Another &body")
        self.take_away = QPushButton("Take the body &away")
        for button in (self.add, self.take_away):
            button.setAutoDefault(False)
        self.add.clicked.connect(self._add_first)
        self.take_away.clicked.connect(self._take_away)
        buttons = QHBoxLayout()
        buttons.addWidget(self.add)
        buttons.addWidget(self.take_away)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.table)
        column.addLayout(buttons)
        for body in bodies:
            self._add_row(body.kind, _texts(body, unit), body.shape)
        self.table.cellChanged.connect(lambda *_: self.edited.emit())

    def _add_first(self) -> None:
        kind = BodyKind.CASE if self.table.rowCount() == 0 else BodyKind.CONNECTOR
        through = self._opening() if kind is BodyKind.CASE else None
        size = _size_texts(through, self._unit) if through is not None else _FIRST[self._unit][:2]
        self._add_row(kind, (*size, *_FIRST[self._unit][2:]), through)
        self.edited.emit()

    def _add_row(self, kind: BodyKind, texts: tuple[str, ...], shape: Shape | None) -> None:
        row = self.table.rowCount()
        self.table.insertRow(row)
        chooser = ChoiceBox()
        chooser.setAccessibleName("Kind of body")
        for each in BodyKind:
            chooser.addItem(each.value, each)
        chooser.setCurrentIndex(chooser.findData(kind))
        chooser.activated.connect(lambda _: self.edited.emit())
        above = self.table.cellWidget(row - 1, 0) if row else None
        self.table.setCellWidget(row, 0, chooser)
        self.table.setColumnWidth(0, max(self.table.columnWidth(0), chooser.sizeHint().width()))
        QWidget.setTabOrder(above or self.table, chooser)
        for column, text in enumerate(texts, 1):
            cell = QTableWidgetItem(text)
            cell.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            cell.setData(Qt.ItemDataRole.UserRole, shape)
            self.table.setItem(row, column, cell)

    def _take_away(self) -> None:
        row = self.table.currentRow() if self.table.currentRow() >= 0 else self.table.rowCount() - 1
        if row >= 0:
            self.table.removeRow(row)
            self.edited.emit()

    def bodies(self, source: Source) -> tuple[Body, ...]:
        """The bodies that the table says. Raises `UnreadableQuantity`; pydantic's error where they are none."""
        return tuple(self._body(row, source) for row in range(self.table.rowCount()))

    def _body(self, row: int, source: Source) -> Body:
        chooser = self.table.cellWidget(row, 0)
        if not isinstance(chooser, QComboBox):
            raise TypeError("a body has a kind")
        return Body(
            kind=BodyKind(chooser.currentData()),
            shape=self._shape(row),
            x=self._mm(row, _X),
            y=self._mm(row, _Y),
            near=self._mm(row, _FROM),
            far=self._mm(row, _TO),
            source=source,
        )

    def _shape(self, row: int) -> Shape:
        """A shape that a rectangle or circle does not say stays while its cells are as they were."""
        if not self._text(row, _HEIGHT):
            return Circle(diameter=self._mm(row, _WIDTH))
        width, height = self._mm(row, _WIDTH), self._mm(row, _HEIGHT)
        cell = self.table.item(row, _WIDTH)
        kept: Shape | None = cell.data(Qt.ItemDataRole.UserRole) if cell is not None else None
        typed = self._text(row, _WIDTH), self._text(row, _HEIGHT)
        if kept is not None and _size_texts(kept, self._unit) == typed:
            return kept
        return Rectangle(width=width, height=height)

    def _mm(self, row: int, column: int) -> float:
        text = self._text(row, column)
        if not text and column in {_X, _Y, _FROM}:
            return 0.0
        try:
            return parse_length(text, self._unit)
        except UnreadableQuantity as error:
            raise UnreadableQuantity(text, f"a length in column '{_COLUMNS[column]}' of body {row + 1}") from error

    def _text(self, row: int, column: int) -> str:
        cell = self.table.item(row, column)
        return cell.text().strip() if cell is not None else ""


def _texts(body: Body, unit: LengthUnit) -> tuple[str, ...]:
    rest = (body.near, body.far, body.x, body.y)
    return (*_size_texts(body.shape, unit), *(format_exact(mm, unit) for mm in rest))


def _size_texts(shape: Shape, unit: LengthUnit) -> tuple[str, str]:
    if isinstance(shape, Circle):
        return format_exact(shape.diameter, unit), ""
    x1, y1, x2, y2 = shape.contour().bounds
    return format_exact(x2 - x1, unit), format_exact(y2 - y1, unit)
