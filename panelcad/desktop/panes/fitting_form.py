"""Where a unit of the option sits and how it is fed: arm, bus, breaker, wire, what becomes of it after a failure."""

from typing import Any, Final

from pydantic import ValidationError
from PySide6.QtWidgets import QComboBox, QLineEdit

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.aircraft.field import Field, Kind, read, write
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.planning import set_fitting
from panelcad.errors import UnreadableQuantity
from panelcad.model.faults import first_fault
from panelcad.model.planning import AfterFailure, Circuit, WireRun
from panelcad.model.project import Item

_ARM: Final = Field("arm", "Arm", Kind.LENGTH)
_BREAKER: Final = Field("breaker", "Breaker, A", Kind.NUMBER)
_LENGTH: Final = Field("length", "With ground", Kind.LENGTH)
_GAUGES: Final = ("", "24", "22", "20", "18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "0")
_TYPED: Final = (_ARM, _BREAKER, _LENGTH)


class FittingForm(Form):
    """Shows one item; each field is one undo step when it is left."""

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._item: Item | None = None
        self.typed = {field.key: QLineEdit() for field in _TYPED}
        self.bus, self.gauge, self.after = ChoiceBox(), ChoiceBox(), ChoiceBox()
        self.gauge.addItems(list(_GAUGES))
        self.after.addItems([choice.value for choice in AfterFailure])
        for field in _TYPED:
            self.typed[field.key].setAccessibleName(field.title)
            self.typed[field.key].setMinimumWidth(60)
            self.typed[field.key].editingFinished.connect(self._take)
        for chooser, name in ((self.bus, "Bus"), (self.gauge, "Wire gauge"), (self.after, "After alternator failure")):
            chooser.setAccessibleName(name)
            chooser.setMinimumContentsLength(5)
            chooser.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            chooser.activated.connect(self._take)
        unit = bench.unit
        self.row(_ARM.headed(unit), self.typed["arm"])
        self.row("Bus", self.bus)
        self.row(_BREAKER.title, self.typed["breaker"])
        self.row("Wire", self.gauge)
        self.row(_LENGTH.headed(unit), self.typed["length"])
        self.row("Emergency", self.after)

    def show_item(self, item: Item | None) -> None:
        self._item = item
        self.setEnabled(item is not None)
        circuit = item.circuit if item else Circuit()
        values = {"arm": item.arm if item else None, "breaker": circuit.breaker, "length": circuit.wire.length}
        for field in _TYPED:
            self.typed[field.key].setText(write(field, values[field.key], self._bench.unit))
            self.typed[field.key].setModified(False)
        self._offer_buses(circuit.bus)
        self.gauge.setCurrentText(circuit.wire.gauge or "")
        self.after.setCurrentText(circuit.after_failure.value)

    def _offer_buses(self, chosen: str | None) -> None:
        system = self._bench.document.project.electrical(self._bench.document.option)
        self.bus.clear()
        self.bus.addItem("", None)
        for bus in system.buses if system else ():
            self.bus.addItem(bus.name, bus.id)
        self.bus.setCurrentIndex(max(0, self.bus.findData(chosen)))

    def _take(self) -> None:
        item = self._item
        if item is None:
            return
        try:
            changes = self._changes()
        except (UnreadableQuantity, ValidationError) as problem:
            words = str(first_fault(problem, "")) if isinstance(problem, ValidationError) else str(problem)
            self._bench.told.emit(words)
            self.show_item(item)
            return
        if any(getattr(item, key) != value for key, value in changes.items()):
            title = f"Change how {item.name} is fitted"
            self._bench.edit(title, lambda project, option: set_fitting(project, option, item.id, **changes))

    def _changes(self) -> dict[str, Any]:
        typed = {field.key: read(field, self.typed[field.key].text(), self._bench.unit) for field in _TYPED}
        circuit = Circuit(
            bus=self.bus.currentData(),
            breaker=typed["breaker"],
            wire=WireRun(gauge=self.gauge.currentText() or None, length=typed["length"]),
            after_failure=AfterFailure(self.after.currentText()),
        )
        return {"arm": typed["arm"], "circuit": circuit}
