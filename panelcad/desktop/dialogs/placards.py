"""The words of placards, one text field each."""

from collections.abc import Collection
from typing import Final

from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import start, text_row
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.placards import letter_placards, placards, words_of
from panelcad.model.project import Item

_FITTED: Final = "The words stand on the placard, as large as it has room for. The panel under it is not engraved."
_BEGINS: Final = "PLACARD"


def letter_chosen(bench: Workbench, parent: QWidget, ids: Collection[str]) -> None:
    """The placards among these things; nothing where there are none."""
    project, option_id, _ = start(bench)
    chosen = placards(project, project.option(option_id), ids)
    if not chosen:
        return
    dialog = EditDialog(bench, "Words of a placard", "Letter", parent, at=Dialog.PLACARDS)
    fields = {item.id: _words_row(dialog, item, of_several=len(chosen) > 1) for item in chosen}
    fields[chosen[0].id].selectAll()
    dialog.form.words(_FITTED, "faint")

    def change() -> Made:
        return letter_placards(project, option_id, {one: field.text() for one, field in fields.items()})

    dialog.ask(change)


def _words_row(dialog: EditDialog, placard: Item, *, of_several: bool) -> QLineEdit:
    text = words_of(dialog.bench.document.project, placard)
    if not of_several:
        return text_row(dialog, "&Words", text or _BEGINS)
    field = QLineEdit(text)
    field.textEdited.connect(lambda _: dialog.preview())
    dialog.form.name_row(placard.name, field)
    return field
