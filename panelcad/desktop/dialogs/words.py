"""Dialogs that ask for words: notes on the drawing, and lettering that is cut into or printed on the metal."""

from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.placards import letter_chosen
from panelcad.desktop.dialogs.rows import length_row, start, text_row
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.marks import add_note
from panelcad.editing.placards import placard_at
from panelcad.editing.plates import add_engraving
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.markup import DrawingNote, Hook
from panelcad.model.plate import Engraving
from panelcad.units import LengthUnit, parse_angle

_NOTE_HEIGHT: Final = {LengthUnit.INCH: 0.156 * 25.4, LengthUnit.MM: 4.0}
LETTER_HEIGHT: Final = {LengthUnit.INCH: 0.125 * 25.4, LengthUnit.MM: 3.0}
"""Heights of a capital in mm to begin with: shop settings."""


def note(bench: Workbench, parent: QWidget, at: Point, to: Hook | None = None) -> None:
    """A note on the drawing, with a leader where it was dragged from something."""
    project, option_id, plate_id = start(bench)
    dialog = EditDialog(bench, "A note on the drawing", "Put", parent, at=Dialog.NOTE)
    text = text_row(dialog, "&Words", "Note")
    text.selectAll()
    height = length_row(dialog, "&Height of a capital", _NOTE_HEIGHT[bench.unit])

    def change() -> Made:
        made = DrawingNote(
            id="note-1", plate=plate_id, text=_said(text.text()), x=at.x, y=at.y, height=_height(height.mm), to=to
        )
        project_after, name = add_note(project, option_id, made)
        return Made(project_after, (name,))

    dialog.ask(change)


def lettering(bench: Workbench, parent: QWidget, at: Point, to: Hook | None = None) -> None:  # noqa: ARG001 - it has no leader
    """A line of lettering in the metal, centred on its place; on a placard the placard's own words."""
    project, option_id, plate_id = start(bench)
    placard = placard_at(bench.stage.layout().plate(plate_id), at)
    if placard is not None:
        letter_chosen(bench, parent, (placard.id,))
        return
    dialog = EditDialog(bench, "Lettering in the metal", "Put", parent, at=Dialog.LETTERING)
    text = text_row(dialog, "&Words", "PANEL LIGHTS")
    text.selectAll()
    height = length_row(dialog, "&Height of a capital", LETTER_HEIGHT[bench.unit])
    x, y = length_row(dialog, "&x", at.x), length_row(dialog, "&y", at.y)
    turned = text_row(dialog, "&Turned, °", "0")

    def change() -> Made:
        words, rotation = _said(text.text()), parse_angle(turned.text())
        made = Engraving(id="lettering-1", text=words, x=x.mm, y=y.mm, height=_height(height.mm), rotation=rotation)
        return add_engraving(project, option_id, plate_id, made)

    dialog.ask(change)


def _said(text: str) -> str:
    words = text.strip()
    if not words:
        raise EditRefused("There are no words yet.")
    return words


def _height(mm: float) -> float:
    if mm <= 0:
        raise EditRefused("A height larger than 0 is expected.")
    return mm
