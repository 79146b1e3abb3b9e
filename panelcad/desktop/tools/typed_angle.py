"""An angle typed in the middle of a turn: its figures as they stand, and the angle that they mean."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from panelcad.errors import UnreadableQuantity
from panelcad.units import parse_angle

_FIGURES: Final = frozenset("0123456789.,+-*/()° ")
_LONGEST: Final = 24


class TypedAngle:
    def __init__(self) -> None:
        self.text = ""

    def takes(self, event: QKeyEvent) -> bool:
        """Whether the key changed the figures."""
        if event.key() == Qt.Key.Key_Backspace and self.text:
            self.text = self.text[:-1]
            return True
        figure = event.text()
        if figure not in _FIGURES or (not self.text and figure == " "):
            return False
        self.text = (self.text + figure)[:_LONGEST]
        return True

    @property
    def degrees(self) -> float | None:
        """None while the figures are no angle."""
        try:
            return parse_angle(self.text)
        except UnreadableQuantity:
            return None

    @property
    def words(self) -> str:
        """The figures, and what a sum comes to."""
        degrees = self.degrees
        if degrees is None:
            return f"by {self.text}"
        plain = self.text.strip().rstrip("°").replace(",", ".")
        is_sum = any(sign in plain.lstrip("+-") for sign in "+-*/( ")
        return f"by {self.text} = {degrees:g}°" if is_sum else f"by {plain}°"
