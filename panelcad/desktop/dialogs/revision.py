"""Opening a new revision of a released option: why it changes; then it may be edited again."""

from datetime import UTC, datetime

from PySide6.QtWidgets import QDialog, QPlainTextEdit, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.fields import TextField
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.window_parts import Parts
from panelcad.editing.revision import open_revision
from panelcad.errors import PanelcadError
from panelcad.model.release import next_revision


class RevisionQuestion(FittedDialog):
    """Why the option changes after its release, and who says so."""

    def __init__(self, parent: QWidget, option: str, locked: str, initials: str) -> None:
        super().__init__(parent)
        self.setWindowTitle("Open a new revision")
        self.setMinimumWidth(480)
        self.reason = QPlainTextEdit()
        self.reason.setAccessibleName("Reason")
        self.reason.setMaximumHeight(90)
        self.reason.setTabChangesFocus(True)
        self.by = TextField("Opened by")
        self.by.setText(initials)
        form = Form()
        form.heading(f"Option '{option}', revision {next_revision(locked)}")
        form.words(f"Revision {locked} is released, so the option is locked. Its papers stay as they are.")
        form.row("&Reason", self.reason)
        form.row("Opened &by", self.by)
        buttons = Answers(self, "&Open the revision")
        self.verb = buttons.verb
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.REVISION)
        self.reason.textChanged.connect(self._look)
        self._look()

    def _look(self) -> None:
        self.verb.setEnabled(bool(self.reason.toPlainText().strip()))


def revise_option(parts: Parts) -> None:
    """Ask why, then unlock the option; as part of the release log it is not undone."""
    bench, document = parts.bench, parts.bench.document
    locked = document.project.locked_revision(document.option_id)
    question = RevisionQuestion(parts.window, document.option.name, locked, bench.settings.initials)
    if question.exec() != QDialog.DialogCode.Accepted:
        return
    bench.settings.initials = by = question.by.text().strip()
    today = datetime.now(tz=UTC).astimezone().date().isoformat()
    try:
        opened = open_revision(document.project, document.option_id, question.reason.toPlainText(), today, by)
    except PanelcadError as refusal:
        parts.asking.tell("No revision was opened", str(refusal))
        return
    document.record_release(opened)
    bench.told.emit(f"Revision {opened.opened_revisions[-1].revision} is open; save the project to keep it.")
