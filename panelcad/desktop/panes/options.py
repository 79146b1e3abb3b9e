"""The pane that sets the options side by side: the table, why a cell says what it says, and charts."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QModelIndex, QSignalBlocker, QSize, Qt
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QSplitter,
    QTableView,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.panes.chart_view import ChartView
from panelcad.desktop.panes.option_charts import option_charts
from panelcad.desktop.panes.option_table import OptionTable, Shown
from panelcad.desktop.panes.reasons import Reasons
from panelcad.desktop.panes.wrapped_header import WrappedHeader
from panelcad.desktop.workbench import Workbench

if TYPE_CHECKING:
    from panelcad.planning.judge import Judgement

_CAUTION: Final = "Arithmetic on what was entered; not known is never safe. Built-in figures are invented."
_TITLES: Final = 190
_CHARTS: Final = (("load", "Load"), ("envelope", "CG"), ("weight", "Weight"), ("cost", "Cost"))


class OptionsPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.comparer = bench.comparer
        self._asked_about = ""
        self.model = OptionTable(bench.theme)
        self.shown = ChoiceBox()
        for choice in Shown:
            self.shown.addItem(choice.value, choice)
        self.shown.setAccessibleName("Which rows")
        self.copy = QPushButton("New option…")
        self.copy.setToolTip("A new option like the one on the canvas, to change and hold against it")
        self.told = QLabel("Comparing …")
        self.told.setProperty("role", "faint")
        self.table = self._table()
        self.reasons = Reasons(bench)
        self.charts = {name: ChartView(title) for name, title in _CHARTS}
        self.tabs = self._tabs()
        self._lay_out()
        self._connect()
        self.setFocusProxy(self.table)

    def _table(self) -> QTableView:
        made = QTableView()
        made.setHorizontalHeader(WrappedHeader(made))
        made.setModel(self.model)
        made.setAccessibleName("Options side by side")
        made.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        made.setShowGrid(False)
        made.setWordWrap(True)
        made.verticalHeader().setVisible(False)
        made.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        made.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        return made

    def _tabs(self) -> QTabWidget:
        made = QTabWidget()
        made.tabBar().setAccessibleName("Why, and charts")
        made.addTab(self.reasons, "Why")
        for name, title in _CHARTS:
            made.addTab(self.charts[name], title)
        return made

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.shown)
        head.addWidget(self.copy)
        head.addWidget(self.told, 1)
        halves = QSplitter(Qt.Orientation.Horizontal)
        halves.addWidget(self.table)
        halves.addWidget(self.tabs)
        halves.setStretchFactor(0, 3)
        halves.setStretchFactor(1, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(6)
        column.addLayout(head)
        column.addWidget(halves, 1)

    def _connect(self) -> None:
        self.comparer.compared.connect(self.refresh)
        self.comparer.failed.connect(self.told.setText)
        self.shown.activated.connect(self.refresh)
        self.copy.clicked.connect(self._copy)
        self.table.clicked.connect(self._explain)
        self.table.selectionModel().currentChanged.connect(self._explain)
        self.table.activated.connect(lambda index: self._look_at(index.column()))
        self.table.horizontalHeader().sectionDoubleClicked.connect(self._look_at)
        self._bench.document.option_changed.connect(self._follow)
        self._bench.theme_changed.connect(self._take_theme)

    # Looking

    def sizeHint(self) -> QSize:
        return QSize(1000, 320)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.comparer.want(wanted=True)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.comparer.want(wanted=False)

    def minimumSizeHint(self) -> QSize:
        return QSize(420, 250)

    def refresh(self) -> None:
        comparison = self.comparer.comparison
        if comparison is None:
            return
        height, was = self.table.verticalScrollBar().value(), self.table.currentIndex()
        current = was.row(), was.column()
        self.model.offer(comparison, self.shown.currentData(), self._bench.document.option_id)
        self.table.clearSpans()
        for row in self.model.heading_rows():
            self.table.setSpan(row, 0, 1, self.model.columnCount())
        self._size_columns()
        with QSignalBlocker(self.table.selectionModel()):
            self.table.setCurrentIndex(self.model.index(*current))
        self.table.verticalScrollBar().setValue(height)
        self.told.setText(_CAUTION)
        judgement = self._judgement(self._bench.document.option_id)
        self.reasons.show_option(self._judgement(self._asked_about) or judgement)
        charts = option_charts(comparison, judgement, self._bench.theme) if judgement else {}
        for name, view in self.charts.items():
            view.show_chart(charts.get(name))

    def _size_columns(self) -> None:
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Interactive)
        header.resizeSection(0, _TITLES)

    def _judgement(self, option_id: str) -> "Judgement | None":
        comparison = self.comparer.comparison
        return next((j for j in comparison.judgements if j.option.id == option_id), None) if comparison else None

    def _follow(self) -> None:
        """The reasons are those of the option that came on the canvas."""
        self._asked_about = ""
        self.refresh()

    def show_everything(self) -> None:
        """The reasons are all that was found of the option on the canvas, errors first; the keyboard goes there."""
        self._asked_about = ""
        self.table.clearSelection()
        self.reasons.show_all_topics(self._judgement(self._bench.document.option_id))
        self.tabs.setCurrentWidget(self.reasons)
        self.reasons.list.setFocus()

    def _take_theme(self) -> None:
        self.model.theme = self._bench.theme
        self.refresh()

    # Doing

    def _explain(self, index: QModelIndex) -> None:
        """A cell, clicked or come to by keys, leads to its reasons; the canvas stays as it is."""
        comparison = self.comparer.comparison
        if comparison is None or index.column() < 1 or self.model.lines[index.row()].row is None:
            return
        judgement = comparison.judgements[index.column() - 1]
        topic = self.model.lines[index.row()].topic
        self._asked_about = judgement.option.id
        self.reasons.show_topic(judgement, topic)
        self.tabs.setCurrentWidget(self.reasons)

    def _look_at(self, column: int) -> None:
        """Show the option of a column on the canvas; the table keeps the reasons that were asked for."""
        comparison = self.comparer.comparison
        if comparison is not None and column:
            self._bench.document.look_at(comparison.judgements[column - 1].option.id)

    def _copy(self) -> None:
        from panelcad.desktop.dialogs.option_name import new_from_this  # noqa: PLC0415 - a dialog loads when it is opened

        new_from_this(self._bench, self.window())
