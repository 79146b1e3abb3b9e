"""What could not be judged because something is not known: how many things, and, once opened, which."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QListView, QListWidget, QListWidgetItem, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.remedies import where_entered
from panelcad.desktop.workbench import Workbench

if TYPE_CHECKING:
    from panelcad.checks.report import CheckReport

_ITEMS: Final = int(Qt.ItemDataRole.UserRole)


class Unknowns(QWidget):
    """Enter or a click on a row selects what it speaks of. `opened` when the list is shown or is no longer."""

    opened = Signal(bool)

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._things: tuple[tuple[str, tuple[str, ...], str], ...] = ()
        self.button = QPushButton()
        self.button.setCheckable(True)
        self.button.setProperty("quiet", True)
        self.button.setToolTip("What could not be judged, and what is missing for it")
        self.list = QListWidget()
        self.list.setAccessibleName("Not known")
        self.list.setWordWrap(True)
        self.list.setResizeMode(QListView.ResizeMode.Adjust)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.button)
        column.addWidget(self.list, 1)
        self.where = QLabel()
        self.where.setWordWrap(True)
        self.where.setProperty("role", "faint")
        column.addWidget(self.where)
        self.list.currentRowChanged.connect(lambda _: self._say_where())
        self.button.toggled.connect(lambda is_on: self._open(opened=is_on))
        self.list.itemClicked.connect(self._select)
        self.list.itemActivated.connect(self._select)
        self._open(opened=False)

    def show_of(self, report: "CheckReport | None") -> None:
        """Rows stay as they are where the same is missing; without a report there are none."""
        from panelcad.checks.wording import unknown_things  # noqa: PLC0415 - the rules load with the first check

        things = unknown_things(report) if report is not None else ()
        self.setVisible(bool(things))
        if not things:
            self.close_list()
        if things == self._things:
            return
        self._things = things
        row = self.list.currentRow()
        self.list.clear()
        for sentence, items, _ in things:
            entry = QListWidgetItem(sentence)
            entry.setData(_ITEMS, items)
            self.list.addItem(entry)
        self.list.setCurrentRow(min(row, len(things) - 1))
        self._open(opened=self.button.isChecked())

    def close_list(self) -> None:
        self.button.setChecked(False)

    def _open(self, *, opened: bool) -> None:
        count = len(self._things)
        self.button.setText(f"Not known: {count} thing{'' if count == 1 else 's'} – {'hide' if opened else 'show'}")
        self.list.setVisible(opened)
        self.opened.emit(opened)
        if opened and self.list.currentRow() < 0:
            self.list.setCurrentRow(0)
        self._say_where()

    def _say_where(self) -> None:
        """Where the figure of the current row is entered."""
        row = self.list.currentRow()
        words = where_entered(self._things[row][2]) if 0 <= row < len(self._things) else ""
        self.where.setText(words)
        self.where.setVisible(bool(words) and self.button.isChecked())

    def _select(self, entry: QListWidgetItem) -> None:
        self._bench.select_parts(entry.data(_ITEMS))
        self._bench.zoom_to_selection()
