"""Preferences: unit and limits of new projects, steps, colours, initials, and the size of the screen."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QLabel, QLineEdit, QTabWidget, QVBoxLayout, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.dialogs.limits_field import LimitsField
from panelcad.desktop.dialogs.screen_size import ScreenSize
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import ThemeChoice
from panelcad.errors import PanelcadError, UnreadableQuantity
from panelcad.units import LengthUnit, parse_length

_STEPS = (("grid", "&Grid"), ("fine", "&Fine nudge"), ("coarse", "&Coarse nudge"))


class Preferences(FittedDialog):
    def __init__(self, settings: Settings, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Preferences")
        self.setMinimumWidth(480)
        self._settings = settings
        self.steps: dict[tuple[LengthUnit, str], QLineEdit] = {}
        self.screen_size = ScreenSize(
            settings.pixels_per_mm or parent.physicalDpiX() / LengthUnit.INCH.mm, settings.unit
        )
        self._tabs = tabs = QTabWidget()
        tabs.tabBar().setAccessibleName("Kinds of preferences")
        tabs.addTab(self._general(), "&General")
        tabs.addTab(self._lengths(), "&Steps")
        tabs.addTab(self.screen_size, "Sc&reen")
        self.problem = QLabel()
        self.problem.setProperty("role", "wrong")
        self.problem.setWordWrap(True)
        buttons = Answers(self, "&Keep")
        column = QVBoxLayout(self)
        column.addWidget(tabs)
        column.addWidget(self.problem)
        column.addWidget(buttons)
        explained(self, Dialog.PREFERENCES)
        self.screen_size.outgrown.connect(lambda: QTimer.singleShot(0, self, self._grow))

    def _grow(self) -> None:
        """As large as it asks for now, never smaller than it was."""
        for holder in (self.screen_size, self._tabs):
            holder.updateGeometry()
        self.resize(self._wanted().expandedTo(self.size()))
        self.fit()

    def _general(self) -> Form:
        form = Form()
        self.unit, self.theme = ChoiceBox(), ChoiceBox()
        for unit, words in ((LengthUnit.INCH, "inches"), (LengthUnit.MM, "millimetres")):
            self.unit.addItem(words, unit)
        self.unit.setCurrentIndex(self.unit.findData(self._settings.unit))
        for choice in ThemeChoice:
            self.theme.addItem(choice.value, choice)
        self.theme.setCurrentIndex(self.theme.findData(self._settings.theme))
        self.initials = QLineEdit(self._settings.initials)
        form.row("Unit of &new panels", self.unit)
        self.limits = LimitsField(self._settings.limits_file)
        form.row("&Limits of new panels", self.limits)
        form.row("C&olours", self.theme)
        form.row("Your &initials", self.initials)
        form.end()
        return form

    def _lengths(self) -> Form:
        form = Form()
        for unit, words in ((LengthUnit.INCH, "Panels in inches"), (LengthUnit.MM, "Panels in millimetres")):
            form.heading(words)
            for name, title in _STEPS:
                field = QLineEdit(self._settings.step_text(name, unit))
                self.steps[unit, name] = field
                form.row(title if unit is LengthUnit.INCH else title.replace("&", ""), field)
        form.end()
        return form

    def accept(self) -> None:
        """Nothing is kept while one of the figures or the file of limits cannot be read."""
        try:
            self._check()
        except PanelcadError as fault:
            self.problem.setText(str(fault))
            return
        for (unit, name), field in self.steps.items():
            self._settings.set_step(name, unit, field.text())
        self._settings.unit = LengthUnit(self.unit.currentData())
        self._settings.limits_file = self.limits.file
        self._settings.initials = self.initials.text().strip()
        self._settings.pixels_per_mm = self.screen_size.pixels_per_mm
        self._settings.theme = ThemeChoice(self.theme.currentData())
        super().accept()

    def _check(self) -> None:
        for (unit, _), field in self.steps.items():
            if parse_length(field.text(), unit) <= 0:
                raise UnreadableQuantity(field.text(), "a length larger than 0")
        self.screen_size.take_typed()
        if self.limits.file is not None and self.limits.file != self._settings.limits_file:
            from panelcad.checks.profile_file import read_profile  # noqa: PLC0415 - the rules load with the first check

            read_profile(self.limits.file)


def show_preferences(settings: Settings, parent: QWidget) -> None:
    Preferences(settings, parent).exec()
