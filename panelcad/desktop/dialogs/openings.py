"""Openings that belong to the sheet itself, such as the one for the control column."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QCheckBox, QInputDialog, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import length_row, start, text_row
from panelcad.desktop.dialogs.shape_entry import ShapeEntry
from panelcad.desktop.drawn import Drawn
from panelcad.desktop.help.ask import explained_by_key
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.openings import openings
from panelcad.editing.plates import add_inner_opening, remove_inner_opening, revise_inner_opening
from panelcad.model.cutout import Opening
from panelcad.model.project import Project
from panelcad.model.shape import Circle
from panelcad.model.source import Source, Standing
from panelcad.units import format_number

_USER = Source(standing=Standing.USER, text="measured on the aircraft")


def inner_opening(bench: Workbench, parent: QWidget, drawn: Drawn) -> None:
    """An opening more in the sheet."""
    project, option_id, plate_id = start(bench)
    shape = drawn.shape or Circle(diameter=50.8)
    dialog = EditDialog(bench, "An opening of the sheet", "Cut", parent, at=Dialog.OPENING)
    fields = _fields(dialog, Opening(shape=shape, x=drawn.at.x, y=drawn.at.y, purpose="opening", source=_USER))

    def cut() -> Made:
        made = add_inner_opening(project, option_id, plate_id, Opening(**fields(), source=_USER))
        mine = [part for part, one in openings(made.option(option_id)).items() if one.plate_id == plate_id]
        return Made(made, (mine[-1],))

    dialog.ask(cut)


def change_opening(bench: Workbench, parent: QWidget, pointed: int | None = None) -> None:
    """One of the sheet's openings, the one that was pointed at, in numbers, or filled in again."""
    project, option_id, plate_id = start(bench)
    index = _which(bench, parent) if pointed is None else pointed
    if index is None:
        return
    dialog = EditDialog(bench, "An opening of the sheet", "Take", parent, at=Dialog.OPENING)
    fields = _fields(dialog, project.option(option_id).plate(plate_id).inner_openings[index])
    gone = QCheckBox("&Without this opening")
    gone.toggled.connect(dialog.preview)
    dialog.form.add(gone)

    def change() -> Project:
        if gone.isChecked():
            return remove_inner_opening(project, option_id, plate_id, index)
        return revise_inner_opening(project, option_id, plate_id, index, **fields())

    dialog.ask(change)


def _which(bench: Workbench, parent: QWidget) -> int | None:
    """The number of the opening that is meant; None where there is none or the person thought better of it."""
    _, _, plate_id = start(bench)
    there = bench.document.option.plate(plate_id).inner_openings
    if len(there) < 2:
        return 0 if there else None
    names = [
        f"{i}: {o.purpose} at {format_number(o.x, bench.unit)}, {format_number(o.y, bench.unit)}"
        for i, o in enumerate(there, 1)
    ]
    question = QInputDialog(parent)
    question.setWindowTitle("Openings of the sheet")
    question.setLabelText("Which opening?")
    question.setComboBoxItems(names)
    explained_by_key(question, Dialog.OPENING)
    return names.index(question.textValue()) if question.exec() else None


def _fields(dialog: EditDialog, opening: Opening) -> Callable[[], dict[str, Any]]:
    purpose = text_row(dialog, "&Purpose", opening.purpose)
    shape = ShapeEntry(dialog.form, dialog.bench.unit, opening.shape)
    shape.edited.connect(dialog.preview)
    x, y = length_row(dialog, "&x", opening.x), length_row(dialog, "&y", opening.y)
    return lambda: {"purpose": purpose.text().strip(), "shape": shape.shape(), "x": x.mm, "y": y.mm}
