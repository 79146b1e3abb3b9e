"""What a new panel starts with: the unit, names, and how its outline comes about."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.fields import TextField
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.settings import Settings
from panelcad.editing.blank import blank_project
from panelcad.model.project import Project
from panelcad.units import LengthUnit

OUTLINES: Final = (
    ("a rectangular sheet", ""),
    ("by its measures", "panel.measures"),
    ("drawn point by point", "tool.course-outline"),
    ("out of a drawing (DXF)", "file.take-in"),
)
"""How the outline comes about, and the action that goes on with it."""


@dataclass(frozen=True)
class Start:
    unit: LengthUnit
    title: str
    registration: str
    next_action: str


@dataclass(frozen=True)
class NewPanel:
    """A project, and the id of the action that its outline is begun with, or ''."""

    project: Project
    next_action: str


class NewProject(FittedDialog):
    def __init__(self, parent: QWidget, settings: Settings) -> None:
        super().__init__(parent)
        self.setWindowTitle("New panel")
        self.setMinimumWidth(420)
        self.title = TextField("Title")
        self.title.setText("New panel")
        self.title.selectAll()
        self.title.setFocus()
        self.registration = TextField("Registration")
        self.unit = ChoiceBox()
        self.unit.setAccessibleName("Unit")
        self.unit.addItem("inches", LengthUnit.INCH)
        self.unit.addItem("millimetres", LengthUnit.MM)
        self.unit.setCurrentIndex(self.unit.findData(settings.unit))
        form = Form()
        form.row("&Title", self.title)
        form.row("&Registration", self.registration)
        self.outline = ChoiceBox()
        self.outline.setAccessibleName("Outline")
        for words, action in OUTLINES:
            self.outline.addItem(words, action)
        form.row("&Unit", self.unit)
        form.row("&Outline", self.outline)
        form.words(
            "The panel starts as a sheet as found and as one option. The outline drawn first is that of both.", "faint"
        )
        buttons = Answers(self, "&Begin")
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.NEW_PANEL)

    def chosen(self) -> Start:
        unit = LengthUnit(self.unit.currentData())
        return Start(
            unit,
            self.title.text().strip() or "New panel",
            self.registration.text().strip(),
            str(self.outline.currentData()),
        )


def ask_for_project(parent: QWidget, settings: Settings) -> NewPanel | None:
    """The new panel, or None where the person thought better of it."""
    dialog = NewProject(parent, settings)
    if dialog.exec() != QDialog.DialogCode.Accepted:
        return None
    start = dialog.chosen()
    settings.unit = start.unit
    project = blank_project(start.unit, start.title)
    if start.registration:
        project = project.revised(aircraft=project.aircraft.revised(registration=start.registration))
    return NewPanel(project, start.next_action)
