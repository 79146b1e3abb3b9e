"""Everything on the plate as a list; choosing there chooses on the canvas, and the other way round."""

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.workbench import Workbench
from panelcad.editing.snapping.on_plate import standings
from panelcad.units import format_number


class ItemsPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._is_following = False
        self.tree = QTreeWidget()
        self.tree.setAccessibleName("On the panel")
        self.tree.setHeaderLabels(["Name", "x", "y"])
        self.tree.setRootIsDecorated(False)
        self.tree.setUniformRowHeights(True)
        self.tree.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.tree.setSortingEnabled(False)
        self.tree.header().setStretchLastSection(False)
        self.tree.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in (1, 2):
            self.tree.header().setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 8, 8, 8)
        box.addWidget(self.tree)
        self.tree.itemSelectionChanged.connect(self._choose)
        self.tree.itemDoubleClicked.connect(bench.zoom_to_selection)
        bench.stage.shown.connect(self.refresh)
        bench.selection.changed.connect(self._follow)
        self.refresh()

    def refresh(self) -> None:
        self._is_following = True
        self.tree.clear()
        unit = self._bench.unit
        places = standings(self._bench.stage.layout(), self._bench.stage.plate_id)
        screws = {screw.id for screw in self._bench.document.option.plate(self._bench.stage.plate_id).attach_screws}
        named = [entry for entry in places.items() if entry[0] not in screws]
        for part, standing in sorted(named, key=lambda entry: entry[1].name.casefold()):
            x, y = (format_number(value, unit) for value in standing.centre)
            row = QTreeWidgetItem(self.tree, [standing.name, x, y])
            row.setData(0, Qt.ItemDataRole.UserRole, part)
            row.setToolTip(0, standing.name)
            for column in (1, 2):
                row.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._is_following = False
        self._follow()

    def _rows(self) -> list[QTreeWidgetItem]:
        rows = (self.tree.topLevelItem(place) for place in range(self.tree.topLevelItemCount()))
        return [row for row in rows if row is not None]

    def _choose(self) -> None:
        if not self._is_following:
            chosen = [row.data(0, Qt.ItemDataRole.UserRole) for row in self.tree.selectedItems()]
            self._is_following = True
            self._bench.selection.set(chosen)
            self._is_following = False

    def _follow(self) -> None:
        if self._is_following:
            return
        self._is_following = True
        chosen = self._bench.selection.ids
        model = self.tree.selectionModel()
        flag = QItemSelectionModel.SelectionFlag
        for row in self._rows():
            is_chosen = row.data(0, Qt.ItemDataRole.UserRole) in chosen
            model.select(self.tree.indexFromItem(row), (flag.Select if is_chosen else flag.Deselect) | flag.Rows)
            if row.data(0, Qt.ItemDataRole.UserRole) == self._bench.selection.current:
                self.tree.scrollToItem(row)
        self._is_following = False
