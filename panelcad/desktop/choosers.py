"""Choosers on the tool bar: which option, which plate, which view."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.views import VIEWS
from panelcad.desktop.workbench import Workbench

_POPUP_MARGIN = 32


class Chooser(QWidget):
    """A word and a box; subclasses say what there is to choose and what follows from it."""

    word = ""
    marked = ""
    """The word, with `&` before its key where it has one, which no menu and no pane has."""
    letters = 10
    """How many letters of a name are shown at least; a longer one is cut short and told whole by the tool tip."""

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self.bench = bench
        self.box = ChoiceBox()
        self.box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.box.setMinimumContentsLength(self.letters)
        self.box.setAccessibleName(self.word)
        self._word = QLabel(self.marked)
        self._word.setProperty("role", "faint")
        self._word.setBuddy(self.box)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(8, 0, 4, 0)
        self._row.setSpacing(6)
        self._row.addWidget(self._word)
        self._row.addWidget(self.box)
        self.box.activated.connect(lambda _: self.choose(str(self.box.currentData())))
        self.box.closed.connect(bench.view.setFocus)
        self.on_bar: QAction | None = None
        self.follow()
        self.refresh()

    def show_word(self, *, shown: bool) -> None:
        """Where there is no room for the word, the tool tip tells it."""
        self._word.setVisible(shown)

    def whole_width(self) -> int:
        """Pixels that the word and the box take side by side."""
        around = self._row.contentsMargins()
        words = self._word.sizeHint().width() + self._row.spacing()
        return around.left() + words + self.box.sizeHint().width() + around.right()

    def follow(self) -> None:
        """Connect to what changes the choice."""

    def entries(self) -> list[tuple[str, str]]:
        """(id, words) of all there is to choose."""
        return []

    def current(self) -> str:
        return ""

    def choose(self, chosen: str) -> None: ...

    def refresh(self) -> None:
        entries = self.entries()
        shown = [(str(self.box.itemData(i)), self.box.itemText(i)) for i in range(self.box.count())]
        if entries != shown:
            self.box.clear()
            for chosen, words in entries:
                self.box.addItem(words, chosen)
            self.box.view().setMinimumWidth(self.box.view().sizeHintForColumn(0) + _POPUP_MARGIN)
            self.box.updateGeometry()
        self.box.setCurrentIndex(max(0, self.box.findData(self.current())))
        self.box.setToolTip(f"{self.word}: {self.box.currentText()}")


class OptionChooser(Chooser):
    word = "Option"
    marked = "&Option"
    letters = 16

    def follow(self) -> None:
        document = self.bench.document
        for signal in (document.changed, document.option_changed, document.replaced):
            signal.connect(self.refresh)

    def entries(self) -> list[tuple[str, str]]:
        return [(option.id, option.name) for option in self.bench.document.project.all_options]

    def current(self) -> str:
        return self.bench.document.option_id

    def choose(self, chosen: str) -> None:
        self.bench.document.look_at(chosen)


class PlateChooser(Chooser):
    word = "Plate"
    marked = "Plate"

    def follow(self) -> None:
        self.bench.stage.shown.connect(self.refresh)
        self.bench.stage.plate_changed.connect(self.refresh)

    def entries(self) -> list[tuple[str, str]]:
        return [(plate.id, plate.name) for plate in self.bench.document.option.plates]

    def current(self) -> str:
        return self.bench.stage.plate_id

    def choose(self, chosen: str) -> None:
        self.bench.stage.look_at_plate(chosen)

    def refresh(self) -> None:
        """There is nothing to choose while there is one plate."""
        super().refresh()
        if self.on_bar is not None:
            self.on_bar.setVisible(self.box.count() > 1)


class ViewChooser(Chooser):
    word = "Seen from"
    marked = "Seen from"
    letters = 14

    def follow(self) -> None:
        self.bench.stage.view_changed.connect(self.refresh)

    def entries(self) -> list[tuple[str, str]]:
        return [(kind.id, kind.title) for kind in VIEWS]

    def current(self) -> str:
        return self.bench.stage.view.id

    def choose(self, chosen: str) -> None:
        self.bench.stage.look_from(chosen)
