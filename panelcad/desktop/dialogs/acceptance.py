"""Accepting a finding: a reason and initials, which the papers show."""

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Final

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from panelcad.checks.acceptance import accept
from panelcad.checks.wording import sentence
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.acceptances import add_acceptance
from panelcad.model.finding import Finding
from panelcad.model.project import Project

_SHOWN: Final = 3
"""How many findings are told in full when several are accepted."""


class AcceptanceQuestion(FittedDialog):
    """`reason` is the last one given, offered to be typed over."""

    def __init__(self, words: str, reason: str, initials: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Accept a finding")
        self.setMinimumWidth(460)
        self.reason = QPlainTextEdit(reason)
        self.reason.selectAll()
        self.reason.setAccessibleName("Reason")
        self.reason.setMaximumHeight(90)
        self.reason.setTabChangesFocus(True)
        self.initials = QLineEdit(initials)
        self.initials.setMaxLength(10)
        self.initials.setAccessibleName("Initials")
        form = Form()
        form.words(words)
        form.row("&Reason", self.reason)
        form.row("&Initials", self.initials)
        form.words(
            "It stays visible on the papers. It lapses when what it names changes, or when the value gets worse.",
            "faint",
        )
        buttons = QDialogButtonBox()
        self.verb = buttons.addButton("&Accept", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.ACCEPTANCE)
        self.reason.textChanged.connect(self._look)
        self.initials.textChanged.connect(self._look)
        self._look()

    def _look(self) -> None:
        self.verb.setEnabled(bool(self.reason.toPlainText().strip() and self.initials.text().strip()))


def accept_findings(bench: Workbench, findings: Sequence[Finding], parent: QWidget) -> bool:
    """Ask for one reason for them all; whether they are accepted now, as one undo step."""
    document = bench.document
    shown = [sentence(finding, document.project, document.option) for finding in findings[:_SHOWN]]
    more = [f"And {len(findings) - _SHOWN} more."] if len(findings) > _SHOWN else []
    question = AcceptanceQuestion("\n".join(shown + more), bench.settings.reason, bench.settings.initials, parent)
    if question.exec() != QDialog.DialogCode.Accepted:
        return False
    initials = question.initials.text().strip()
    bench.settings.initials = initials
    today = datetime.now(tz=UTC).astimezone().date().isoformat()
    reason = question.reason.toPlainText().strip()
    bench.settings.reason = reason
    laid = bench.stage.layout()
    words = [accept(finding, laid, reason=reason, initials=initials, on=today) for finding in findings]

    def accepted(project: Project, option: str) -> Project:
        for word in words:
            project = add_acceptance(project, option, word)
        return project

    return bench.edit("Accept a finding" if len(words) == 1 else f"Accept {len(words)} findings", accepted)
