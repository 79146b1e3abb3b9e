"""Accepting a finding: a reason and initials, which the papers show."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import QDialog, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from panelcad.checks.acceptance import accept
from panelcad.checks.wording import sentence
from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.acceptances import add_acceptance
from panelcad.model.finding import Acceptance, Finding
from panelcad.model.project import Project

if TYPE_CHECKING:
    from panelcad.planning.judge import Judgement

_SHOWN: Final = 3
"""How many findings are told in full when several are accepted."""


@dataclass(frozen=True)
class Said:
    """A person's word, and the day on which it was given."""

    reason: str
    initials: str
    on: str


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
        buttons = Answers(self, "&Accept")
        self.verb = buttons.verb
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.ACCEPTANCE)
        self.reason.textChanged.connect(self._look)
        self.initials.textChanged.connect(self._look)
        self._look()

    def said(self) -> Said:
        today = datetime.now(tz=UTC).astimezone().date().isoformat()
        return Said(self.reason.toPlainText().strip(), self.initials.text().strip(), today)

    def _look(self) -> None:
        self.verb.setEnabled(bool(self.reason.toPlainText().strip() and self.initials.text().strip()))


def accept_findings(bench: Workbench, findings: Sequence[Finding], parent: QWidget) -> bool:
    """Ask for one reason for them all; whether they are accepted now, as one undo step."""
    document, laid = bench.document, bench.stage.layout()

    def told(finding: Finding) -> str:
        return sentence(finding, document.project, document.option)

    def word(finding: Finding, said: Said) -> Acceptance:
        return accept(finding, laid, reason=said.reason, initials=said.initials, on=said.on)

    return _accept_all(bench, document.option_id, findings, parent, told, word)


def accept_of_planning(bench: Workbench, judgement: "Judgement", finding: Finding, parent: QWidget) -> bool:
    """Ask for a reason for a finding about the equipment of an option; whether it is accepted now."""
    from panelcad.planning import acceptance as planning  # noqa: PLC0415 - loads where options are judged
    from panelcad.planning.wording import sentence as planning_sentence  # noqa: PLC0415 - as above

    def told(each: Finding) -> str:
        return planning_sentence(each, judgement.equipment.project, judgement.option)

    def word(each: Finding, said: Said) -> Acceptance:
        return planning.accept(each, judgement.equipment, reason=said.reason, initials=said.initials, on=said.on)

    return _accept_all(bench, judgement.option.id, (finding,), parent, told, word)


def _accept_all(  # noqa: PLR0913, PLR0917 - whose findings, and what is said of them
    bench: Workbench,
    option_id: str,
    findings: Sequence[Finding],
    parent: QWidget,
    told: Callable[[Finding], str],
    word: Callable[[Finding, Said], Acceptance],
) -> bool:
    shown = [told(finding) for finding in findings[:_SHOWN]]
    more = [f"And {len(findings) - _SHOWN} more."] if len(findings) > _SHOWN else []
    question = AcceptanceQuestion("\n".join(shown + more), bench.settings.reason, bench.settings.initials, parent)
    if question.exec() != QDialog.DialogCode.Accepted:
        return False
    said = question.said()
    bench.settings.initials, bench.settings.reason = said.initials, said.reason
    words = [word(finding, said) for finding in findings]

    def accepted(project: Project, _: str) -> Project:
        for each in words:
            project = add_acceptance(project, option_id, each)
        return project

    return bench.edit("Accept a finding" if len(words) == 1 else f"Accept {len(words)} findings", accepted)
