"""Attach screws of the plate: along its edges, or one where it was measured."""

from typing import Final

from PySide6.QtWidgets import QCheckBox, QComboBox, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edge_names import edge_name
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import length_row, start
from panelcad.desktop.dialogs.screw_rows import ScrewRows
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.attach import Spread, attach_all_round, attach_along, screws_along
from panelcad.editing.made import Made
from panelcad.editing.outline import edges, outline_of
from panelcad.editing.plates import add_attach_screw
from panelcad.editing.remove import remove
from panelcad.errors import EditRefused
from panelcad.model.hole import HoleForm
from panelcad.model.plate import AttachScrew, Backing, Plate
from panelcad.model.screw_sizes import named_screw
from panelcad.units import LengthUnit

_EVERY: Final = -1
_SPREAD: Final = {
    LengthUnit.INCH: (0.5 * 25.4, 1.0 * 25.4, 5.0 * 25.4),
    LengthUnit.MM: (12.0, 25.0, 125.0),
}
"""Inset, first from the corner and pitch in mm."""
_FIRST_SCREW: Final = {unit: named_screw(name) for unit, name in ((LengthUnit.INCH, "#10"), (LengthUnit.MM, "M5"))}
"""What attaches a panel where nothing else is said (from memory)."""


def screws_along_edges(bench: Workbench, parent: QWidget) -> None:
    """Attach screws along one edge or all of them; it begins with the edge that was picked and the screws there are."""
    project, option_id, plate_id = start(bench)
    plate = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "Attach screws along edges", "Drill", parent, at=Dialog.SCREWS)
    edge = _edge_row(dialog, plate)
    like = next(iter(plate.attach_screws), None)
    titles = ("&Inset from the edge", "&First from the corner", "&Pitch, at most")
    entries = [length_row(dialog, title, mm) for title, mm in zip(titles, _SPREAD[bench.unit], strict=True)]
    screw = _screw_rows(dialog, like)
    instead = QCheckBox("Instead of those that are there al&ong it")
    instead.setEnabled(like is not None)
    instead.toggled.connect(dialog.preview)
    dialog.form.add(instead)
    dialog.form.words("Otherwise screws that are there stay, and no place is drilled twice.", "faint")

    def change() -> Made:
        spread, chosen = Spread(*(entry.mm for entry in entries)), int(edge.currentData())
        form, backing = _form(screw, like)
        cleared = project
        if instead.isChecked():
            cleared = remove(project, option_id, _screws(plate, chosen, spread))
        if chosen == _EVERY:
            return attach_all_round(cleared, option_id, plate_id, spread, form, backing)
        return attach_along(cleared, option_id, plate_id, chosen, spread, form, backing)

    dialog.ask(change)


def screw_at_place(bench: Workbench, parent: QWidget) -> None:
    """One attach screw where it was measured; it begins with the hole of those that are there."""
    project, option_id, plate_id = start(bench)
    like = next(iter(project.option(option_id).plate(plate_id).attach_screws), None)
    dialog = EditDialog(bench, "Attach screw at a place", "Drill", parent, at=Dialog.SCREWS)
    x, y = length_row(dialog, "&x", 0.0), length_row(dialog, "&y", 0.0)
    screw = _screw_rows(dialog, like)

    def change() -> Made:
        form, backing = _form(screw, like)
        return add_attach_screw(project, option_id, plate_id, form, x.mm, y.mm, backing)

    dialog.ask(change)


def _screw_rows(dialog: EditDialog, like: AttachScrew | None) -> ScrewRows:
    if like is not None:
        return ScrewRows(dialog, like.form.diameter, like.form.fastener)
    size = _FIRST_SCREW[dialog.bench.unit]
    return ScrewRows(dialog, size.usual.diameter, size.diameter)


def _edge_row(dialog: EditDialog, plate: Plate) -> QComboBox:
    bench = dialog.bench
    box = ChoiceBox()
    box.setAccessibleName("Edge")
    box.addItem("every edge", _EVERY)
    for i, segment in enumerate(edges(outline_of(plate.outline))):
        box.addItem(f"{i + 1}: {edge_name(segment, bench.unit)}", i)
    if bench.outline.is_picked:
        box.setCurrentIndex(box.findData(bench.outline.finished_edge))
    box.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&Edge", box)
    return box


def _screws(plate: Plate, edge: int, spread: Spread) -> tuple[str, ...]:
    """The attach screws that new ones along this edge, or along all, would stand for."""
    return tuple(screw.id for screw in plate.attach_screws) if edge == _EVERY else screws_along(plate, edge, spread)


def _form(screw: ScrewRows, like: AttachScrew | None) -> tuple[HoleForm, Backing | None]:
    """The same hole and nut as those that are there, with a countersink they may have, while the sizes are theirs."""
    hole, fastener = screw.hole.mm, screw.fastener.mm
    if hole <= 0 or fastener <= 0:
        raise EditRefused("A hole and a fastener larger than 0 are expected.")
    if like is not None and (hole, fastener) == (like.form.diameter, like.form.fastener):
        return like.form, like.backing
    return HoleForm(diameter=hole, fastener=fastener), None
