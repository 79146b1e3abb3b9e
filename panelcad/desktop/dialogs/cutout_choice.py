"""A box to choose a cutout of the library in, with search by words."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QEvent, QObject, QStringListModel, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QComboBox, QCompleter, QWidget

from panelcad.library.search import Index
from panelcad.model.cutout import Cutout

_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class CutoutChoice(QComboBox):
    """`nothing` offers an entry for no cutout at all. With `keeps_enter` that key says `entered` and does nothing else;
    otherwise it does what the dialog's does once a cutout is named.
    """

    entered = Signal()

    def __init__(self, name: str, cutouts: Iterable[Cutout], nothing: str = "", *, keeps_enter: bool = False) -> None:
        super().__init__()
        self._keeps_enter = keeps_enter
        self.setAccessibleName(name)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setMinimumContentsLength(26)
        self._known = {cutout.name: cutout for cutout in cutouts}
        if nothing:
            self.addItem(nothing, "")
        for cutout in self._known.values():
            self.addItem(cutout.title, cutout.name)
        self._index = Index((cutout.name, cutout.title, cutout.family) for cutout in self._known.values())
        self._suiting = QStringListModel(self)
        completer = QCompleter(self._suiting, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        self.setCompleter(completer)
        line = self.lineEdit()
        if line is not None:
            line.installEventFilter(self)
            line.textEdited.connect(self._search)
            line.returnPressed.connect(self._enter)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_went)

    def _search(self, words: str) -> None:
        """Offer what suits the words; Enter takes the first."""
        self._suiting.setStringList([self._known[name].title for name in self._suiting_names(words)])

    def _suiting_names(self, words: str) -> list[str]:
        """As the library's own search finds them, but the one chosen already before those that suit no better."""
        found = self._index.search(words)
        chosen = str(self.currentData())
        if chosen in self._index.best(words):
            found.remove(chosen)
            found.insert(0, chosen)
        return found

    def _focus_went(self, _: QWidget | None, to: QWidget | None) -> None:
        """The list of what is like the words goes with the keyboard: open, it would get the first key."""
        if to is not self.lineEdit():
            self._close_list()

    def _close_list(self) -> None:
        completer = self.completer()
        popup = completer.popup() if completer is not None else None
        if popup is not None:
            popup.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Coming here by keys, one types over what is chosen."""
        line = self.lineEdit()
        if event.type() is QEvent.Type.FocusIn and line is not None:
            QTimer.singleShot(0, line, line.selectAll)
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter takes the first that is like what is typed."""
        if event.key() in _ENTERS and self._keeps_enter:
            self._enter()
        elif event.key() not in _ENTERS or not self.take_first():
            super().keyPressEvent(event)

    def _enter(self) -> None:
        """Enter in the line itself; the list of what is like the words hands it on to the line, and stays open."""
        self.take_first()
        self._close_list()
        self.entered.emit()

    def type_over(self) -> None:
        """The next thing typed takes the place of what is chosen."""
        self._close_list()
        line = self.lineEdit()
        self.setFocus()
        if line is not None:
            line.selectAll()

    @property
    def cutout(self) -> Cutout | None:
        """The chosen cutout; None for none, or while what is typed names none."""
        row = self.findText(self.currentText(), Qt.MatchFlag.MatchFixedString)
        return self._known.get(str(self.itemData(row))) if row >= 0 else None

    def take_first(self) -> bool:
        """Where what is typed names none, choose what suits its words best; whether that was done."""
        typed = self.currentText().strip()
        if not typed or self.findText(typed, Qt.MatchFlag.MatchFixedString) >= 0:
            return False
        found = self._suiting_names(typed)
        if found:
            self.choose(found[0])
            self._close_list()
        return bool(found)

    def choose(self, name: str) -> None:
        self.setCurrentIndex(max(0, self.findData(name)))
