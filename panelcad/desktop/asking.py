"""Questions to the person at the screen. Buttons are verbs; no question that undo can answer is asked."""

from enum import Enum
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from panelcad.desktop.help.ask import explained_by_key
from panelcad.desktop.help.topics import MESSAGES
from panelcad.store.project_file import SUFFIX

LIMITS_FILES: Final = "Limits of a shop (*.toml)"
_PROJECTS = f"panelcad projects (*{SUFFIX} *.json)"


class Leaving(Enum):
    """What becomes of unsaved changes."""

    SAVE = "save"
    DISCARD = "discard"
    STAY = "stay"


class Asking:
    def __init__(self, parent: QWidget) -> None:
        self._parent = parent

    def file_to_open(self, folder: Path) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self._parent, "Open a project", str(folder), _PROJECTS)
        return Path(name) if name else None

    def file_to_save(self, suggested: Path) -> Path | None:
        """Where to save; the suffix is added where it was left out."""
        name, _ = QFileDialog.getSaveFileName(self._parent, "Save the project as", str(suggested), _PROJECTS)
        if not name:
            return None
        return Path(name) if name.endswith(".json") else Path(name + SUFFIX)

    def folder(self, title: str, start: Path) -> Path | None:
        name = QFileDialog.getExistingDirectory(self._parent, title, str(start))
        return Path(name) if name else None

    def leaving(self, name: str) -> Leaving:
        """What becomes of the changes to this project."""
        box = self._box("Unsaved changes", QMessageBox.Icon.Question)
        box.setText(f"Save the changes to '{name}'?")
        box.setInformativeText("They are lost if you do not save them.")
        save = box.addButton("&Save", QMessageBox.ButtonRole.AcceptRole)
        discard = box.addButton("&Discard changes", QMessageBox.ButtonRole.DestructiveRole)
        stay = box.addButton("&Cancel", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(save)
        box.setEscapeButton(stay)
        box.exec()
        answers = ((save, Leaving.SAVE), (discard, Leaving.DISCARD))
        return next((answer for button, answer in answers if button is box.clickedButton()), Leaving.STAY)

    def choice(self, title: str, question: str, detail: str, *buttons: str, loses: str = "") -> str:
        """The button that was pressed; the last one is what Escape means, and it loses nothing.

        Enter means the first, or the last where the first `loses` something that cannot be had back.
        """
        box = self._box(title, QMessageBox.Icon.Question)
        box.setText(question)
        box.setInformativeText(detail)
        made = [box.addButton(words, QMessageBox.ButtonRole.AcceptRole) for words in buttons]
        box.setEscapeButton(made[-1])
        box.setDefaultButton(made[-1] if buttons[0] == loses else made[0])
        box.exec()
        pressed = (words for words, button in zip(buttons, made, strict=True) if button is box.clickedButton())
        return next(pressed, buttons[-1])

    def tell(self, title: str, sentence: str) -> None:
        """A sentence that must be read."""
        box = self._box(title, QMessageBox.Icon.Warning)
        box.setText(sentence)
        box.exec()

    def _box(self, title: str, sign: QMessageBox.Icon) -> QMessageBox:
        box = QMessageBox(self._parent)
        box.setIcon(sign)
        box.setWindowTitle(title)
        explained_by_key(box, MESSAGES[title])
        return box
