"""The aircraft as planning needs it: flight, electrical system, weight and balance, rates, the option's costs."""

from pydantic import ValidationError
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.aircraft.tabs import (
    CostPage,
    ElectricalPage,
    FlightPage,
    OptionElectricalPage,
    OptionPage,
    WeightPage,
    tabs,
)
from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.planning import set_option_planning, set_planning
from panelcad.errors import PanelcadError
from panelcad.model.faults import first_fault
from panelcad.model.planning import OptionPlanning, Planning
from panelcad.model.project import Project

_WORDS = "Leave blank what is not known: it is reported as not known and never taken as zero."


class AircraftData(FittedDialog):
    """Nothing changes until 'Take over' is pressed; what cannot be read is said and stays as typed."""

    def __init__(self, bench: Workbench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self.setWindowTitle(f"Aircraft, flight and costs · option '{bench.document.option.name}'")
        self.resize(760, 620)
        unit = bench.unit
        self.flight, self.electrical, self.weight = FlightPage(unit), ElectricalPage(unit), WeightPage(unit)
        self.costs, self.option = CostPage(unit), OptionPage(unit)
        self.own_electrical = OptionElectricalPage(unit, bench.document.project.planning.electrical)
        self.tabs = tabs(
            {
                "Flight": self.flight,
                "Electrical": self.electrical,
                "Weight and balance": self.weight,
                "Rates": self.costs,
                "This option": self.option,
                "Its own electrical system": self.own_electrical,
            }
        )
        self.problem = QLabel()
        self.problem.setWordWrap(True)
        self.problem.setProperty("role", "wrong")
        self._lay_out()
        self._show()

    def _lay_out(self) -> None:
        buttons = Answers(self, "&Take over", self.take_over)
        words = QLabel(_WORDS)
        words.setWordWrap(True)
        words.setProperty("role", "faint")
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addWidget(self.tabs, 1)
        column.addWidget(self.problem)
        column.addWidget(buttons)
        explained(self, Dialog.AIRCRAFT)

    def _show(self) -> None:
        project, option = self._bench.document.project, self._bench.document.option
        self.flight.show_planning(project.planning)
        self.electrical.show_system(project.planning.electrical)
        self.weight.show_sheet(project.planning.weight)
        self.costs.show_settings(project.planning.costs)
        self.option.show_option(option.planning)
        self.own_electrical.system.show_system(option.planning.electrical)

    def take_over(self) -> None:
        """One undo step, or one sentence about what cannot be."""
        try:
            changed = self._changed()
        except ValidationError as error:
            self.problem.setText(str(first_fault(error, "")))
        except PanelcadError as error:
            self.problem.setText(str(error))
        else:
            self._bench.document.apply("Change the aircraft's data", changed)
            self.accept()

    def _changed(self) -> Project:
        document = self._bench.document
        planning = Planning.model_validate(
            {
                **dict(document.project.planning),
                **self.flight.values(),
                "electrical": self.electrical.values(),
                "weight": self.weight.values(),
                "costs": self.costs.values(),
            }
        )
        project = set_planning(document.project, planning)
        own = OptionPlanning.model_validate(
            {
                **dict(document.option.planning),
                **self.option.values(),
                "electrical": self.own_electrical.system.values(),
            }
        )
        return set_option_planning(project, document.option_id, own)
