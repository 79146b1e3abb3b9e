"""Attach screws along edges of the plate."""

from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edge_names import edge_name
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import length_row, start
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.attach import Spread, attach_all_round, attach_along
from panelcad.editing.made import Made
from panelcad.editing.outline import edges, outline_of
from panelcad.errors import EditRefused
from panelcad.model.hole import HoleForm
from panelcad.units import LengthUnit

_EVERY: Final = -1
_SCREW: Final = {
    LengthUnit.INCH: (0.5 * 25.4, 1.0 * 25.4, 5.0 * 25.4, 0.201 * 25.4, 0.19 * 25.4),
    LengthUnit.MM: (12.0, 25.0, 125.0, 5.1, 4.83),
}
"""Inset, first from the corner, pitch, hole and fastener in mm: a #10 screw in a clearance hole (from memory)."""


def screws_along_edges(bench: Workbench, parent: QWidget) -> None:
    """Attach screws along one edge or all of them; it begins with the edge that was picked."""
    project, option_id, plate_id = start(bench)
    segments = edges(outline_of(project.option(option_id).plate(plate_id).outline))
    dialog = EditDialog(bench, "Attach screws along edges", "Drill", parent, at=Dialog.SCREWS)
    edge = ChoiceBox()
    edge.setAccessibleName("Edge")
    edge.addItem("every edge", _EVERY)
    for i, segment in enumerate(segments):
        edge.addItem(f"{i + 1}: {edge_name(segment, bench.unit)}", i)
    if bench.outline.is_picked:
        edge.setCurrentIndex(edge.findData(bench.outline.finished_edge))
    edge.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&Edge", edge)
    titles = ("&Inset from the edge", "&First from the corner", "&Pitch, at most", "&Hole", "Fa&stener")
    entries = [length_row(dialog, title, mm) for title, mm in zip(titles, _SCREW[bench.unit], strict=True)]
    dialog.form.words("Screws that are there already stay, and no place is drilled twice.", "faint")

    def change() -> Made:
        inset, ends, pitch, hole, fastener = (entry.mm for entry in entries)
        form = _form(hole, fastener)
        spread, chosen = Spread(inset, ends, pitch), int(edge.currentData())
        if chosen == _EVERY:
            return attach_all_round(project, option_id, plate_id, spread, form)
        return attach_along(project, option_id, plate_id, chosen, spread, form)

    dialog.ask(change)


def _form(hole: float, fastener: float) -> HoleForm:
    if hole <= 0 or fastener <= 0:
        raise EditRefused("A hole and a fastener larger than 0 are expected.")
    return HoleForm(diameter=hole, fastener=fastener)
