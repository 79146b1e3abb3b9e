"""What an option is called, and what it is in one line."""

from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.options import NewOption, copy_option, option_from_as_found, rename_option
from panelcad.errors import EditRefused
from panelcad.model.project import Project


def rename(bench: Workbench, parent: QWidget) -> None:
    """The option on the canvas under another name."""
    document = bench.document
    _ask(EditDialog(bench, "Rename option", "Rename", parent, at=Dialog.OPTION), document.project, document.option_id)


def new_from_this(bench: Workbench, parent: QWidget) -> None:
    """A new option like the one on the canvas, which is then shown."""
    _begin(bench, parent, copy_option(bench.document.project, bench.document.option_id))


def new_from_as_found(bench: Workbench, parent: QWidget) -> None:
    """A new option that starts as the panel was found, which is then shown."""
    _begin(bench, parent, option_from_as_found(bench.document.project))


def _begin(bench: Workbench, parent: QWidget, made: NewOption) -> None:
    dialog = EditDialog(bench, "New option", "Begin", parent, at=Dialog.OPTION)
    if _ask(dialog, made.project, made.option_id):
        bench.document.look_at(made.option_id)
        bench.told.emit(f"'{bench.document.option.name}' is on the canvas now")


def _ask(dialog: EditDialog, project: Project, option_id: str) -> bool:
    """Whether this option of the project was given the name that was typed."""
    option = project.option(option_id)
    name, summary = QLineEdit(option.name), QLineEdit(option.summary)
    dialog.form.row("&Name", name)
    dialog.form.row("&In one line", summary)
    for field in (name, summary):
        field.textEdited.connect(dialog.preview)
    name.selectAll()
    summary.setCursorPosition(0)

    def named() -> Project:
        if not name.text().strip():
            raise EditRefused("An option needs a name.")
        return rename_option(project, option_id, name.text().strip(), summary.text().strip())

    return dialog.ask(named)
