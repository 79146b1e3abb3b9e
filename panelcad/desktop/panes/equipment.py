"""The equipment of the option on the canvas: put units in from the library, place those that wait, take out."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QScrollArea,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.panes.fitted_list import FittedList, Row
from panelcad.desktop.panes.fitting_form import FittingForm
from panelcad.desktop.panes.unit_choice import UnitChoice
from panelcad.desktop.tools.put import put_waiting
from panelcad.desktop.workbench import Workbench
from panelcad.editing.equip import add_unit, unit_by_cutout
from panelcad.editing.remove import remove

if TYPE_CHECKING:
    from panelcad.library.equipment import EquipmentLibrary
    from panelcad.model.equipment import EquipmentUnit
    from panelcad.model.project import Item, Project
    from panelcad.planning.equipment import Equipment

_ID: Final = int(Qt.ItemDataRole.UserRole)
_INVENTED: Final = "Built-in units are generic; weights, currents and prices are invented."


class EquipmentPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._library: EquipmentLibrary | None = None
        self.search = QLineEdit()
        self.search.setPlaceholderText("Search: navigator, transponder, attitude …")
        self.search.setClearButtonEnabled(True)
        self.search.setAccessibleName("Search the units of equipment")
        self.offered = QListWidget()
        self.offered.setAccessibleName("Units of equipment")
        self.put_in = QPushButton("Put in the option")
        self.put_in.setEnabled(False)
        self.fitted = FittedList()
        for listed in (self.offered, self.fitted):
            listed.setMinimumHeight(60)
        self.place = QPushButton("Place")
        self.place.setToolTip("Put it on the panel at the nearest free place")
        self.take_out = QPushButton("Take out")
        self.fitting = FittingForm(bench)
        self.count = QLabel()
        self.count.setWordWrap(True)
        self.say_clear = QPushButton()
        self.say_clear.setToolTip("Each is the one unit of the library that is mounted in its cutout")
        self.unit = UnitChoice(bench)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.addWidget(self.place)
        row.addWidget(self.take_out)
        form = QScrollArea()
        form.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        form.setWidgetResizable(True)
        form.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        form.setWidget(_stacked(self.unit, self.fitting))
        self.tabs = QTabWidget()
        self.tabs.tabBar().setAccessibleName("Equipment")
        self.tabs.addTab(_stacked(self.fitted, row, self.count, self.say_clear, form), "In the option")
        self.tabs.addTab(_stacked(self.search, self.offered, self.put_in), "Put in")
        told = QLabel(_INVENTED)
        told.setWordWrap(True)
        told.setProperty("role", "faint")
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.tabs, 1)
        column.addWidget(told)

    def _connect(self) -> None:
        bench = self._bench
        self.search.textChanged.connect(self._offer)
        self.search.returnPressed.connect(self._go_to_first)
        self.offered.currentItemChanged.connect(lambda: self.put_in.setEnabled(True))
        self.offered.itemActivated.connect(self._put_in)
        self.put_in.clicked.connect(self._put_in)
        self.fitted.currentItemChanged.connect(self._choose)
        self.place.clicked.connect(self._place)
        self.take_out.clicked.connect(self._take_out)
        self.say_clear.clicked.connect(self._say_clear)
        bench.document.changed.connect(self.refresh)
        bench.document.option_changed.connect(self._list_anew)
        bench.document.replaced.connect(self._list_anew)

    def showEvent(self, event: object) -> None:  # noqa: ARG002
        """The library is read when somebody first looks."""
        if self._library is None:
            self._library = self._bench.equipment
            self._offer()
        self._list_anew()

    def _offer(self) -> None:
        self.offered.clear()
        if self._library is None:
            return
        for unit in self._library.search(self.search.text()):
            entry = QListWidgetItem(unit.title)
            entry.setData(_ID, unit.name)
            entry.setToolTip(_does(unit))
            self.offered.addItem(entry)
        self.put_in.setEnabled(False)

    def _go_to_first(self) -> None:
        """Enter in the search field goes on to the list; there it puts in what is chosen."""
        if self.offered.count():
            self.offered.setCurrentRow(0)
            self.offered.setFocus()

    def refresh(self) -> None:
        """Each line stays where it is; what was chosen stays chosen."""
        if self.isVisible():
            self.fitted.list_on(self._rows())
            self._show_the_rest()

    def _list_anew(self) -> None:
        """What nobody said anything of comes first."""
        if self.isVisible():
            self.fitted.list_anew(self._rows())
            self._show_the_rest()

    def _show_the_rest(self) -> None:
        self._count()
        self._show_chosen()

    @property
    def _found(self) -> "Equipment":
        from panelcad.planning.equipment import equipment  # noqa: PLC0415 - when first seen

        return equipment(self._bench.document.project, self._bench.document.option)

    def _rows(self) -> list[Row]:
        found = self._found
        nameless = [self._nameless_row(item) for item in found.nameless]
        return nameless + [Row(one.id, one.name, one.place_words, _does(one.unit)) for one in found.units]

    def _nameless_row(self, item: "Item") -> Row:
        mounted = self._bench.equipment.mounted_in(item.cutout or "")
        one_of = f" It can be one of these: {'; '.join(unit.title for unit in mounted)}." if mounted else ""
        return Row(item.id, item.name, "not said", f"Nobody said what unit of equipment it is.{one_of}")

    def _count(self) -> None:
        """Tell how many items nobody said the equipment of, and how many of those can be only one thing."""
        from panelcad.planning.figures import without_equipment  # noqa: PLC0415 - when first seen

        nameless = self._found.nameless
        units = self._bench.equipment.by_cutout
        clear = sum(1 for item in nameless if unit_by_cutout(self._bench.document.project, item, units))
        self.count.setText(without_equipment(len(nameless)))
        self.count.setToolTip("Choose one and say below what it is")
        self.count.setVisible(bool(nameless))
        self.say_clear.setText(f"Say it for the {clear} that can be only one" if clear > 1 else "Say the only one")
        self.say_clear.setVisible(bool(clear))

    def _say_clear(self) -> None:
        every = {item.id for item in self._bench.document.option.items}
        self._bench.edit("Say what equipment it is", lambda project, _: self._bench.said(project, every))

    def _choose(self) -> None:
        """What is chosen here is selected on the panel."""
        item = self._show_chosen()
        if item is not None and item.plate is not None:
            self._bench.selection.set((item.id,))

    def _show_chosen(self) -> "Item | None":
        items = {item.id: item for item in self._bench.document.option.items}
        item = items.get(self.fitted.chosen_id)
        self.take_out.setEnabled(item is not None)
        self.fitting.show_item(item)
        self.unit.show_item(item)
        self.place.setEnabled(item is not None and item.cutout is not None and item.plate is None)
        return item

    # Doing

    def _put_in(self) -> None:
        entry = self.offered.currentItem()
        if entry is None or self._library is None:
            return
        unit = self._library.unit(entry.data(_ID))
        if self._bench.edit(f"Put in {unit.title}", lambda project, option: self._with(project, option, unit)):
            waits = "; Place, under 'In the option', puts it on the panel" if unit.cutout else ""
            self._bench.told.emit(f"'{unit.title}' is in the option{waits}")

    def _with(self, project: "Project", option: str, unit: "EquipmentUnit") -> "Project":
        cutout = self._bench.catalogue.cutout(unit.cutout) if unit.cutout else None
        return add_unit(project, option, unit, cutout).project

    def _place(self) -> None:
        put_waiting(self._bench, self.fitted.chosen_id)

    def _take_out(self) -> None:
        item_id = self.fitted.chosen_id
        title = f"Take out {self._bench.name_of(item_id)}"
        self._bench.edit(title, lambda project, option: remove(project, option, [item_id]))


def _stacked(*parts: QWidget | QHBoxLayout) -> QWidget:
    """A page with these one below the other; lists share the room."""
    page = QWidget()
    column = QVBoxLayout(page)
    column.setContentsMargins(0, 6, 0, 0)
    column.setSpacing(6)
    for part in parts:
        if isinstance(part, QWidget):
            column.addWidget(part, 1 if isinstance(part, QAbstractScrollArea) else 0)
        else:
            column.addLayout(part)
    return page


def _does(unit: "EquipmentUnit") -> str:
    """What a unit does, needs and controls, for the pointer that rests on it."""
    lines = [unit.title]
    lines += [f"Does: {', '.join(unit.provides)}"] if unit.provides else []
    lines += [f"Supplies: {', '.join(unit.supplies)}"] if unit.supplies else []
    lines += [f"Can control: {', '.join(unit.controls)}"] if unit.controls else []
    lines += [f"Needs: {', '.join(need.words for need in unit.needs)}"] if unit.needs else []
    return "\n".join(lines)
