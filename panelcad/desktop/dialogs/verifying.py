"""Holding what comes back against the project, and the outcome to read, copy and keep beside it."""

from pathlib import Path
from typing import Final

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.dialogs.path_field import PathField
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.long_work import Stopped, done_beside
from panelcad.desktop.panes.form import Form
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError
from panelcad.outputs.verify_held import CODE, Outcome, hold

_PAPERS: Final = "Cutting files and papers (*.dxf *.DXF *.pdf *.PDF *.csv *.txt);;All files (*)"


class PaperField(PathField):
    """A file, a folder, or the text of a paper's code, typed or looked for."""

    def __init__(self, folder: Path) -> None:
        super().__init__("Paper", "", "&File…")
        self._folder = folder
        self.text.setPlaceholderText("a file, a release's folder, or the text of a code")
        self.text.setClearButtonEnabled(True)
        look = QPushButton("F&older…")
        look.setAutoDefault(False)
        look.clicked.connect(self._look_for_folder)
        self.row.addWidget(look)

    @property
    def what(self) -> str:
        """The text of a code as it is, a path made whole; '' where nothing is named."""
        text = self.text.text().strip()
        return text if not text or text.startswith(CODE) else str(Path(text).expanduser())

    def looked_for(self) -> str:
        return QFileDialog.getOpenFileName(self, "Verify", str(self._folder), _PAPERS)[0]

    def _look_for_folder(self) -> None:
        chosen = QFileDialog.getExistingDirectory(self, "Verify a release's folder", str(self._folder))
        if chosen:
            self.text.setText(chosen)


class VerifyQuestion(FittedDialog):
    """What shall be held against the project."""

    def __init__(self, parent: QWidget, folder: Path) -> None:
        super().__init__(parent)
        self.setWindowTitle("Verify")
        self.setMinimumWidth(620)
        self.paper = PaperField(folder)
        form = Form()
        form.heading("Hold against this project")
        form.row("&Paper", self.paper)
        form.words(
            "A cutting file (DXF) is held hole by hole, from whomever it comes. Of any other paper, or of the text of "
            f"its scanned code ({CODE}…), the revision is told; of a release's folder, whether its files are as they "
            "were released.",
            "faint",
        )
        buttons = Answers(self, "&Verify")
        self.verb = buttons.verb
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.VERIFY)
        self.paper.text.textChanged.connect(self._look)
        self._look()

    def _look(self) -> None:
        self.verb.setEnabled(bool(self.paper.what))


class Verification(FittedDialog):
    """The verdict, and everything that was found below it."""

    def __init__(self, parent: QWidget, outcome: Outcome) -> None:
        super().__init__(parent)
        self.setWindowTitle("Cutting file verified" if outcome.report else "Verified")
        self.resize(720, 420 if outcome.report else 260)
        form = Form()
        form.heading(outcome.verdict)
        self.words = QPlainTextEdit(outcome.text)
        self.words.setReadOnly(True)
        self.words.setAccessibleName("Differences")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.button(QDialogButtonBox.StandardButton.Close).setDefault(True)
        copy = buttons.addButton("&Copy the text", QDialogButtonBox.ButtonRole.ActionRole)
        copy.setAutoDefault(False)
        copy.clicked.connect(lambda: QGuiApplication.clipboard().setText(self.words.toPlainText()))
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(self.words, 1)
        column.addWidget(buttons)
        explained(self, Dialog.VERIFY)


def verify_paper(parts: Parts) -> None:
    """Ask for a file, a folder or a code, and say how it differs from the project."""
    question = VerifyQuestion(parts.window, parts.desk.folder())
    if question.exec() == QDialog.DialogCode.Accepted:
        show_verification(parts, question.paper.what)


def show_verification(parts: Parts, what: str) -> None:
    """Hold the file or folder of this path, or the text of a code, and show what came of it."""
    project, name = parts.bench.document.project, Path(what).name
    try:
        outcome = done_beside(
            parts.window,
            "Verifying",
            f"Holding {name} against the project",
            lambda _: hold(project, what),
            only_reads=True,
        )
    except Stopped:
        parts.bench.told.emit(f"Stopped: {name} was not verified")
        return
    except PanelcadError as fault:
        parts.asking.tell("Not verified", str(fault))
        return
    Verification(parts.window, outcome).exec()
