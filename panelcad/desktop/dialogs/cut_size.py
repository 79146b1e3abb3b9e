"""The shape and size of a cut made to measure, in figures."""

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import start
from panelcad.desktop.dialogs.shape_entry import ShapeEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.shape_kinds import DESCRIBABLE
from panelcad.desktop.workbench import Workbench
from panelcad.editing.cut_size import own_opening, reshape_cut


def cut_size(bench: Workbench, parent: QWidget) -> None:
    """Of the cut that is selected."""
    project, option_id, _ = start(bench)
    cut_id = bench.selection.current
    opening = own_opening(project, bench.document.option, cut_id)
    if opening is None:
        return
    dialog = EditDialog(bench, "Shape and size of a cut", "Take", parent, at=Dialog.CUT_SIZE)
    shape = ShapeEntry(dialog.form, bench.unit, opening.shape, DESCRIBABLE)
    shape.edited.connect(dialog.preview)
    dialog.ask(lambda: reshape_cut(project, option_id, cut_id, shape.shape()))
