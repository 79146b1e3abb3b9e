"""A file or folder that is typed or looked for."""

from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QWidget


class PathField(QWidget):
    """A line for the path, and a button beside it that asks the system's dialog for one."""

    def __init__(self, name: str, text: str, button: str = "Choose…") -> None:
        super().__init__()
        self.text = QLineEdit(text)
        self.text.setAccessibleName(name)
        look = QPushButton(button)
        look.setAutoDefault(False)
        look.clicked.connect(self._look)
        self.row = QHBoxLayout(self)
        self.row.setContentsMargins(0, 0, 0, 0)
        self.row.addWidget(self.text, 1)
        self.row.addWidget(look)
        self.setFocusProxy(self.text)

    def _look(self) -> None:
        chosen = self.looked_for()
        if chosen:
            self.text.setText(chosen)

    def looked_for(self) -> str:
        """What the system's dialog was answered with, or ''."""
        raise NotImplementedError
