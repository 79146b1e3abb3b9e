"""Another cutout in the place of the one that is selected."""

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.cutout_choice import CutoutChoice
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.swap import swap
from panelcad.errors import EditRefused
from panelcad.model.project import Project


def replace_in_place(bench: Workbench, parent: QWidget) -> None:
    part = bench.selection.current
    dialog = EditDialog(bench, f"Replace {bench.name_of(part)}", "Replace", parent, at=Dialog.REPLACE)
    choice = CutoutChoice("Replace with", bench.catalogue.cutouts.values())
    item = next((one for one in bench.document.option.items if one.id == part), None)
    choice.choose(item.cutout or "" if item is not None else "")
    dialog.form.row("&With", choice)
    dialog.form.words("It keeps its place, group and a name you gave it; metal already cut is enlarged.", "faint")
    choice.currentTextChanged.connect(lambda _: dialog.preview())
    document = bench.document

    def replaced() -> Project:
        cutout = choice.cutout
        if cutout is None:
            raise EditRefused(f"The library has no '{choice.currentText()}'; choose a cutout of the list.")
        return swap(document.project, document.option_id, part, cutout)

    dialog.ask(replaced)
