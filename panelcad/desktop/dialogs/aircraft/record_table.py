"""A table to type records in, a row each; a row of blanks is none."""

from collections.abc import Iterable, Mapping
from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.aircraft.field import Field, Kind, read_again, write
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit

_KEPT: Final = int(Qt.ItemDataRole.UserRole)


class RecordTable(QWidget):
    """`title` stands above; what a record holds besides the columns is kept with its row."""

    def __init__(self, title: str, fields: tuple[Field, ...], unit: LengthUnit) -> None:
        super().__init__()
        self._title, self._fields, self._unit = title, fields, unit
        self.table = QTableWidget(0, len(fields))
        self.table.setAccessibleName(title)
        self.table.setHorizontalHeaderLabels([field.headed(unit) for field in fields])
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.table.verticalHeader().setVisible(False)
        self.table.setMinimumHeight(120)
        add, take = QPushButton("&Add a row"), QPushButton("&Remove the row")
        for button in (add, take):
            button.setAutoDefault(False)
        add.clicked.connect(lambda: self.add({}))
        take.clicked.connect(lambda: self.table.removeRow(self.table.currentRow()))
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 4, 12, 8)
        heading = QLabel(title)
        heading.setProperty("role", "heading")
        column.addWidget(heading)
        column.addWidget(self.table, 1)
        row = QHBoxLayout()
        row.addWidget(add)
        row.addWidget(take)
        row.addStretch(1)
        column.addLayout(row)

    def show_records(self, records: Iterable[Mapping[str, Any]]) -> None:
        self.table.setRowCount(0)
        for record in records:
            self.add(record)

    def add(self, record: Mapping[str, Any]) -> None:
        """A row more; of a record that is there already all is kept."""
        row = self.table.rowCount()
        self.table.insertRow(row)
        for column, field in enumerate(self._fields):
            value = record.get(field.key)
            if field.kind is Kind.CHOICE:
                self.table.setCellWidget(row, column, _chooser(field, value))
                self.table.setItem(row, column, QTableWidgetItem())
            else:
                self.table.setItem(row, column, QTableWidgetItem(write(field, value, self._unit)))
        first = self.table.item(row, 0)
        if first is not None:
            first.setData(_KEPT, dict(record))

    def records(self) -> list[dict[str, Any]]:
        """The rows that are not blank, in mm, kg or plain. Raises `UnreadableQuantity` with the row's number."""
        return [self._record(row) for row in range(self.table.rowCount()) if not self._is_blank(row)]

    def _record(self, row: int) -> dict[str, Any]:
        first = self.table.item(row, 0)
        record = dict(first.data(_KEPT) or {}) if first is not None else {}
        for column, field in enumerate(self._fields):
            try:
                record[field.key] = self._value(row, column, field, record.get(field.key))
            except UnreadableQuantity as problem:
                raise UnreadableQuantity(
                    self._text(row, column), f"{problem.expected} in '{self._title}', row {row + 1}"
                ) from None
        return record

    def _value(self, row: int, column: int, field: Field, shown: Any) -> Any:
        chooser = self.table.cellWidget(row, column)
        if isinstance(chooser, QComboBox):
            return field.choices[chooser.currentIndex()][0]
        return read_again(field, self._text(row, column), shown, self._unit)

    def _text(self, row: int, column: int) -> str:
        item = self.table.item(row, column)
        return item.text() if item is not None else ""

    def _is_blank(self, row: int) -> bool:
        typed = (i for i, field in enumerate(self._fields) if field.kind is not Kind.CHOICE)
        return not any(self._text(row, column).strip() for column in typed)


def _chooser(field: Field, value: Any) -> QComboBox:
    made = ChoiceBox()
    made.setAccessibleName(field.title)
    for _, words in field.choices:
        made.addItem(words)
    values = [choice for choice, _ in field.choices]
    made.setCurrentIndex(values.index(value) if value in values else 0)
    return made
