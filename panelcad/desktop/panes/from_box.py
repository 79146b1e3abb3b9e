"""What a position is reckoned from, chosen beside the figures; a figure typed here goes to them."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QComboBox

from panelcad.desktop.choice_box import ChoiceBox

_BEGINS_A_FIGURE: Final = frozenset("0123456789.,-+(")


class FromBox(ChoiceBox):
    """`typed` with a key that begins a figure; other letters search the list."""

    typed = Signal(QKeyEvent)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Position from")
        self.setMinimumContentsLength(8)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.text() and event.text() in _BEGINS_A_FIGURE:
            self.typed.emit(event)
        else:
            super().keyPressEvent(event)
