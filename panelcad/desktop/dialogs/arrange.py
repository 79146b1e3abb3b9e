"""Dialogs that arrange: a row or grid, gaps in figures, a stack, the basic T."""

from PySide6.QtWidgets import QCheckBox, QSpinBox, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import AngleEntry, LengthEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.left_out import left_out_words
from panelcad.desktop.workbench import Workbench
from panelcad.editing.align import set_gaps
from panelcad.editing.clip_marks import attached
from panelcad.editing.duplicate import Grid, duplicate_in_grid, least_pitches, not_repeated
from panelcad.editing.extents import Axis
from panelcad.editing.made import Made
from panelcad.editing.rotate import turn_as_one, turn_each


def repeat_in_grid(bench: Workbench, parent: QWidget) -> None:
    """What is selected, in columns and rows with a pitch; labels and notes go along if that is ticked."""
    ids, project, option_id = bench.selection.ids, bench.document.project, bench.document.option_id
    option = bench.document.option
    belongs = attached(project, option, ids)
    plate = bench.stage.layout().plate(bench.stage.plate_id)
    beside, above = least_pitches(plate, {*ids, *belongs}, project.profile)
    dialog = EditDialog(bench, "Repeat in a row or grid", "Repeat", parent, at=Dialog.ARRANGE_GRID)
    columns, rows = _count("Columns", 2), _count("Rows", 1)
    across = LengthEntry("Pitch across", beside, bench.unit)
    up = LengthEntry("Pitch up", above, bench.unit)
    along = QCheckBox(f"Labels and &notes that belong to them, {len(belongs)}")
    along.setChecked(True)
    dialog.form.row("&Columns", columns)
    dialog.form.row("&Rows", rows)
    dialog.form.row(f"Pitch &across, {bench.unit.value}", across)
    dialog.form.row(f"Pitch &up, {bench.unit.value}", up)
    if belongs:
        dialog.form.row("Along", along)
    dialog.form.words("A negative pitch goes left or down.", "faint")
    behind = dialog.line_above_buttons()
    for signal in (columns.valueChanged, rows.valueChanged, across.edited, up.edited, along.toggled):
        signal.connect(dialog.preview)

    def repeated() -> Made:
        chosen = (*ids, *belongs) if along.isChecked() else ids
        behind.clear()
        made = duplicate_in_grid(project, option_id, chosen, Grid(columns.value(), rows.value(), across.mm, up.mm))
        behind.setText(left_out_words(option, not_repeated(project, option_id, chosen)).removeprefix(", ").capitalize())
        return made

    dialog.ask(repeated)


def gaps_in_figures(bench: Workbench, parent: QWidget) -> None:
    """What is selected, one after the other with a gap between bezels."""
    ids, project, option_id = bench.selection.ids, bench.document.project, bench.document.option_id
    dialog = EditDialog(bench, "Set the gaps", "Set", parent, at=Dialog.ARRANGE_GAPS)
    axis = ChoiceBox()
    axis.addItem("from left to right", Axis.ACROSS)
    axis.addItem("from below upwards", Axis.UP)
    gap = LengthEntry(
        "Gap between bezels", project.profile.bezel_gap or bench.settings.step("fine", bench.unit), bench.unit
    )
    dialog.form.row("&Row", axis)
    dialog.form.row(f"&Gap, {bench.unit.value}", gap)
    axis.activated.connect(lambda _: dialog.preview())
    gap.edited.connect(dialog.preview)
    dialog.ask(lambda: set_gaps(project, option_id, ids, axis.currentData(), gap.mm))


def turn_in_figures(bench: Workbench, parent: QWidget) -> None:
    """What is selected, by an angle: as one about the common centre, or each thing about its own."""
    ids, project, option_id = bench.selection.ids, bench.document.project, bench.document.option_id
    dialog = EditDialog(bench, "Turn by an angle", "Turn", parent, at=Dialog.TURN)
    angle = AngleEntry("Turn by, degrees", 15.0)
    about = ChoiceBox()
    about.addItem("their common centre, as one", turn_as_one)
    about.addItem("its own centre, each", turn_each)
    dialog.form.row("&Turn by, °", angle)
    dialog.form.row("&About", about)
    dialog.form.words("Counter-clockwise as the pilot sees it; a negative angle turns clockwise.", "faint")
    about.setEnabled(len(ids) > 1)
    about.activated.connect(lambda _: dialog.preview())
    angle.edited.connect(dialog.preview)
    dialog.ask(lambda: about.currentData()(project, option_id, ids, angle.degrees))


def _count(name: str, value: int) -> QSpinBox:
    box = QSpinBox()
    box.setRange(1, 100)
    box.setValue(value)
    box.setAccessibleName(name)
    return box
