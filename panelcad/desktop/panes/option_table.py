"""The options table: judgements as rows under their topic, options as columns, differences emphasised."""

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont

from panelcad.desktop.theme import Theme

if TYPE_CHECKING:
    from panelcad.planning.compare import Cell, Comparison, Row
    from panelcad.planning.judge import Topic

Index = QModelIndex | QPersistentModelIndex
_VERDICT: Final = "Verdict"


class Shown(Enum):
    """Which rows the table shows."""

    EVERYTHING = "Everything"
    DIFFERENCES = "Differences only"


@dataclass(frozen=True)
class Line:
    """A line of the table: a topic's heading where `row` is None."""

    topic: "Topic"
    row: "Row | None" = None


class OptionTable(QAbstractTableModel):
    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.theme = theme
        self.lines: list[Line] = []
        self.names: tuple[str, ...] = ()
        self.current = -1

    def offer(self, comparison: "Comparison", shown: Shown, current: str) -> None:
        """Show a comparison; `current` is the id of the option on the canvas."""
        from panelcad.planning.judge import Topic  # noqa: PLC0415 - the window is painted first

        self.beginResetModel()
        self.names = tuple(judgement.option.name for judgement in comparison.judgements)
        ids = [judgement.option.id for judgement in comparison.judgements]
        self.current = ids.index(current) if current in ids else -1
        self.lines = []
        for topic in Topic:
            rows = [
                r for r in comparison.rows_of(topic) if r.title == _VERDICT or r.differs or shown is Shown.EVERYTHING
            ]
            self.lines += [Line(topic), *(Line(topic, row) for row in rows)]
        self.endResetModel()

    def heading_rows(self) -> list[int]:
        return [i for i, line in enumerate(self.lines) if line.row is None]

    def cell(self, index: Index) -> "Cell | None":
        row = self.lines[index.row()].row if index.isValid() else None
        return row.cells[index.column() - 1] if row is not None and index.column() else None

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self.names) + 1

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if orientation is Qt.Orientation.Vertical or section == 0:
            return None
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole}:
            return self.names[section - 1]
        if role == Qt.ItemDataRole.FontRole and section - 1 == self.current:
            return _bold()
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        line = self.lines[index.row()]
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole}:
            return self._text(line, index.column())
        if role == Qt.ItemDataRole.FontRole:
            return _bold() if line.row is None or self._is_strong(line.row) else None
        if role == Qt.ItemDataRole.ForegroundRole:
            return QColor(self._colour(line, index.column()))
        if role == Qt.ItemDataRole.BackgroundRole and line.row is None:
            return QColor(self.theme.ground)
        return None

    def _text(self, line: Line, column: int) -> str:
        if line.row is None:
            return f"{line.topic.value[:1].upper()}{line.topic.value[1:]}" if column == 0 else ""
        return line.row.title if column == 0 else line.row.cells[column - 1].text

    def _is_strong(self, row: "Row") -> bool:
        return row.differs and row.title != _VERDICT

    def _colour(self, line: Line, column: int) -> str:
        if line.row is None:
            return self.theme.ink
        mark = line.row.cells[column - 1].mark if column else None
        if mark is not None:
            return self.theme.severity[mark.value]
        return self.theme.ink if line.row.differs or column == 0 else self.theme.faint

    def flags(self, index: Index) -> Qt.ItemFlag:
        line = self.lines[index.row()]
        if line.row is None:
            return Qt.ItemFlag.ItemIsEnabled
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


def _bold() -> QFont:
    font = QFont()
    font.setBold(True)
    return font
