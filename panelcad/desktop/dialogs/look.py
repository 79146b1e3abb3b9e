"""How the option looks: finish and colours of the sheet, trim, glareshield, yokes; seen while they are chosen."""

from enum import StrEnum
from typing import Any, Final

from PySide6.QtGui import QColor
from PySide6.QtWidgets import QColorDialog, QComboBox, QPushButton, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.look import look_changed
from panelcad.model.appearance import Appearance, Finish, Shield, Trim, Yokes

_CHOICES: Final[tuple[tuple[str, str, type[StrEnum]], ...]] = (
    ("finish", "&Finish", Finish),
    ("trim", "&Edge", Trim),
    ("shield", "&Glareshield", Shield),
    ("yokes", "&Yokes", Yokes),
)
_COLOURS: Final = (("colour", "&Colour of the sheet"), ("placard", "Colour of the &lettering"))


class ColourButton(QPushButton):
    """Shows a colour and asks for another one."""

    def __init__(self, name: str, colour: str, dialog: EditDialog) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self._dialog = dialog
        self.take(colour)
        self.clicked.connect(self._ask)

    def take(self, colour: str) -> None:
        self.colour = colour
        ink = "#000000" if QColor(colour).lightnessF() > 0.5 else "#ffffff"
        self.setText(colour)
        self.setStyleSheet(f"background: {colour}; color: {ink};")

    def _ask(self) -> None:
        chosen = QColorDialog.getColor(QColor(self.colour), self, self.accessibleName())
        if chosen.isValid():
            self.take(chosen.name())
            self._dialog.preview()


def option_look(bench: Workbench, parent: QWidget) -> None:
    """Ask how the option shown looks, while the canvas shows it."""
    project, option = bench.document.project, bench.document.option
    if not bench.stage.view.keeps_pixmaps:
        bench.stage.look_from("look-day")
    dialog = EditDialog(bench, "How it looks", "Set", parent, at=Dialog.LOOK)
    boxes = {name: _box(dialog, name, word, kinds, option.appearance) for name, word, kinds in _CHOICES}
    buttons = {name: _button(dialog, name, word, option.appearance) for name, word in _COLOURS}
    dialog.form.words("Nothing here is metal: checks, cutting files and fingerprints do not know it.", "faint")

    def changes() -> dict[str, Any]:
        return {name: box.currentData() for name, box in boxes.items()} | {n: b.colour for n, b in buttons.items()}

    dialog.ask(lambda: look_changed(project, option.id, **changes()))


def _box(dialog: EditDialog, name: str, word: str, kinds: type[StrEnum], now: Appearance) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName(word.replace("&", ""))
    for kind in kinds:
        box.addItem(kind.value.capitalize(), kind)
    box.setCurrentIndex(list(kinds).index(getattr(now, name)))
    box.currentIndexChanged.connect(dialog.preview)
    dialog.form.row(word, box)
    return box


def _button(dialog: EditDialog, name: str, word: str, now: Appearance) -> ColourButton:
    button = ColourButton(word.replace("&", ""), getattr(now, name), dialog)
    dialog.form.row(word, button)
    return button
