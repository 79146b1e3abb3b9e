"""The pages of the aircraft's data. Each shows records and gives back plain data that the model validates."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QScrollArea,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.aircraft import fields
from panelcad.desktop.dialogs.aircraft.plain import (
    as_rows,
    in_old_order,
    load_record,
    load_row,
    named,
    without_blanks,
)
from panelcad.desktop.dialogs.aircraft.record_form import RecordForm
from panelcad.desktop.dialogs.aircraft.record_table import RecordTable
from panelcad.desktop.panes.form import Form
from panelcad.errors import UnreadableQuantity
from panelcad.model.function import Function, Supply
from panelcad.model.planning import (
    CostSettings,
    ElectricalSystem,
    Fact,
    FactState,
    OptionPlanning,
    Planning,
    WeightAndBalance,
)
from panelcad.units import LengthUnit

_THREE = ((None, "not known"), (True, "yes"), (False, "no"))


def page(*widgets: QWidget) -> QScrollArea:
    """The widgets one below the other, scrolled where they are taller than the window."""
    inside = QWidget()
    column = QVBoxLayout(inside)
    column.setContentsMargins(0, 0, 0, 0)
    for widget in widgets:
        column.addWidget(widget)
    area = QScrollArea()
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidgetResizable(True)
    area.setWidget(inside)
    return area


class Ticks(QListWidget):
    """Words that can be ticked."""

    def __init__(self, name: str, words: tuple[str, ...]) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setMinimumHeight(140)
        for word in words:
            entry = QListWidgetItem(word)
            entry.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsUserCheckable)
            entry.setCheckState(Qt.CheckState.Unchecked)
            self.addItem(entry)

    def tick(self, words: tuple[str, ...]) -> None:
        for row in range(self.count()):
            entry = self.item(row)
            entry.setCheckState(Qt.CheckState.Checked if entry.text() in words else Qt.CheckState.Unchecked)

    def ticked(self) -> tuple[str, ...]:
        entries = (self.item(row) for row in range(self.count()))
        return tuple(entry.text() for entry in entries if entry.checkState() is Qt.CheckState.Checked)


class FlightPage(QWidget):
    """Kind of flight, what is true of the aircraft, and what it has without a listed unit."""

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self._shown = Planning()
        self.form = RecordForm(fields.FLIGHT, unit)
        self.facts: dict[Fact, QComboBox] = {}
        facts = Form()
        facts.heading("What is true of the aircraft")
        for fact in Fact:
            chooser = ChoiceBox()
            chooser.setAccessibleName(fact.value)
            for _, words in _THREE:
                chooser.addItem(words)
            self.facts[fact] = chooser
            facts.row(fact.value, chooser)
        self.fitted = Ticks("What it has besides listed units", tuple(Function))
        self.supplied = Ticks("What it supplies besides listed units", tuple(Supply))
        lists = QHBoxLayout()
        for ticks in (self.fitted, self.supplied):
            form = Form()
            form.heading(ticks.accessibleName())
            form.add(ticks)
            lists.addWidget(form)
        both = QWidget()
        both.setLayout(lists)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(page(self.form, facts, both))

    def show_planning(self, planning: Planning) -> None:
        self.form.show_values(dict(planning))
        stated = {state.fact: state.holds for state in planning.facts}
        for fact, chooser in self.facts.items():
            chooser.setCurrentIndex([value for value, _ in _THREE].index(stated.get(fact)))
        self._shown = planning
        self.fitted.tick(tuple(planning.fitted))
        self.supplied.tick(tuple(planning.supplied))

    def values(self) -> dict[str, Any]:
        states = {fact: _THREE[chooser.currentIndex()][0] for fact, chooser in self.facts.items()}
        found = self.form.values()
        return {
            **found,
            "requirements": found["requirements"] or (),
            "facts": in_old_order(
                self._shown.facts,
                (FactState(fact=fact, holds=holds) for fact, holds in states.items() if holds is not None),
            ),
            "fitted": in_old_order(self._shown.fitted, (Function(word) for word in self.fitted.ticked())),
            "supplied": in_old_order(self._shown.supplied, (Supply(word) for word in self.supplied.ticked())),
        }


class ElectricalPage(QWidget):
    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.form = RecordForm(fields.SYSTEM, unit)
        self.alternators = RecordTable("Alternators", fields.ALTERNATORS, unit)
        self.buses = RecordTable("Buses", fields.BUSES, unit)
        self.loads = RecordTable("Loads of the aircraft that are no units of equipment", fields.LOADS, unit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(page(self.form, self.alternators, self.buses, self.loads))

    def show_system(self, system: ElectricalSystem | None) -> None:
        battery = system.battery if system else None
        shown = dict(system) if system else {}
        self.form.show_values(shown | (dict(battery) if battery else {}))
        self.alternators.show_records(as_rows(system.alternators) if system else [])
        self.buses.show_records(as_rows(system.buses) if system else [])
        self.loads.show_records([load_row(load) for load in system.loads] if system else [])

    def values(self) -> dict[str, Any] | None:
        """Plain data of the system; None where nothing is typed. Raises `UnreadableQuantity` without a voltage."""
        typed = without_blanks(self.form.values())
        if "voltage" not in typed:
            if typed or self.alternators.records() or self.buses.records() or self.loads.records():
                raise UnreadableQuantity("not stated", "14 V or 28 V for the electrical system")
            return None
        battery = {key: typed.pop(key) for key in ("capacity", "derate") if key in typed}
        alternators = named(self.alternators.records())
        buses = named(self.buses.records(), also={a["name"]: a["id"] for a in alternators})
        return {
            **typed,
            "battery": battery or None,
            "alternators": alternators,
            "buses": buses,
            "loads": named([load_record(row, buses) for row in self.loads.records()]),
        }


class OptionElectricalPage(QWidget):
    """An electrical system of the option's own, in place of the project's; blank where it flies with that."""

    def __init__(self, unit: LengthUnit, project_system: ElectricalSystem | None) -> None:
        super().__init__()
        self.system = ElectricalPage(unit)
        self.begin = QPushButton("&Begin with the project's")
        self.begin.setAutoDefault(False)
        self.begin.setEnabled(project_system is not None)
        self.begin.clicked.connect(lambda: self.system.show_system(project_system))
        words = QLabel("Only where this option changes alternator, battery, buses or loads; else leave it blank.")
        words.setWordWrap(True)
        words.setProperty("role", "faint")
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addWidget(self.begin)
        column.addWidget(self.system, 1)


class WeightPage(QWidget):
    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.form = RecordForm(fields.SHEET, unit)
        self.envelope = RecordTable("Corners of the CG envelope, in order", fields.ENVELOPE, unit)
        self.stations = RecordTable("Loading stations", fields.STATIONS, unit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(page(self.form, self.envelope, self.stations))

    def show_sheet(self, sheet: WeightAndBalance | None) -> None:
        self.form.show_values(dict(sheet) if sheet else {})
        self.envelope.show_records(as_rows(sheet.envelope) if sheet else [])
        self.stations.show_records(as_rows(sheet.stations) if sheet else [])

    def values(self) -> dict[str, Any] | None:
        """Plain data of the sheet; None where nothing is typed."""
        typed = without_blanks(self.form.values())
        envelope = tuple(self.envelope.records())
        stations = named([without_blanks(row) for row in self.stations.records()])
        return {**typed, "envelope": envelope, "stations": stations} if typed or envelope or stations else None


class CostPage(QWidget):
    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.form = RecordForm(fields.RATES, unit)
        self.exchange = RecordTable("Other currencies", fields.EXCHANGE, unit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(page(self.form, self.exchange))

    def show_settings(self, settings: CostSettings) -> None:
        self.form.show_values(dict(settings))
        self.exchange.show_records(as_rows(settings.exchange))

    def values(self) -> dict[str, Any]:
        return {**without_blanks(self.form.values()), "exchange": tuple(self.exchange.records())}


class OptionPage(QWidget):
    """What belongs to the option on the canvas alone."""

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.flight = RecordForm(fields.OPTION_FLIGHT, unit)
        self.shares = RecordForm(fields.OPTION_SHARES, unit)
        self.labour = RecordTable("Labour beside that of the units", fields.LABOUR, unit)
        self.lines = RecordTable("Lines of the quote that belong to no unit", fields.LINES, unit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(page(self.flight, self.shares, self.labour, self.lines))

    def show_option(self, planning: OptionPlanning) -> None:
        self.flight.show_values(dict(planning))
        self.shares.show_values(dict(planning.costs))
        self.labour.show_records(as_rows(planning.costs.labour))
        self.lines.show_records(as_rows(planning.costs.lines))

    def values(self) -> dict[str, Any]:
        costs = {
            **without_blanks(self.shares.values()),
            "labour": tuple(self.labour.records()),
            "lines": tuple(self.lines.records()),
        }
        return {**self.flight.values(), "costs": costs}


def tabs(pages: dict[str, QWidget]) -> QTabWidget:
    made = QTabWidget()
    made.tabBar().setAccessibleName("The aircraft's data")
    for title, widget in pages.items():
        made.addTab(widget, title)
    return made
