"""A box to choose a cutout of the library in, with search by typing."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QComboBox, QCompleter

from panelcad.model.cutout import Cutout

_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class CutoutChoice(QComboBox):
    """`nothing` offers an entry for no cutout at all."""

    def __init__(self, name: str, cutouts: Iterable[Cutout], nothing: str = "") -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setMinimumContentsLength(26)
        self._known = {cutout.name: cutout for cutout in cutouts}
        if nothing:
            self.addItem(nothing, "")
        for cutout in self._known.values():
            self.addItem(cutout.title, cutout.name)
        completer = QCompleter(self.model(), self)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.setCompleter(completer)
        line = self.lineEdit()
        if line is not None:
            line.installEventFilter(self)
            line.returnPressed.connect(self.take_first)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Coming here by keys, one types over what is chosen; Enter takes the first that is like what is typed."""
        line = self.lineEdit()
        is_enter = isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress and event.key() in _ENTERS
        if is_enter and self.take_first():
            return True
        if event.type() is QEvent.Type.FocusIn and line is not None:
            QTimer.singleShot(0, line, line.selectAll)
        return super().eventFilter(watched, event)

    @property
    def cutout(self) -> Cutout | None:
        """The chosen cutout; None for none, or while what is typed names none."""
        row = self.findText(self.currentText(), Qt.MatchFlag.MatchFixedString)
        return self._known.get(str(self.itemData(row))) if row >= 0 else None

    def take_first(self) -> bool:
        """Where what is typed names none, choose the first whose title holds it; whether that was done."""
        completer, typed = self.completer(), self.currentText().strip()
        if self.cutout is not None or completer is None or not typed:
            return False
        completer.setCompletionPrefix(typed)
        if not completer.completionCount():
            return False
        title = str(completer.completionModel().index(0, 0).data())
        self.setCurrentIndex(self.findText(title, Qt.MatchFlag.MatchFixedString))
        return True

    def choose(self, name: str) -> None:
        self.setCurrentIndex(max(0, self.findData(name)))
