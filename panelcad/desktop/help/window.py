"""The window of help: the pages at the left, the page at the right, back, forward and find above."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QFont, QHideEvent, QKeySequence, QShortcut, QShowEvent, QTextCursor, QTextDocument
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.help.browser import PageBrowser
from panelcad.desktop.help.pages import GUIDE, PAGES, REFERENCE, Page
from panelcad.desktop.icons import program_icon
from panelcad.desktop.screens import screen_of
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import theme_for

_FILE: Final = int(Qt.ItemDataRole.UserRole)
_Keys = QKeySequence.StandardKey


class HelpWindow(QWidget):
    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle("Help – panelcad")
        self.setWindowIcon(program_icon())
        self.setObjectName("help")
        self.page = PageBrowser(theme_for(Settings().theme))
        self.contents = self._contents()
        self.back, self.forward = QPushButton("◂ &Back"), QPushButton("For&ward ▸")
        self.words = QLineEdit()
        self.words.setPlaceholderText("Find in all pages; Enter goes to the next place")
        self.words.setAccessibleName("Find in all pages")
        self.words.setClearButtonEnabled(True)
        self.told = QLabel()
        self.told.setProperty("role", "faint")
        self._lay_out()
        self._restore_layout()
        self._connect()

    def _contents(self) -> QListWidget:
        made = QListWidget()
        made.setAccessibleName("Pages of help")
        made.setSpacing(1)
        made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for heading, files in (("Doing things", GUIDE), ("Looking things up", REFERENCE)):
            head = QListWidgetItem(heading, made)
            head.setFlags(Qt.ItemFlag.NoItemFlags)
            head.setFont(_bold(made))
            for file in files:
                entry = QListWidgetItem(Page(file).title, made)
                entry.setData(_FILE, file)
                entry.setToolTip(entry.text())
        return made

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        for part, share in ((self.back, 0), (self.forward, 0), (self.words, 1), (self.told, 0)):
            row.addWidget(part, share)
        self._halves = QSplitter(Qt.Orientation.Horizontal)
        self._halves.addWidget(self.contents)
        self._halves.addWidget(self.page)
        self._halves.setStretchFactor(1, 1)
        self._halves.setSizes([230, 770])
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addLayout(row)
        column.addWidget(self._halves, 1)

    def _connect(self) -> None:
        self.back.clicked.connect(self.page.backward)
        self.forward.clicked.connect(self.page.forward)
        self.page.backwardAvailable.connect(self.back.setEnabled)
        self.page.forwardAvailable.connect(self.forward.setEnabled)
        self.page.shown.connect(self._follow)
        self.page.refused.connect(lambda link: self.told.setText(f"Not a page of help: {link}"))
        self.contents.itemClicked.connect(self._open)
        self.contents.itemActivated.connect(self._open)
        self.words.returnPressed.connect(self.find_next)
        self.words.textEdited.connect(lambda _: self.told.clear())
        for keys, run in (
            (_Keys.Back, self.page.backward),
            (_Keys.Forward, self.page.forward),
            (_Keys.Find, self._to_words),
            (_Keys.FindNext, self.find_next),
            (_Keys.FindPrevious, self.find_before),
            (_Keys.Close, self.close),
            (_Keys.Cancel, self.close),
        ):
            QShortcut(QKeySequence(keys), self, run)
        self.back.setEnabled(False)
        self.forward.setEnabled(False)

    # Going

    def go_to(self, link: str) -> None:
        """Show a section by its link from docs/."""
        self.told.clear()
        self.page.go_to(link)
        self.page.setFocus(Qt.FocusReason.OtherFocusReason)

    def _open(self, entry: QListWidgetItem) -> None:
        if entry.data(_FILE):
            self.page.go_to(str(entry.data(_FILE)))

    def _follow(self, link: str) -> None:
        """Choose the page in the list."""
        file = link.partition("#")[0]
        for row in range(self.contents.count()):
            if self.contents.item(row).data(_FILE) == file:
                self.contents.setCurrentRow(row)
                return
        self.contents.setCurrentRow(-1)

    # Finding

    def _to_words(self) -> None:
        self.words.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.words.selectAll()

    def find_next(self) -> None:
        """The next place of the words: on this page, or else on the next one that has them."""
        self._find(QTextDocument.FindFlag(0), 1)

    def find_before(self) -> None:
        self._find(QTextDocument.FindFlag.FindBackward, -1)

    def _find(self, flag: QTextDocument.FindFlag, step: int) -> None:
        words = self.words.text().strip()
        if not words or self.page.find(words, flag):
            self.told.clear()
            return
        for file in self._pages_after(step):
            if words.casefold() in Page(file).markdown.casefold():
                self.page.go_to(file)
                self.page.moveCursor(QTextCursor.MoveOperation.Start if step > 0 else QTextCursor.MoveOperation.End)
                if self.page.find(words, flag):
                    self.told.setText("On another page")
                    return
        self.told.setText("Not found")

    def _pages_after(self, step: int) -> list[str]:
        """All pages, from the next one round to this one."""
        files = [page.file for page in PAGES]
        here = self.page.link.partition("#")[0]
        start = files.index(here) if here in files else 0
        return [files[(start + step * i) % len(files)] for i in range(1, len(files) + 1)]

    # Looks

    def showEvent(self, event: QShowEvent) -> None:
        """The list takes its rows' heights from the style sheet once it is shown."""
        super().showEvent(event)
        self.contents.doItemsLayout()

    def hideEvent(self, event: QHideEvent) -> None:
        """However it goes, by its own key or with the program, it comes back as large and where it was."""
        Settings().remember_help(self.saveGeometry(), self._halves.saveState())
        super().hideEvent(event)

    def _restore_layout(self) -> None:
        room = screen_of(self).availableSize() - QSize(0, 40)
        self.resize(room.boundedTo(QSize(1000, 720)))
        place, halves = Settings().help_layout()
        if not place.isEmpty():
            self.restoreGeometry(place)
        if not halves.isEmpty():
            self._halves.restoreState(halves)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange and hasattr(self, "page"):
            self.page.take_theme(theme_for(Settings().theme))


def _bold(widget: QWidget) -> QFont:
    font = QFont(widget.font())
    font.setBold(True)
    return font


class _Keeper(QObject):
    """Keeps help open when the dialog it belonged to goes: it belongs to the dialog's window then.

    With the program's own window help goes too. A window that is only put away as an icon has not gone.
    """

    def __init__(self, owner: QWidget, window: HelpWindow) -> None:
        super().__init__(owner)
        self._owner, self._window = owner, window
        owner.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self._owner and event.type() is QEvent.Type.Hide and not event.spontaneous():
            parent = self._owner.parentWidget()
            if parent is None:
                self._window.close()
            elif self._window.parentWidget() is self._owner:
                _give(self._window, parent.window())
            self._owner.removeEventFilter(self)
            self.deleteLater()
        return False


def open_help(link: str, owner: QWidget) -> HelpWindow:
    """Show a section in the one window of help. It belongs to `owner`'s window, so that no dialog blocks it."""
    window = next((one for one in QApplication.topLevelWidgets() if isinstance(one, HelpWindow)), None) or HelpWindow()
    top = owner.window()
    if window.parentWidget() is not top:
        _give(window, top)
        _Keeper(top, window)
    window.go_to(link)
    window.show()
    window.raise_()
    window.activateWindow()
    return window


def _give(window: HelpWindow, owner: QWidget) -> None:
    """Make it `owner`'s; it stays where it is and as it is."""
    was_shown, place = window.isVisible(), window.geometry()
    window.setParent(owner, Qt.WindowType.Window)
    if was_shown:
        window.setGeometry(place)
        window.show()
