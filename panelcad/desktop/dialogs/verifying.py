"""Holding a cutting file against the project, and the outcome to read, copy and keep beside it."""

from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialogButtonBox, QFileDialog, QPlainTextEdit, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError
from panelcad.outputs.verify import VerifyReport, verify
from panelcad.outputs.verify_words import verdict, verify_text


class Verification(FittedDialog):
    """The verdict, and every difference below it."""

    def __init__(self, parent: QWidget, report: VerifyReport) -> None:
        super().__init__(parent)
        self.setWindowTitle("Cutting file verified")
        self.resize(720, 420)
        form = Form()
        form.heading(verdict(report))
        self.words = QPlainTextEdit(verify_text(report))
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


def verify_file(parts: Parts) -> None:
    """Ask for a DXF and say how it differs from the project."""
    start = str(parts.desk.folder())
    name, _ = QFileDialog.getOpenFileName(parts.window, "Verify a cutting file", start, "Cutting files (*.dxf *.DXF)")
    if name:
        show_verification(parts, Path(name))


def show_verification(parts: Parts, file: Path) -> None:
    try:
        report = verify(parts.bench.document.project, file)
    except PanelcadError as fault:
        parts.asking.tell("Not verified", str(fault))
        return
    Verification(parts.window, report).exec()
