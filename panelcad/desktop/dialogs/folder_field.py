"""A folder that is typed or looked for."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from panelcad.desktop.dialogs.path_field import PathField


class FolderField(PathField):
    def __init__(self, name: str, folder: Path) -> None:
        super().__init__(name, str(folder))

    @property
    def path(self) -> Path:
        return Path(self.text.text()).expanduser()

    def looked_for(self) -> str:
        return QFileDialog.getExistingDirectory(self, self.text.accessibleName(), self.text.text())
