"""The items of an option that are equipment, a line each, which stays where it is while one works there."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem

_ID: Final = int(Qt.ItemDataRole.UserRole)


@dataclass(frozen=True)
class Row:
    """`does` is for the pointer that rests on it."""

    item_id: str
    name: str
    where: str
    does: str


class FittedList(QTreeWidget):
    def __init__(self) -> None:
        super().__init__()
        self._lines: dict[str, QTreeWidgetItem] = {}
        """By the id of the item, as they are listed."""
        self.setHeaderLabels(["In the option", "Where"])
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)
        self.setAccessibleName("Equipment of the option")
        self.header().setStretchLastSection(False)
        self.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.header().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)

    @property
    def chosen_id(self) -> str:
        line = self.currentItem()
        return str(line.data(0, _ID)) if line is not None else ""

    def list_anew(self, rows: Iterable[Row]) -> None:
        """In the order of `rows`."""
        self._list({row.item_id: row for row in rows})

    def list_on(self, rows: Iterable[Row]) -> None:
        """In the order in which they are listed; new ones come at the end."""
        known = {row.item_id: row for row in rows}
        before = [item_id for item_id in self._lines if item_id in known]
        self._list({**{item_id: known[item_id] for item_id in before}, **known})

    def _list(self, rows: dict[str, Row]) -> None:
        """Nothing is chosen by this, and what was chosen stays."""
        with QSignalBlocker(self):
            if list(self._lines) != list(rows):
                self._begin_lines(list(rows))
            for item_id, row in rows.items():
                line = self._lines[item_id]
                line.setText(0, row.name)
                line.setText(1, row.where)
                line.setToolTip(0, row.does)

    def _begin_lines(self, item_ids: list[str]) -> None:
        chosen, height = self.chosen_id, self.verticalScrollBar().value()
        self.clear()
        self._lines = {item_id: QTreeWidgetItem(self) for item_id in item_ids}
        for item_id, line in self._lines.items():
            line.setData(0, _ID, item_id)
        if chosen in self._lines:
            self.setCurrentItem(self._lines[chosen])
        self.doItemsLayout()
        self.verticalScrollBar().setValue(height)
