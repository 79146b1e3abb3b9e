"""Fields that understand quantities: typed text becomes mm or degrees when Enter is pressed or the field is left."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from panelcad.desktop.entered_whole import entered_whole
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit, format_brief, parse_angle, parse_length

Read = Callable[[str], float]
Write = Callable[[float], str]


_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_BACK_AND_FORTH: Final = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)


def _is_back_or_forth(event: QEvent) -> bool:
    return isinstance(event, QKeyEvent) and any(event.matches(keys) for keys in _BACK_AND_FORTH)


def mark_wrong(field: QLineEdit, problem: str) -> None:
    """The field is framed as wrong and says why when it is pointed at; nothing is wrong where there is no problem."""
    field.setToolTip(problem)
    if bool(problem) != bool(field.property("wrong")):
        field.setProperty("wrong", bool(problem))
        field.style().unpolish(field)
        field.style().polish(field)


class CommittingField(QLineEdit):
    """Undo is the document's while nothing is typed here; `done` after Enter has committed what was typed."""

    done = Signal()

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.ShortcutOverride and not self.isModified() and _is_back_or_forth(event):
            event.ignore()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        super().keyPressEvent(event)
        if event.key() in _ENTERS and not self.isModified():
            self.done.emit()


class QuantityField(CommittingField):
    """`committed` with the value when it became another one, `refused` with a sentence when the text is nonsense, and
    with '' once it is no longer there.
    """

    committed = Signal(float)
    refused = Signal(str)

    def __init__(self, name: str, read: Read, write: Write, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._read, self._write = read, write
        self._value = 0.0
        self.setAccessibleName(name)
        entered_whole(self)
        self.editingFinished.connect(self._commit)
        self.textEdited.connect(lambda _: self._is_right())

    @property
    def value(self) -> float:
        return self._value

    def show_value(self, value: float) -> None:
        """Show a value without committing it; text that is being typed is left alone."""
        self._value = value
        if not (self.hasFocus() and self.isModified()):
            self.setText(self._write(value))
            self.setCursorPosition(0)
            self._is_right()

    def _is_right(self) -> None:
        """Nothing is wrong with it, or no longer."""
        if self.property("wrong"):
            mark_wrong(self, "")
            self.refused.emit("")

    def take_typed(self) -> bool:
        """Commit what is typed, as Enter does; False where it is nonsense, which is told."""
        self._commit()
        return not self.isModified()

    def _commit(self) -> None:
        if not self.isModified():
            return
        try:
            value = self._read(self.text())
        except UnreadableQuantity as problem:
            said = str(problem.of(self.accessibleName()))
            mark_wrong(self, said)
            self.refused.emit(said)
            return
        self.setModified(False)
        changed = self.text() != self._write(self._value) and value != self._value
        self._value = value if changed else self._value
        self.setText(self._write(self._value))
        if changed:
            self.committed.emit(value)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts the old value back."""
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self.setModified(False)
            self.show_value(self._value)
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() in {Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason}:
            self.selectAll()


class LengthField(QuantityField):
    """A length in mm, typed and shown in the user's unit; arithmetic, fractions and other units are understood."""

    def __init__(self, name: str, unit: LengthUnit, parent: QWidget | None = None) -> None:
        self._unit = unit
        super().__init__(
            name, lambda text: parse_length(text, self._unit), lambda mm: format_brief(mm, self._unit), parent
        )

    def take_unit(self, unit: LengthUnit) -> None:
        self._unit = unit
        self.show_value(self._value)


class AngleField(QuantityField):
    """An angle in degrees."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parse_angle, lambda degrees: f"{round(degrees, 4):g}", parent)


class TextField(CommittingField):
    """`committed` with the text when it became another one."""

    committed = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = ""
        self.setAccessibleName(name)
        self.editingFinished.connect(self._commit)

    def show_text(self, text: str) -> None:
        self._shown = text
        if not (self.hasFocus() and self.isModified()):
            self.setText(text)
            self.setCursorPosition(0)

    def _commit(self) -> None:
        if self.isModified() and self.text() != self._shown:
            self.setModified(False)
            self._shown = self.text()
            self.committed.emit(self.text())
