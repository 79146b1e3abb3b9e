"""The file of a shop's limits: typed, looked for, or none."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QPushButton, QWidget

from panelcad.desktop.asking import LIMITS_FILES


class LimitsField(QWidget):
    def __init__(self, file: Path | None) -> None:
        super().__init__()
        self.text = QLineEdit(str(file) if file is not None else "")
        self.text.setAccessibleName("Limits of new panels")
        self.text.setPlaceholderText("the program's own")
        self.text.setClearButtonEnabled(True)
        look = QPushButton("C&hoose…")
        look.setAutoDefault(False)
        look.clicked.connect(self._look)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.text, 1)
        row.addWidget(look)
        self.setFocusProxy(self.text)

    @property
    def file(self) -> Path | None:
        """The file that is named, whether it is there or not."""
        text = self.text.text().strip()
        return Path(text).expanduser().absolute() if text else None

    def _look(self) -> None:
        start = str(self.file.parent) if self.file is not None else ""
        name, _ = QFileDialog.getOpenFileName(self, "Limits of new panels", start, LIMITS_FILES)
        if name:
            self.text.setText(name)
