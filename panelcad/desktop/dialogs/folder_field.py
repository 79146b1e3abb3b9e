"""A folder that is typed or looked for."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QPushButton, QWidget


class FolderField(QWidget):
    def __init__(self, name: str, folder: Path) -> None:
        super().__init__()
        self.text = QLineEdit(str(folder))
        self.text.setAccessibleName(name)
        look = QPushButton("Choose…")
        look.setAutoDefault(False)
        look.clicked.connect(self._look)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.text, 1)
        row.addWidget(look)
        self.setFocusProxy(self.text)

    @property
    def path(self) -> Path:
        return Path(self.text.text()).expanduser()

    def _look(self) -> None:
        chosen = QFileDialog.getExistingDirectory(self, self.text.accessibleName(), self.text.text())
        if chosen:
            self.text.setText(chosen)
