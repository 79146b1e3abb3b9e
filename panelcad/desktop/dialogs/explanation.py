"""Why a finding is one: what the rule measures, what it found, its limits, and where they come from."""

from collections.abc import Iterator
from typing import Final

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QPushButton, QVBoxLayout, QWidget

from panelcad.checks.registry import Rule, all_rules
from panelcad.checks.wording import words
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.pages import rule_link
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.help.window import open_help
from panelcad.desktop.panes.form import Form
from panelcad.desktop.remedies import asked_by, where_asked
from panelcad.desktop.workbench import Workbench
from panelcad.model.finding import Finding
from panelcad.model.profile import Profile, is_length, limit_source
from panelcad.model.project import Project
from panelcad.units import format_length

_WIDTH: Final = 480


def explain(bench: Workbench, finding: Finding, parent: QWidget) -> None:
    """Show it until the person has read it."""
    document = bench.document
    rule = next((one for one in all_rules() if one.id == finding.rule), None)
    said = words(finding, document.project, document.option)
    dialog = FittedDialog(parent)
    dialog.setWindowTitle("Why?")
    dialog.setMinimumWidth(_WIDTH)
    form = Form()
    form.heading(rule.title if rule is not None else finding.problem)
    for line in (f"{said.problem}: {said.who} {said.where}.", _numbers(said.measured, said.required), said.cure):
        if line:
            form.words(line)
    if rule is not None:
        form.line()
        form.words(f"The rule measures: {rule.measures}.")
        for limit in _limits(rule, document.project):
            form.words(limit, "faint")
    form.words(f"Source: {finding.source}", "faint")
    asks = asked_by(finding.rule)
    if asks is not None:
        form.words(where_asked(asks))
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
    buttons.rejected.connect(dialog.reject)
    if rule is not None:
        form.add(_rule_link(rule, dialog))
    column = QVBoxLayout(dialog)
    column.addWidget(form)
    column.addWidget(buttons)
    explained(dialog, Dialog.WHY)
    dialog.resize(_WIDTH, column.totalHeightForWidth(_WIDTH))
    dialog.exec()


def _rule_link(rule: Rule, dialog: QDialog) -> QPushButton:
    """To the rule's section of the page of rules."""
    button = QPushButton(f"&The rule '{rule.id}' in the page of rules")
    button.setProperty("quiet", True)
    button.setAutoDefault(False)
    button.clicked.connect(lambda: open_help(rule_link(rule.id), dialog))
    return button


def _numbers(measured: str, required: str) -> str:
    parts = [f"measured {measured}" if measured else "", f"{required} required" if required else ""]
    text = ", ".join(part for part in parts if part)
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def _limits(rule: Rule, project: Project) -> Iterator[str]:
    for name in rule.limits:
        title = Profile.model_fields[name].title
        yield f"{title}: {_value(name, getattr(project.profile, name), project)} – {limit_source(name)}"


def _value(name: str, value: object, project: Project) -> str:
    """Lengths in the project's unit; multiples, counts and shares as they are."""
    if isinstance(value, float) and is_length(name):
        return format_length(value, project.unit)
    return "not entered" if value is None else f"{value}"
