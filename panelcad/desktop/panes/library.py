"""The library: families, search, recently used; drag or double-click puts a cutout on the panel."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import (
    QAbstractListModel,
    QByteArray,
    QMimeData,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QSize,
    Qt,
    QTimer,
)
from PySide6.QtGui import QDrag, QPixmap
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QLineEdit, QListView, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.drop import CUTOUT_MIME
from panelcad.desktop.panes.cutout_row import CutoutRow
from panelcad.desktop.panes.cutout_tip import cutout_tip
from panelcad.desktop.thumbnails import library_picture, thumbnail
from panelcad.desktop.tools.put import put_in_view
from panelcad.desktop.workbench import Workbench
from panelcad.model.cutout import Cutout

Index = QModelIndex | QPersistentModelIndex
CUTOUT_ROLE: Final = int(Qt.ItemDataRole.UserRole)
PICTURE: Final = QSize(44, 44)
_BESIDE: Final = 14
_ALL, _RECENT = "", "recent"
_NOTHING: Final = (
    "Nothing suits these words. An opening of the sheet itself, as for a glove box or the control column, is drawn: "
    "Panel, Draw an opening (Shift+O)."
)


class CutoutModel(QAbstractListModel):
    """Cutouts in the order they are offered; their pictures are drawn when they are first seen."""

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._cutouts: list[Cutout] = []
        self._pictures: dict[str, QPixmap] = {}
        bench.theme_changed.connect(self._repaint)

    def offer(self, cutouts: list[Cutout]) -> None:
        self.beginResetModel()
        self._cutouts = cutouts
        self.endResetModel()

    def _repaint(self) -> None:
        self._pictures.clear()
        self.layoutChanged.emit()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self._cutouts)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        cutout = self._cutouts[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return cutout.title
        if role == Qt.ItemDataRole.DecorationRole:
            return self._picture(cutout)
        if role == CUTOUT_ROLE:
            return cutout
        return cutout_tip(cutout, self._bench.unit) if role == Qt.ItemDataRole.ToolTipRole else None

    def _picture(self, cutout: Cutout) -> QPixmap:
        if cutout.name not in self._pictures:
            ratio = self._bench.view.devicePixelRatioF()
            self._pictures[cutout.name] = thumbnail(library_picture(cutout, self._bench.theme), PICTURE, ratio)
        return self._pictures[cutout.name]

    def flags(self, index: Index) -> Qt.ItemFlag:
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsDragEnabled if index.isValid() else usual

    def mimeTypes(self) -> list[str]:
        return [CUTOUT_MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        data = QMimeData()
        data.setData(CUTOUT_MIME, QByteArray(self._cutouts[indexes[0].row()].name.encode()))
        return data


class CutoutList(QListView):
    """Drags a cutout by its picture alone, beside the pointer: a whole row would cover the panel."""

    def startDrag(self, supportedActions: Qt.DropAction) -> None:  # noqa: N803 - Qt's own name
        indexes = self.selectedIndexes()
        if not indexes:
            return
        drag = QDrag(self)
        drag.setMimeData(self.model().mimeData(indexes))
        drag.setPixmap(indexes[0].data(Qt.ItemDataRole.DecorationRole))
        drag.setHotSpot(QPoint(-_BESIDE, -_BESIDE))
        drag.exec(supportedActions)


class LibraryPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._is_read = False
        self.search = QLineEdit()
        self.search.setObjectName("search")
        self.search.setPlaceholderText("Search: altimeter, 3 1/8, radio …")
        self.search.setClearButtonEnabled(True)
        self.search.setAccessibleName("Search the library")
        self.family = ChoiceBox()
        self.family.setAccessibleName("Family")
        self.family.setMinimumContentsLength(8)
        self.family.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.model = CutoutModel(bench)
        self.list = self._list()
        self.place = QPushButton("Place")
        self.place.setToolTip("Take it in hand; each click on the panel puts one down (Enter)")
        self.none = QLabel(_NOTHING)
        self.none.setWordWrap(True)
        self.none.setProperty("role", "faint")
        self._lay_out()
        self._connect()

    def _list(self) -> QListView:
        made = CutoutList()
        made.setModel(self.model)
        made.setItemDelegate(CutoutRow(self._bench, made))
        made.setDragEnabled(True)
        made.setUniformItemSizes(True)
        made.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        made.setAccessibleName("Cutouts")
        made.setIconSize(PICTURE)
        return made

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(6)
        column.addWidget(self.search)
        column.addWidget(self.family)
        column.addWidget(self.none)
        column.addWidget(self.list, 1)
        row = QHBoxLayout()
        hint = QLabel("Drag, or double-click")
        hint.setProperty("role", "faint")
        row.addWidget(hint, 1)
        row.addWidget(self.place)
        column.addLayout(row)

    def _connect(self) -> None:
        self.search.textChanged.connect(self._search)
        self.search.returnPressed.connect(self._take_first)
        self.family.activated.connect(self._search)
        self.list.doubleClicked.connect(lambda index: put_in_view(self._bench, self._cutout(index)))
        self.list.activated.connect(self._activated)
        self.place.clicked.connect(self._take_in_hand)
        self.list.selectionModel().currentChanged.connect(lambda: self.place.setEnabled(True))
        self._bench.catalogue_changed.connect(self._read)
        QTimer.singleShot(0, self, self._read)

    def showEvent(self, event: object) -> None:  # noqa: ARG002
        if not self._is_read:
            self._read()

    def _read(self) -> None:
        """Fill the families and the list from the catalogue."""
        self._is_read = True
        catalogue = self._bench.catalogue
        chosen = self.family.currentData()
        self.family.clear()
        self.family.addItem("All families", _ALL)
        self.family.addItem("Used lately", _RECENT)
        for family in catalogue.families.values():
            self.family.addItem(family.title, family.name)
        self.family.setCurrentIndex(max(0, self.family.findData(chosen)))
        for fault in catalogue.faults:
            self._bench.refused.emit(str(fault))
        self.refresh()

    def _search(self) -> None:
        """Other words or another family: what suits best is in sight."""
        self.refresh()
        self.list.scrollToTop()

    def refresh(self) -> None:
        found = self._bench.catalogue.search(self.search.text())
        family = self.family.currentData()
        recent = self._bench.settings.recent_cutouts
        if family == _RECENT:
            found = sorted((c for c in found if c.name in recent), key=lambda c: recent.index(c.name))
        elif family:
            found = [cutout for cutout in found if cutout.family == family]
        self.model.offer(found)
        self.none.setVisible(not found)
        self.place.setEnabled(self.list.currentIndex().isValid())

    def _cutout(self, index: Index) -> Cutout:
        cutout = index.data(CUTOUT_ROLE)
        if not isinstance(cutout, Cutout):
            raise TypeError("the list holds cutouts")
        return cutout

    def _take_first(self) -> None:
        """Enter in the search field goes on to the list."""
        if self.model.rowCount():
            self.list.setCurrentIndex(self.model.index(0))
            self.list.setFocus()

    def _activated(self, index: QModelIndex) -> None:
        """Enter takes in hand; a double click, which activates too, has put one down already."""
        if self.list.hasFocus() and not self._bench.view.hasFocus():
            self._bench.place_wanted.emit(self._cutout(index))
            self._bench.view.setFocus()

    def _take_in_hand(self) -> None:
        index = self.list.currentIndex()
        if index.isValid():
            self._bench.place_wanted.emit(self._cutout(index))
            self._bench.view.setFocus()
