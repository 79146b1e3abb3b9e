"""Say which unit of equipment an item is: those that are mounted in its cutout first, then those that do the same."""

from collections.abc import Iterable, Iterator
from typing import Final

from PySide6.QtWidgets import QComboBox

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.workbench import Workbench
from panelcad.editing.equip import name_unit
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.project import Item

_NOT_SAID: Final = "Say what it is…"


class UnitChoice(ChoiceBox):
    """Shows one item; a choice is one undo step. What is mounted elsewhere than on the panel stays what it is."""

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._item: Item | None = None
        self.setAccessibleName("Unit of equipment")
        self.setToolTip("What planning reckons with: functions, load, weight and price of the unit")
        self.setMinimumContentsLength(8)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.activated.connect(self._take)

    def show_item(self, item: Item | None) -> None:
        self._item = item
        self.clear()
        self.setEnabled(item is not None and item.cutout is not None)
        if item is None or item.cutout is None:
            return
        self.addItem(_NOT_SAID, None)
        told: set[str] = set()
        for group in self._groups(item, item.cutout):
            fresh = [unit for unit in group if unit.name not in told]
            if fresh:
                self.insertSeparator(self.count())
            for unit in fresh:
                self.addItem(unit.title, unit)
                told.add(unit.name)
        names = [unit.name if (unit := self.itemData(row)) else None for row in range(self.count())]
        self.setCurrentIndex(names.index(item.unit))

    def _groups(self, item: Item, mounted: str) -> Iterator[Iterable[EquipmentUnit]]:
        """What it is and what is mounted in its cutout; what gives what its face shows, or where that is not said, what
        is mounted in cutouts of its family; all else that is mounted on a panel.
        """
        library, catalogue = self._bench.equipment, self._bench.catalogue
        project = self._bench.document.project
        on_panel = sorted((unit for unit in library.units.values() if unit.cutout), key=lambda unit: unit.title)
        yield (*(unit for unit in project.units if unit.name == item.unit), *library.mounted_in(mounted))
        cutout = project.cutout(mounted)
        if cutout.shows:
            yield library.giving(cutout.shows)
        else:
            akin = {other.name for other in catalogue.cutouts.values() if other.family == cutout.family}
            yield (unit for unit in on_panel if unit.cutout in akin)
        yield on_panel

    def _take(self) -> None:
        item, unit = self._item, self.currentData()
        if item is None or (unit.name if unit else None) == item.unit:
            return
        title = f"Say what {item.name} is"
        if not self._bench.edit(title, lambda project, option: name_unit(project, option, item.id, unit)):
            self.show_item(item)
