"""Dialogs on the sheet itself: an outline by its measures, more plates, splitting and joining, its data."""

from PySide6.QtWidgets import QCheckBox, QComboBox, QLineEdit, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import choice_row, length_row, start, text_row
from panelcad.desktop.dialogs.template_entry import TemplateEntry
from panelcad.desktop.workbench import Workbench
from panelcad.editing.extents import Axis
from panelcad.editing.made import Made
from panelcad.editing.outline import set_outline
from panelcad.editing.plates import add_plate, revise_plate
from panelcad.editing.split_plates import join_plates, split_plate
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.plate import Plate, PlateRole, PlateState
from panelcad.model.project import Project


def outline_by_measures(bench: Workbench, parent: QWidget) -> None:
    """The plate's outline as one of the templates."""
    project, option_id, plate_id = start(bench)
    dialog = EditDialog(bench, "Outline by its measures", "&Take", parent)
    fields = TemplateEntry(dialog)
    dialog.ask(lambda: set_outline(project, option_id, plate_id, fields.template.make(fields.values())))


def another_plate(bench: Workbench, parent: QWidget) -> None:
    """A plate more, drawn by its measures, of the shown plate's sheet."""
    project, option_id, plate_id = start(bench)
    like = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "Another plate", "&Add", parent)
    name = QLineEdit("Another plate")
    name.setAccessibleName("Name")
    dialog.form.row("&Name", name)
    fields = TemplateEntry(dialog)

    def change() -> Made:
        outline = fields.template.make(fields.values())
        label = name.text().strip() or "Another plate"
        state = PlateState.NEW
        plate = Plate(id="plate", name=label, state=state, outline=outline, thickness=like.thickness, alloy=like.alloy)
        return add_plate(project, option_id, plate)

    if dialog.ask(change):
        bench.stage.look_at_plate(bench.document.option.plates[-1].id)


def split_sheet(bench: Workbench, parent: QWidget) -> None:
    """The plate made two along an upright or a level line."""
    project, option_id, plate_id = start(bench)
    dialog = EditDialog(bench, "Split the plate", "&Split", parent)
    axis = QComboBox()
    axis.setAccessibleName("Line")
    axis.addItem("along an upright line", Axis.ACROSS)
    axis.addItem("along a level line", Axis.UP)
    axis.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&Line", axis)
    at = length_row(dialog, "&At", 0.0)
    dialog.form.words("What is on the plate goes to its side of the line; the line may not run through a cut.", "faint")
    dialog.ask(lambda: split_plate(project, option_id, plate_id, *_line(axis.currentData(), at.mm)))


def join_sheets(bench: Workbench, parent: QWidget) -> None:
    """The shown plate and another that lies against it made one."""
    project, option_id, plate_id = start(bench)
    others = [plate for plate in project.option(option_id).plates if plate.id != plate_id]
    dialog = EditDialog(bench, "Join plates", "&Join", parent)
    other = QComboBox()
    other.setAccessibleName("Other plate")
    for plate in others:
        other.addItem(plate.name, plate.id)
    other.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&With", other)

    def change() -> Project:
        if not others:
            raise EditRefused("There is no other plate.")
        return join_plates(project, option_id, plate_id, str(other.currentData()))

    dialog.ask(change)


def sheet_data(bench: Workbench, parent: QWidget) -> None:
    """What the plate is called, what it is made of, and what may be done to it."""
    project, option_id, plate_id = start(bench)
    plate = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "The sheet", "&Take", parent)
    name, alloy = text_row(dialog, "&Name", plate.name), text_row(dialog, "&Alloy", plate.alloy)
    thickness = length_row(dialog, "&Thickness", plate.thickness)
    state = choice_row(dialog, "&State", PlateState, plate.state)
    roles = [role for role in PlateRole if (role is PlateRole.OVERLAY) == (plate.over is not None)]
    role = choice_row(dialog, "&Role", roles, plate.role)
    flat = QCheckBox("Drawn as &flat pattern")
    flat.setChecked(plate.is_flat_pattern)
    flat.toggled.connect(dialog.preview)
    dialog.form.add(flat)
    dialog.form.words(
        "A kept plate is not touched, a reworked one keeps its old cuts, a new one is made whole.", "faint"
    )

    def change() -> Project:
        wanted = {
            "name": name.text().strip(),
            "alloy": alloy.text().strip(),
            "thickness": thickness.mm,
            "state": PlateState(state.currentData()),
            "role": PlateRole(role.currentData()),
            "is_flat_pattern": flat.isChecked(),
        }
        changes = {key: value for key, value in wanted.items() if value != getattr(plate, key)}
        state_first = {key: value for key, value in changes.items() if key == "state"}
        changed = revise_plate(project, option_id, plate_id, **state_first)
        return revise_plate(changed, option_id, plate_id, **changes)

    dialog.ask(change)


def _line(axis: Axis, at: float) -> tuple[Point, Point]:
    """Two points of the line, so that the left or upper part keeps the plate's name."""
    return (Point(at, 0.0), Point(at, 1.0)) if axis is Axis.ACROSS else (Point(0.0, at), Point(1.0, at))
