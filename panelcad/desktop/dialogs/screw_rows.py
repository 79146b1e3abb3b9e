"""Rows for a screw and the hole it goes through: chosen by name, or given in figures."""

from typing import Final

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.dialogs.rows import length_row
from panelcad.errors import UnreadableQuantity
from panelcad.model.screw_sizes import SCREW_SIZES, ScrewSize, screw_size
from panelcad.units import LengthUnit, format_length, to_nanometre

_EXAMPLE: Final = {LengthUnit.INCH: "#8", LengthUnit.MM: "M4"}


class FastenerEntry(LengthEntry):
    """A nominal diameter, typed as a length or as the name of a screw."""

    @property
    def screw(self) -> ScrewSize | None:
        """The screw whose name is typed."""
        return screw_size(self.text())

    def read(self) -> float:
        if self.screw is not None:
            return self.screw.diameter
        try:
            return super().read()
        except UnreadableQuantity:
            names = ", ".join(size.name for size in SCREW_SIZES)
            expected = f"a length such as 0.19 in, or one of the screws {names}"
            raise UnreadableQuantity(self.text()[:60], expected, self.accessibleName()) from None


class ScrewRows:
    """A choice by name fills in both figures; figures that are typed choose the name they have, if any."""

    def __init__(self, dialog: EditDialog, hole: float, fastener: float) -> None:
        self._dialog = dialog
        unit = dialog.bench.unit
        self.choice = ChoiceBox()
        self.choice.setAccessibleName("Screw")
        self.choice.addItem("by its figures", None)
        for size in SCREW_SIZES:
            for clearance in sorted({each.diameter: each for each in reversed(size.holes)}.values()):
                words = f"{size.name}, hole {format_length(clearance.diameter, unit)}: {clearance.table}"
                self.choice.addItem(words, (clearance.diameter, size.diameter))
        dialog.form.row("S&crew", self.choice)
        self.hole = length_row(dialog, "&Hole", hole)
        self.fastener = FastenerEntry("Fastener", fastener, unit)
        dialog.form.row(f"Fa&stener, {unit.value} or {_EXAMPLE[unit]}", self.fastener)
        self.choice.activated.connect(lambda _: self._take_choice())
        self.hole.edited.connect(self._show_choice)
        self.fastener.edited.connect(self._take_name)
        self._show_choice()

    def _take_choice(self) -> None:
        chosen = self.choice.currentData()
        if chosen is not None:
            self.hole.show_mm(chosen[0])
            self.fastener.show_mm(chosen[1])
        self._dialog.preview()

    def _take_name(self) -> None:
        """The hole of a screw that is named comes with it, unless somebody gave one."""
        size = self.fastener.screw
        if size is not None and not self.hole.is_typed:
            self.hole.show_mm(size.usual.diameter)
        self._show_choice()
        self._dialog.preview()

    def _show_choice(self) -> None:
        try:
            figures = [to_nanometre(mm) for mm in (self.hole.mm, self.fastener.mm)]
        except UnreadableQuantity:
            figures = []
        entries = (self.choice.itemData(row) for row in range(1, self.choice.count()))
        rows = [row for row, entry in enumerate(entries, 1) if [to_nanometre(mm) for mm in entry] == figures]
        self.choice.setCurrentIndex(rows[0] if rows else 0)
