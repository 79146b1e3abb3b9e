"""Where something is to stand, in figures that are reckoned from the datum or from anything on the plate."""

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.panes.references import references
from panelcad.errors import UnreadableQuantity
from panelcad.geometry.point import Point


class PlaceEntry:
    """Rows of a dialog for x and y and what they are reckoned from; another reference says the same place in other
    figures.
    """

    def __init__(self, dialog: EditDialog, at: Point, up_word: str = "&y") -> None:
        bench, unit = dialog.bench, dialog.bench.unit
        self._known = references(bench.stage.layout(), bench.stage.plate_id, besides="")
        self._chosen = 0
        self.reference = ChoiceBox()
        self.reference.setAccessibleName("Position from")
        for reference in self._known:
            self.reference.addItem(reference.words)
        self._across, self._up = self.figures = LengthEntry("x", 0.0, unit), LengthEntry("y", 0.0, unit)
        self.show(at)
        dialog.form.row("F&rom", self.reference)
        dialog.form.row(f"&x, {unit.value}", self._across)
        dialog.form.row(f"{up_word}, {unit.value}", self._up)
        for entry in self.figures:
            entry.edited.connect(dialog.preview)
        self.reference.activated.connect(self._reckon)

    @property
    def at(self) -> Point:
        """The place on the plate, in mm. Raises `UnreadableQuantity`."""
        return self._origin.moved(self._across.mm, self._up.mm)

    @property
    def is_typed(self) -> bool:
        return self._across.is_typed or self._up.is_typed

    def show(self, at: Point) -> None:
        """Propose a place of the plate, in mm."""
        self._across.show_mm(at.x - self._origin.x)
        self._up.show_mm(at.y - self._origin.y)

    @property
    def _origin(self) -> Point:
        return self._known[self._chosen].origin

    def _reckon(self, row: int) -> None:
        """Figures that cannot be read are put right before anything is reckoned from elsewhere."""
        try:
            at = self.at
        except UnreadableQuantity:
            self.reference.setCurrentIndex(self._chosen)
            return
        self._chosen = row
        self.show(at)
