"""Fields of a dialog that are read while they are typed; one that cannot be read is marked, and says why."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit

from panelcad.desktop.entered_whole import entered_whole
from panelcad.desktop.fields import mark_wrong
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit, format_brief, parse_angle, parse_length


class QuantityEntry(QLineEdit):
    """`edited` with each key, once what is typed has been read; `is_typed` says whether a person edited it."""

    edited = Signal()

    def __init__(self, name: str, text: str, parse: Callable[[str], float]) -> None:
        super().__init__(text)
        self._parse = parse
        self.is_typed = False
        self.setAccessibleName(name)
        entered_whole(self)
        self.textEdited.connect(lambda _: self._typed())

    def _typed(self) -> None:
        self.is_typed = True
        try:
            self.read()
        except UnreadableQuantity as fault:
            mark_wrong(self, str(fault))
        else:
            mark_wrong(self, "")
        self.edited.emit()

    def read(self) -> float:
        """What is typed. Raises `UnreadableQuantity`, which names the field."""
        try:
            return self._parse(self.text())
        except UnreadableQuantity as fault:
            raise fault.of(self.accessibleName()) from None


class LengthEntry(QuantityEntry):
    """A length; one that was not edited stays as exact as it came."""

    def __init__(self, name: str, mm: float, unit: LengthUnit) -> None:
        super().__init__(name, format_brief(mm, unit), lambda text: parse_length(text, unit))
        self._unit, self._mm = unit, mm

    def show_mm(self, mm: float) -> None:
        self._mm = mm
        self.setText(format_brief(mm, self._unit))
        mark_wrong(self, "")

    @property
    def mm(self) -> float:
        """Raises `UnreadableQuantity`."""
        return self._mm if self.text() == format_brief(self._mm, self._unit) else self.read()


class AngleEntry(QuantityEntry):
    """An angle in degrees."""

    def __init__(self, name: str, degrees: float) -> None:
        super().__init__(name, f"{degrees:g}", parse_angle)

    @property
    def degrees(self) -> float:
        """Raises `UnreadableQuantity`."""
        return self.read()
