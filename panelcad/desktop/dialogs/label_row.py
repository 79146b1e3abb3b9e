"""Labels for the controls that are selected, one text field each."""

import math
from collections import Counter
from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.checks.pilot_reading import height_preferred
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.placards import letter_chosen
from panelcad.desktop.dialogs.rows import choice_row, length_row, start
from panelcad.desktop.dialogs.words import LETTER_HEIGHT
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.label_row import (
    LABEL_GAP,
    Label,
    Side,
    controls,
    crowded,
    label_row,
    label_spot,
    labels,
    short_name,
)
from panelcad.editing.made import Made
from panelcad.model.project import Item
from panelcad.units import LengthUnit, format_length

_EMPTY: Final = "Text left empty engraves nothing there."
_EMPTY_AGAIN: Final = "These labels are changed and put in their places anew. Text left empty takes the label away."
_NAMED_AT_MOST: Final = 3
_AROUND_TEXT_PX: Final = 28
_WIDEST_PX: Final = 260
_STEP: Final = {LengthUnit.INCH: 0.005 * 25.4, LengthUnit.MM: 0.1}
"""mm to which a height is rounded up: shop setting."""
_SPARE: Final = 0.01
"""mm; higher letters stand a little farther out than the usual ones that are measured here."""


def label_controls(bench: Workbench, parent: QWidget) -> None:
    """Those among what is selected: the label that each has, or its name in capitals to begin with.

    Where there is no control among it, the placards get their words.
    """
    project, option_id, _ = start(bench)
    chosen = controls(project, bench.document.option, bench.selection.ids)
    if not chosen:
        letter_chosen(bench, parent, bench.selection.ids)
        return
    dialog = EditDialog(bench, "Label controls", "Engrave", parent, at=Dialog.LABELS)
    known = labels(project, bench.document.option)
    standing = {item.id: known[item.id] for item in chosen if item.id in known}
    texts = {item.id: _text_row(dialog, item, standing.get(item.id)) for item in chosen}
    texts[chosen[0].id].selectAll()
    dialog.form.line()
    letters, towards = _like_the_others(standing) or (_height(bench, chosen), Side.BELOW)
    height = length_row(dialog, "&Height of a capital", letters)
    side = choice_row(dialog, "&Side", Side, towards)
    dialog.form.words(_EMPTY_AGAIN if standing else _EMPTY, "faint")
    near = dialog.line_above_buttons()

    def change() -> Made:
        near.clear()
        words = {item_id: field.text() for item_id, field in texts.items()}
        made = label_row(project, option_id, words, height.mm, side.currentData())
        near.setText(_too_near(bench, crowded(made.project, option_id, made.ids)))
        return made

    dialog.ask(change)


class _WordsField(QLineEdit):
    """As wide as what it begins with where there is room, within reason."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setCursorPosition(0)
        self._wide = min(self.fontMetrics().horizontalAdvance(text) + _AROUND_TEXT_PX, _WIDEST_PX)

    def sizeHint(self) -> QSize:
        usual = super().sizeHint()
        return QSize(max(self._wide, usual.width()), usual.height())


def _text_row(dialog: EditDialog, item: Item, label: Label | None) -> QLineEdit:
    field = _WordsField(short_name(item.name) if label is None else label.words.text)
    field.textEdited.connect(lambda _: dialog.preview())
    dialog.form.name_row(item.name, field)
    return field


def _like_the_others(standing: Mapping[str, Label]) -> tuple[float, Side] | None:
    """The height in mm and the side that most of the labels have; None where there are none."""
    looks = Counter((label.words.height, label.side) for label in standing.values())
    return looks.most_common(1)[0][0] if looks else None


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
