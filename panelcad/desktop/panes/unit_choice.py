"""Say which unit of equipment an item is: those that are mounted in its cutout first."""

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
        for unit in self._offered(item):
            self.addItem(unit.title, unit)
        names = [None, *(unit.name for unit in self._offered(item))]
        self.setCurrentIndex(names.index(item.unit))

    def _offered(self, item: Item) -> list[EquipmentUnit]:
        """What it is, what is mounted in its cutout, then all else that is mounted on a panel."""
        library = self._bench.equipment
        known = [unit for unit in self._bench.document.project.units if unit.name == item.unit]
        mine = library.mounted_in(item.cutout or "")
        others = sorted((unit for unit in library.units.values() if unit.cutout), key=lambda unit: unit.title)
        return list({unit.name: unit for unit in (*known, *mine, *others)}.values())

    def _take(self) -> None:
        item, unit = self._item, self.currentData()
        if item is None or (unit.name if unit else None) == item.unit:
            return
        title = f"Say what {item.name} is"
        if not self._bench.edit(title, lambda project, option: name_unit(project, option, item.id, unit)):
            self.show_item(item)
