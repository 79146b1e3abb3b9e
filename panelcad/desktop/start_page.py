"""The first screen: what to begin with, and the cautions in plain words."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import (
    QCommandLinkButton,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.dialogs.cautions import caution_card
from panelcad.desktop.settings import Settings
from panelcad.library.samples import sample_file, sample_names

_LETTERS = 48
_SAMPLES = {
    "tourer": ("Touring four-seater", "inches, as found and three options"),
    "trainer": ("Two-seat trainer", "millimetres, as found and one option"),
    "twin": ("Light twin", "two plates and a pedestal"),
}


class StartPage(QScrollArea):
    """Signals what the person wants to begin with. It is empty until `refresh`."""

    new_wanted = Signal()
    open_wanted = Signal()
    file_wanted = Signal(Path)
    sample_wanted = Signal(Path)
    help_wanted = Signal()

    def __init__(self, settings: Settings) -> None:
        super().__init__()
        self.setAccessibleName("Start page")
        self._settings = settings
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)

    def refresh(self) -> None:
        """Show the recent files as they are now."""
        page = QWidget()
        row = QHBoxLayout(page)
        row.setContentsMargins(40, 40, 40, 40)
        row.addStretch(1)
        row.addLayout(self._beginnings(), 3)
        row.addSpacing(36)
        row.addWidget(_framed(caution_card()), 4, Qt.AlignmentFlag.AlignTop)
        row.addStretch(1)
        self.setWidget(page)

    def _beginnings(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(8)
        column.addWidget(_label("panelcad", "title"))
        subtitle = _label("Lay out an instrument panel, check it, and release it to the machinist.", "subtitle")
        subtitle.setWordWrap(True)
        column.addWidget(subtitle)
        column.addSpacing(16)
        column.addLayout(self._first_steps())
        self._add_recent(column)
        self._add_samples(column)
        column.addSpacing(16)
        column.addWidget(_button("Your first panel in ten minutes", "how it is done (F1)", self.help_wanted.emit))
        column.addStretch(1)
        return column

    def _first_steps(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        new, opened = (
            _button("New panel…", "", self.new_wanted.emit),
            _button("Open a project…", "", self.open_wanted.emit),
        )
        new.setProperty("main", True)
        for button in (new, opened):
            button.setProperty("large", True)
            row.addWidget(button, 1)
        return row

    def _add_samples(self, column: QVBoxLayout) -> None:
        names = sample_names()
        if names:
            column.addSpacing(16)
            column.addWidget(_label("Try it on an invented aircraft", "heading"))
        for name in names:
            title, what = _SAMPLES.get(name, (name.capitalize(), ""))
            column.addWidget(_button(title, what, _later(self.sample_wanted.emit, sample_file(name))))

    def _add_recent(self, column: QVBoxLayout) -> None:
        files = [path for path in self._settings.recent_files if path.exists()][:5]
        if files:
            column.addSpacing(16)
            column.addWidget(_label("Opened lately", "heading"))
        for path in files:
            button = _button(_short(path.name), _short(str(path.parent)), _later(self.file_wanted.emit, path))
            button.setToolTip(str(path))
            column.addWidget(button)


def _later(run: Callable[[Path], None], path: Path) -> Callable[[], None]:
    return lambda: run(path)


def _label(text: str, role: str) -> QLabel:
    label = QLabel(text)
    label.setProperty("role", role)
    return label


def _button(title: str, detail: str, run: Callable[[], None]) -> QPushButton:
    """A button that says below its title what is to be had."""
    button = QCommandLinkButton(title, detail) if detail else QPushButton(title)
    button.setIcon(QIcon())
    button.setAutoDefault(True)  # Enter presses it too
    button.setToolTip(detail)
    button.clicked.connect(lambda _=False: run())
    return button


def _short(text: str) -> str:
    """The text, without its middle where it would make the page wider than a small screen."""
    kept = _LETTERS // 2
    return text if len(text) <= _LETTERS else f"{text[:kept]}…{text[-kept:]}"


def _framed(card: QFrame) -> QFrame:
    card.setMaximumWidth(640)
    return card
