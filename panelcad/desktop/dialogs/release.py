"""Releasing an option: who and where to; then all papers are written, with progress, and the folder is shown."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QDialog, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.cutting_choices import CuttingChoices
from panelcad.desktop.dialogs.drawing_choices import DrawingChoices
from panelcad.desktop.dialogs.equipment_errors import name_equipment_errors
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.dialogs.folder_field import FolderField
from panelcad.desktop.dialogs.ticks import Ticks
from panelcad.desktop.fields import TextField
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.long_work import Stopped, done_beside
from panelcad.desktop.panes.form import Form
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.subject import PlateSection
from panelcad.errors import PanelcadError, ReleaseRefused, UnusableInput
from panelcad.model.part import chosen_plates, part_text, worked_plates
from panelcad.model.project import Option, Project
from panelcad.model.revision import release_lines
from panelcad.outputs.dxf_name import issue_name, kind_suffix
from panelcad.outputs.release import Released, draft, release
from panelcad.outputs.release_papers import ReleaseOptions
from panelcad.outputs.section_choices import section_word

_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_RELEASING: Final = ("Releasing", "Checking the option")


class ReleaseQuestion(FittedDialog):
    """Who releases which plates, where the papers go, and what must be true before metal is cut."""

    def __init__(self, parent: QWidget, project: Project, option: Option, folder: Path, initials: str) -> None:
        super().__init__(parent)
        self.setWindowTitle("Release to the machinist")
        self.setMinimumWidth(600)
        self._project, self._option = project, option
        self.by = TextField("Released by")
        self.by.setText(initials)
        self.folder = FolderField("Folder", folder)
        self.plates = Ticks("Plates", {plate.id: plate.name for plate in worked_plates(option)})
        form = Form()
        form.heading(f"Option '{option.name}'")
        name_equipment_errors(form, project, option)
        form.row("Released &by", self.by)
        form.row("&Folder", self.folder)
        if len(self.plates.boxes) > 1:
            form.row("&Plates", self.plates)
        self.log = form.words("\n".join(release_lines(project, option)), "faint")
        self.log.setVisible(bool(self.log.text()))
        self.drawing = DrawingChoices(form)
        self.cutting = CuttingChoices(form, project)
        self.named = form.words("", "faint")
        self.problem = form.words("", "wrong")
        form.words(
            "Cutting files, drawing, paper template, inspection sheet, list of changes and manifest are written to a "
            "folder of their own, all of one revision. The option is locked then; a later change opens a new revision."
        )
        form.words(
            "This approves nothing. Do not cut before the data are approved and a paper or scrap template has been "
            "tried in the aircraft.",
            "heading",
        )
        buttons = Answers(self, "&Release")
        self.verb = buttons.verb
        column = QVBoxLayout(self)
        column.addWidget(self.scrolled(form), 1)
        column.addWidget(buttons)
        explained(self, Dialog.RELEASE)
        self.plates.changed.connect(self._look)
        self.cutting.changed.connect(self._look)
        self.drawing.sections.textChanged.connect(self._look)
        self._look()

    def showEvent(self, event: QShowEvent) -> None:
        """What cannot be undone is no button's by default; Qt would choose one."""
        super().showEvent(event)
        for button in self.findChildren(QPushButton):
            button.setAutoDefault(False)
            button.setDefault(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter releases from the button alone."""
        if event.key() in _ENTERS and not self.verb.hasFocus():
            event.accept()
        else:
            super().keyPressEvent(event)

    def release_options(self) -> ReleaseOptions:
        """What is chosen. Raises `PanelcadError` for a choice with which nothing can be written."""
        chosen = self.plates.ticked
        if self.plates.boxes and not chosen:
            raise UnusableInput("", "", "no plate is chosen", "at least one")
        options = self.cutting.options
        if not options.written:
            raise UnusableInput("", "", "nothing is left in the cutting files", "cuts, drills or something else")
        plates = () if len(chosen) == len(self.plates.boxes) else chosen
        drawing = self.drawing.options(self._project, self._option, plates)
        return ReleaseOptions(by=self.by.text().strip(), plates=plates, dxf=options, drawing=drawing)

    def _look(self) -> None:
        """Say what the first file will be called, or why nothing can be written."""
        try:
            options = self.release_options()
        except PanelcadError as refusal:
            self.problem.setText(str(refusal))
        else:
            self.problem.clear()
            self.named.setText(self._names(options))
        self.problem.setVisible(bool(self.problem.text()))
        self.named.setVisible(not self.problem.text())
        self.verb.setEnabled(not self.problem.text())

    def _names(self, options: ReleaseOptions) -> str:
        """What the first file will be called, and of which plates the papers are where not of all."""
        plates = chosen_plates(self._option, options.plates)
        kind = kind_suffix(self._project, options.dxf)
        part = part_text(self._option, plates)
        start = issue_name(self._project, self._option, "(revision)")
        named = [f"Files such as {start}-{plate.id}{kind}.dxf" for plate in plates[:1]]
        return "; ".join([*named, *([f"part of the option: {part}"] if part else [])])


def release_option(parts: Parts) -> None:
    """Ask, then write; a refusal says why and offers a draft."""
    bench = parts.bench
    project, option = bench.document.project, bench.document.option
    question = ReleaseQuestion(parts.window, project, option, _suggested_folder(parts), bench.settings.initials)
    question.drawing.sections.setText(shown_section(bench))
    if question.exec() != QDialog.DialogCode.Accepted:
        return
    options, folder = question.release_options(), question.folder.path
    bench.settings.initials = options.by
    try:
        _release_or_draft(parts, folder, options)
    except Stopped:
        bench.told.emit("Stopped: nothing was released or written")
    except PanelcadError as fault:
        parts.asking.tell("Nothing was released", str(fault))


def _release_or_draft(parts: Parts, folder: Path, options: ReleaseOptions) -> None:
    try:
        _release(parts, folder, options)
    except ReleaseRefused as refusal:
        _offer_draft(parts, folder, options, str(refusal))


def shown_section(bench: Workbench) -> str:
    """The words that ask for the section that people see in the window; none of a plate that is not drawn.

    None either where nobody chose its line.
    """
    drawn = {plate.id for plate in worked_plates(bench.document.option)}
    if not bench.section.is_chosen or bench.stage.plate_id not in drawn:
        return ""
    return section_word(PlateSection(bench.stage.plate_id, bench.section.line), bench.unit)


def _release(parts: Parts, folder: Path, options: ReleaseOptions) -> None:
    document = parts.bench.document
    today = datetime.now(tz=UTC).astimezone().date().isoformat()
    project, option_id = document.project, document.option_id
    released = done_beside(
        parts.window,
        *_RELEASING,
        lambda tell: release(project, option_id, folder, today, replace(options, tell=tell)),
    )
    if released.project is not document.project:
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
    project, option_id = document.project, document.option_id
    files = done_beside(
        parts.window, *_RELEASING, lambda tell: draft(project, option_id, folder, replace(options, tell=tell))
    )
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
