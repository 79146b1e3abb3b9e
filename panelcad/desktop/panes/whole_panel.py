"""The properties of the panel itself, shown while nothing is selected."""

from PySide6.QtWidgets import QLabel

from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.model.layout import layout
from panelcad.model.project import Project
from panelcad.units import format_length, format_number


class WholePanel(Form):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.title = self.heading("")
        self._values: dict[str, QLabel] = {}
        for word in ("Aircraft", "Type", "Datum", "Option"):
            self._add(word)
        self.line()
        self.plate = self.heading("")
        for word in ("Size", "Sheet", "Alloy", "Role", "State", "Cuts", "Items"):
            self._add(word)
        self.end()
        self.refresh(bench.document.project)

    def _add(self, word: str) -> None:
        label = QLabel()
        label.setWordWrap(True)
        self._values[word] = label
        self.row(word, label)

    def refresh(self, project: Project) -> None:
        option = project.option(self._bench.document.option_id)
        laid = layout(project, option).plate(self._bench.stage.plate_id)
        plate, unit = laid.plate, project.unit
        x1, y1, x2, y2 = laid.outline.bounds
        self.title.setText(project.title)
        self.plate.setText(plate.name)
        for word, value in {
            "Aircraft": project.aircraft.registration,
            "Type": project.aircraft.type_name,
            "Datum": project.aircraft.datum,
            "Option": option.name,
            "Size": f"{format_number(x2 - x1, unit)} × {format_length(y2 - y1, unit)}",
            "Sheet": format_length(plate.thickness, unit),
            "Alloy": plate.alloy,
            "Role": plate.role.value,
            "State": plate.state.value,
            "Cuts": str(len(plate.cuts)),
            "Items": str(sum(item.plate == plate.id for item in option.items)),
        }.items():
            self._values[word].setText(value)
