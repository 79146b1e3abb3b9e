"""Labels for the controls that are selected, one text field each."""

import math
from typing import Final

from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.checks.pilot_reading import height_preferred
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import choice_row, length_row, start, text_row
from panelcad.desktop.dialogs.words import LETTER_HEIGHT
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.label_row import LABEL_GAP, Side, controls, crowded, label_row, label_spot, short_name
from panelcad.editing.made import Made
from panelcad.model.project import Item
from panelcad.units import LengthUnit, format_length

_NAMED_AT_MOST: Final = 3
_AROUND_TEXT_PX: Final = 28
_WIDEST_PX: Final = 260
_STEP: Final = {LengthUnit.INCH: 0.005 * 25.4, LengthUnit.MM: 0.1}
"""mm to which a height is rounded up: shop setting."""
_SPARE: Final = 0.01
"""mm; higher letters stand a little farther out than the usual ones that are measured here."""


def label_controls(bench: Workbench, parent: QWidget) -> None:
    """Those among what is selected, each labelled with its name in capitals to begin with."""
    project, option_id, _ = start(bench)
    chosen = controls(project, bench.document.option, bench.selection.ids)
    if not chosen:
        return
    dialog = EditDialog(bench, "Label controls", "Engrave", parent, at=Dialog.LABELS)
    texts = {item.id: _text_row(dialog, item) for item in chosen}
    texts[chosen[0].id].selectAll()
    height = length_row(dialog, "&Height of a capital", _height(bench, chosen))
    side = choice_row(dialog, "&Side", Side, Side.BELOW)
    dialog.form.words("Text left empty engraves nothing there.", "faint")
    near = dialog.line_above_buttons()

    def change() -> Made:
        near.clear()
        words = {item_id: field.text() for item_id, field in texts.items()}
        made = label_row(project, option_id, words, height.mm, side.currentData())
        near.setText(_too_near(bench, crowded(made.project, option_id, made.ids)))
        return made

    dialog.ask(change)


def _text_row(dialog: EditDialog, item: Item) -> QLineEdit:
    """As wide as what it begins with, within reason."""
    field = text_row(dialog, item.name.replace("&", "&&"), short_name(item.name))
    field.setAccessibleName(item.name)
    field.setCursorPosition(0)
    wide = field.fontMetrics().horizontalAdvance(field.text()) + _AROUND_TEXT_PX
    field.setMinimumWidth(min(wide, _WIDEST_PX))
    return field


def _height(bench: Workbench, chosen: tuple[Item, ...]) -> float:
    """What the pilot reads well from where the eye is, at the farthest label; the usual one where no eye is known."""
    usual, ids = LETTER_HEIGHT[bench.unit], {item.id for item in chosen}
    read = [
        height_preferred(plate.plate, bench.document.project, label_spot(plate, placed, usual, side))
        for plate in bench.stage.layout().plates
        for placed in plate.items
        for side in Side
        if placed.item.id in ids
    ]
    known = [each for each in read if each is not None]
    step = _STEP[bench.unit]
    return math.ceil((max(known) + _SPARE) / step) * step if known else usual


def _too_near(bench: Workbench, words: tuple[str, ...]) -> str:
    if not words:
        return ""
    more = len(words) - _NAMED_AT_MOST
    named = ", ".join(words[:_NAMED_AT_MOST]) + (f" and {more} more" if more > 0 else "")
    clear = format_length(LABEL_GAP, bench.unit)
    return f"Nearer than {clear} to what is beside: {named}. Shorten the words or choose another height or side."
