"""A row of boxes to tick."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget


class Ticks(QWidget):
    """`words` by key; `ticked` says which keys remain."""

    changed = Signal()

    def __init__(self, name: str, words: dict[str, str], *, are_ticked: bool = True) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.boxes = {key: QCheckBox(word.replace("&", "&&")) for key, word in words.items()}
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        for box in self.boxes.values():
            box.setChecked(are_ticked)
            box.toggled.connect(self.changed)
            row.addWidget(box)
        row.addStretch(1)
        first = next(iter(self.boxes.values()), None)
        if first is not None:
            self.setFocusProxy(first)

    @property
    def ticked(self) -> tuple[str, ...]:
        return tuple(key for key, box in self.boxes.items() if box.isChecked())
