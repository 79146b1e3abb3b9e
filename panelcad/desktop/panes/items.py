"""Everything on the plate as a list; choosing there chooses on the canvas, and the other way round."""

import re
from typing import Final, NamedTuple

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.icons import icon
from panelcad.desktop.single_keys import lists_the_panel
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.numbering import numbering
from panelcad.editing.openings import openings
from panelcad.editing.snapping.on_plate import standings
from panelcad.geometry.point import Point
from panelcad.model.layout import FeatureKind
from panelcad.units import format_number

_FIGURES: Final = re.compile(r"(\d+)")


def _in_order(name: str) -> list[tuple[int, str]]:
    """Letters as they are, figures by their value: the second before the tenth."""
    return [(int(part), "") if part.isdecimal() else (0, part) for part in _FIGURES.split(name.casefold())]


class _Entry(NamedTuple):
    """One line of the list; a dimension has no place of its own."""

    part: str
    name: str
    at: Point | None = None
    is_locked: bool = False


class ItemsPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._is_following = False
        self._fresh: set[str] = set()
        """Parts that came into the list and were not picked in it or on the panel since."""
        self.tree = QTreeWidget()
        self.tree.setAccessibleName("On the panel")
        lists_the_panel(self.tree)
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
        self.setFocusProxy(self.tree)

    def refresh(self) -> None:
        """The same rows stay in sight, whatever was added or taken away."""
        self._is_following = True
        before, seen = {row.data(0, Qt.ItemDataRole.UserRole) for row in self._rows()}, self._first_in_sight()
        self.tree.clear()
        for kind in (self._things(), self._words(), self._dimensions(), self._screws()):
            for entry in sorted(kind, key=lambda entry: _in_order(entry.name)):
                self._add(entry)
        self._is_following = False
        self._fresh = {row.data(0, Qt.ItemDataRole.UserRole) for row in self._rows()} - before if before else set()
        self._show_chosen()
        self._bring_to_top(seen)

    def _first_in_sight(self) -> str:
        row = self.tree.itemAt(0, 0)
        return str(row.data(0, Qt.ItemDataRole.UserRole)) if row is not None else ""

    def _bring_to_top(self, part: str) -> None:
        row = self._row_of(part)
        if row is not None:
            self.tree.scrollToItem(row, QAbstractItemView.ScrollHint.PositionAtTop)

    def _add(self, entry: _Entry) -> None:
        figures = (format_number(value, self._bench.unit) for value in entry.at or ())
        row = QTreeWidgetItem(self.tree, [entry.name, *figures])
        row.setData(0, Qt.ItemDataRole.UserRole, entry.part)
        row.setToolTip(0, f"{entry.name}, locked in place" if entry.is_locked else entry.name)
        if entry.is_locked:
            row.setIcon(0, icon("lock", self._bench.theme.ink, self._bench.theme.disabled))
        for column in (1, 2):
            row.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def _things(self) -> list[_Entry]:
        """What is cut or fitted."""
        return [one for one in self._standing() if one.part not in self._attach_ids()] + self._openings()

    def _screws(self) -> list[_Entry]:
        """Those that hold the plate, by their numbers in the hole schedule."""
        screws = [one for one in self._standing() if one.part in self._attach_ids()]
        numbers = self._numbers() if screws else {}
        return [one._replace(name=f"{numbers[one.part]} {one.name}") for one in screws]

    def _numbers(self) -> dict[str, str]:
        laid = self._bench.stage.layout()
        known = numbering(laid).features
        holes = laid.plate(self._bench.stage.plate_id).attach
        return {hole.owner: known[hole.id] for hole in holes if hole.kind is FeatureKind.ATTACH}

    def _standing(self) -> list[_Entry]:
        stage, locked = self._bench.stage, self._bench.document.option.locked
        places = standings(stage.layout(), stage.plate_id).items()
        return [_Entry(part, one.name, one.centre, part in locked) for part, one in places]

    def _attach_ids(self) -> frozenset[str]:
        plate = self._bench.document.option.plate(self._bench.stage.plate_id)
        return frozenset(screw.id for screw in plate.attach_screws)

    def _openings(self) -> list[_Entry]:
        """Those of the sheet itself."""
        all_of_them = openings(self._bench.document.option).items()
        here = [(part, one.opening) for part, one in all_of_them if one.plate_id == self._bench.stage.plate_id]
        return [_Entry(part, one.purpose, Point(one.x, one.y)) for part, one in here]

    def _words(self) -> list[_Entry]:
        """Lettering in the metal and notes on the drawing."""
        option, plate_id = self._bench.document.option, self._bench.stage.plate_id
        notes = [note for note in option.drawing_notes if note.plate == plate_id]
        places = {one.id: Point(one.x, one.y) for one in option.plate(plate_id).engravings}
        places |= {note.id: Point(note.x, note.y) for note in notes}
        return [_Entry(part, self._bench.name_of(part), at, part in option.locked) for part, at in places.items()]

    def _dimensions(self) -> list[_Entry]:
        here = (one for one in self._bench.document.option.dimensions if one.plate == self._bench.stage.plate_id)
        return [_Entry(one.id, self._bench.name_of(one.id)) for one in here]

    def _rows(self) -> list[QTreeWidgetItem]:
        rows = (self.tree.topLevelItem(place) for place in range(self.tree.topLevelItemCount()))
        return [row for row in rows if row is not None]

    def _choose(self) -> None:
        if not self._is_following:
            chosen = [row.data(0, Qt.ItemDataRole.UserRole) for row in self.tree.selectedItems()]
            self._is_following = True
            self._bench.selection.set(chosen)
            self._is_following = False

    def _row_of(self, part: str) -> QTreeWidgetItem | None:
        return next((row for row in self._rows() if row.data(0, Qt.ItemDataRole.UserRole) == part), None)

    def _follow(self) -> None:
        """What is picked on the panel comes into sight; what was only made leaves the list where it is."""
        if self._is_following:
            return
        self._show_chosen()
        row = self._row_of(self._bench.selection.current)
        if row is not None and self._bench.selection.current not in self._fresh:
            self.tree.scrollToItem(row)
        self._fresh = set()

    def _show_chosen(self) -> None:
        self._is_following = True
        chosen = self._bench.selection.ids
        model = self.tree.selectionModel()
        flag = QItemSelectionModel.SelectionFlag
        for row in self._rows():
            is_chosen = row.data(0, Qt.ItemDataRole.UserRole) in chosen
            model.select(self.tree.indexFromItem(row), (flag.Select if is_chosen else flag.Deselect) | flag.Rows)
        self._is_following = False
