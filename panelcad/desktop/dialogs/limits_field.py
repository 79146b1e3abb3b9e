"""The file of a shop's limits: typed, looked for, or none."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from panelcad.desktop.asking import LIMITS_FILES
from panelcad.desktop.dialogs.path_field import PathField


class LimitsField(PathField):
    def __init__(self, file: Path | None) -> None:
        super().__init__("Limits of new panels", str(file) if file is not None else "", "C&hoose…")
        self.text.setPlaceholderText("the program's own")
        self.text.setClearButtonEnabled(True)

    @property
    def file(self) -> Path | None:
        """The file that is named, whether it is there or not."""
        text = self.text.text().strip()
        return Path(text).expanduser().absolute() if text else None

    def looked_for(self) -> str:
        start = str(self.file.parent) if self.file is not None else ""
        return QFileDialog.getOpenFileName(self, self.text.accessibleName(), start, LIMITS_FILES)[0]
