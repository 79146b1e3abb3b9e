"""Releasing an option: who and where to; then all papers are written, with progress, and the folder is shown."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QProgressDialog, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.cutting_choices import CuttingChoices
from panelcad.desktop.dialogs.drawing_choices import DrawingChoices
from panelcad.desktop.dialogs.folder_field import FolderField
from panelcad.desktop.fields import TextField
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.subject import PlateSection
from panelcad.errors import PanelcadError, ReleaseRefused
from panelcad.outputs.release import Released, draft, release
from panelcad.outputs.release_papers import ReleaseOptions
from panelcad.outputs.section_choices import section_word
from panelcad.units import LengthUnit


class ReleaseQuestion(QDialog):
    """Who releases, where the papers go, and what must be true before metal is cut."""

    def __init__(self, parent: QWidget, option: str, folder: Path, initials: str, unit: LengthUnit) -> None:
        super().__init__(parent)
        self.setWindowTitle("Release to the machinist")
        self.setMinimumWidth(560)
        self.by = TextField("Released by")
        self.by.setText(initials)
        self.folder = FolderField("Folder", folder)
        form = Form()
        form.heading(f"Option '{option}'")
        form.row("Released &by", self.by)
        form.row("&Folder", self.folder)
        self.drawing = DrawingChoices(form)
        self.cutting = CuttingChoices(form, unit)
        form.words(
            "Cutting files, drawing, list of changes and manifest are written to a folder of their own, all of one "
            "revision. The option is locked then; a later change opens a new revision."
        )
        form.words(
            "This approves nothing. Do not cut before the data are approved and a paper or scrap template has been "
            "tried in the aircraft.",
            "heading",
        )
        buttons = QDialogButtonBox()
        buttons.addButton("&Release", QDialogButtonBox.ButtonRole.AcceptRole).setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(form)
        column.addWidget(buttons)
        explained(self, Dialog.RELEASE)


def release_option(parts: Parts) -> None:
    """Ask, then write; a refusal says why and offers a draft."""
    bench = parts.bench
    document, initials, folder = bench.document, bench.settings.initials, _suggested_folder(parts)
    question = ReleaseQuestion(parts.window, document.option.name, folder, initials, bench.unit)
    question.drawing.sections.setText(shown_section(bench))
    if question.exec() != QDialog.DialogCode.Accepted:
        return
    by, folder = question.by.text().strip(), question.folder.path
    bench.settings.initials = by
    try:
        drawing = question.drawing.options(document.project, document.option)
        options = ReleaseOptions(by=by, dxf=question.cutting.options, drawing=drawing)
        _release(parts, folder, options)
    except ReleaseRefused as refusal:
        _offer_draft(parts, folder, options, str(refusal))
    except PanelcadError as fault:
        parts.asking.tell("Nothing was released", str(fault))


def shown_section(bench: Workbench) -> str:
    """The words that ask for the section that people see in the window; none where nobody chose its line."""
    if not bench.section.is_chosen:
        return ""
    return section_word(PlateSection(bench.stage.plate_id, bench.section.line), bench.unit)


def _release(parts: Parts, folder: Path, options: ReleaseOptions) -> None:
    document = parts.bench.document
    today = datetime.now(tz=UTC).astimezone().date().isoformat()
    with Progress(parts.window) as progress:
        told = replace(options, tell=progress.tell)
        released = release(document.project, document.option_id, folder, today, told)
    if not released.was_reissued:
        document.record_release(released.project)
        parts.desk.save()
    _tell(parts, released)


def _offer_draft(parts: Parts, folder: Path, options: ReleaseOptions, refusal: str) -> None:
    """A draft is a drawing only, marked as not for cutting."""
    write, leave = "Write a &draft drawing", "&Close"
    detail = "A draft is a PDF marked 'not for cutting'; no cutting file is written."
    if parts.asking.choice("Not released", refusal, detail, write, leave) != write:
        return
    document = parts.bench.document
    with Progress(parts.window) as progress:
        files = draft(document.project, document.option_id, folder, replace(options, tell=progress.tell))
    parts.bench.told.emit(f"Wrote {files[0]}")
    _show_folder(folder)


def _tell(parts: Parts, released: Released) -> None:
    names = ", ".join(file.name for file in released.files)
    again = " again" if released.was_reissued else ""
    show, leave = "&Show the folder", "&Close"
    words = f"Revision {released.stamp.revision_text} is released{again}."
    if parts.asking.choice("Released", words, f"{released.folder}\n\n{names}", show, leave) == show:
        _show_folder(released.folder)


def _show_folder(folder: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder)))


def _suggested_folder(parts: Parts) -> Path:
    return parts.desk.folder() / "released"


class Progress:
    """Says what is being written."""

    def __init__(self, parent: QWidget, title: str = "Releasing", first: str = "Checking the option") -> None:
        self._first = first
        self._dialog = QProgressDialog(first, "", 0, 0, parent)
        self._dialog.setWindowTitle(title)
        self._dialog.setCancelButton(None)
        self._dialog.setMinimumDuration(400)

    def __enter__(self) -> "Progress":
        self.tell(self._first)
        return self

    def tell(self, words: str) -> None:
        self._dialog.setLabelText(words)
        self._dialog.setValue(0)
        QApplication.processEvents()

    def __exit__(self, *error: object) -> None:
        self._dialog.close()
        self._dialog.deleteLater()
