"""Dialogs on the sheet itself: an outline by its measures, more plates, splitting and joining, its data."""

from PySide6.QtWidgets import QCheckBox, QLineEdit, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import choice_row, length_row, start, text_row
from panelcad.desktop.dialogs.template_entry import TemplateEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.outline import set_outline
from panelcad.editing.plates import add_plate, revise_plate
from panelcad.editing.split_plates import join_plates, split_plate
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.plate import Plate, PlateRole, PlateState
from panelcad.model.project import Project
from panelcad.units import rounded


def outline_by_measures(bench: Workbench, parent: QWidget) -> None:
    """The plate's outline as one of the templates."""
    project, option_id, plate_id = start(bench)
    dialog = EditDialog(bench, "Outline by its measures", "Take", parent, at=Dialog.OUTLINE_MEASURES)
    fields = TemplateEntry(dialog)
    bench.stage.previewed.connect(bench.view.keep_in_sight)
    try:
        dialog.ask(lambda: set_outline(project, option_id, plate_id, fields.template.make(fields.values())))
    finally:
        bench.stage.previewed.disconnect(bench.view.keep_in_sight)


def another_plate(bench: Workbench, parent: QWidget) -> None:
    """A plate more, drawn by its measures, of the shown plate's sheet."""
    project, option_id, plate_id = start(bench)
    like = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "Another plate", "Add", parent, at=Dialog.ANOTHER_PLATE)
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


def split_sheet(bench: Workbench, parent: QWidget, drawn: tuple[Point, Point] | None = None) -> None:
    """The plate made two along the straight line through two points."""
    project, option_id, plate_id = start(bench)
    dialog = EditDialog(bench, "Split the plate", "Split", parent, at=Dialog.SPLIT)
    x1, y1, x2, y2 = bench.stage.layout().plate(plate_id).outline.bounds
    first, second = drawn or (Point((x1 + x2) / 2, y1), Point((x1 + x2) / 2, y2))
    ways = (("&From x", first.x), ("From &y", first.y), ("&To x", second.x), ("T&o y", second.y))
    fields = [length_row(dialog, title, rounded(mm)) for title, mm in ways]
    dialog.form.words(
        "What is on the plate goes to its side of the line; the line may not run through a cut. "
        "The part to the left of the way keeps the plate's name and is shown.",
        "faint",
    )

    def change() -> Made:
        from_x, from_y, to_x, to_y = (field.mm for field in fields)
        return split_plate(project, option_id, plate_id, Point(from_x, from_y), Point(to_x, to_y))

    dialog.ask(change)


def join_sheets(bench: Workbench, parent: QWidget) -> None:
    """The shown plate and another that lies against it made one."""
    project, option_id, plate_id = start(bench)
    others = [plate for plate in project.option(option_id).plates if plate.id != plate_id]
    dialog = EditDialog(bench, "Join plates", "Join", parent, at=Dialog.JOIN)
    other = ChoiceBox()
    other.setAccessibleName("Other plate")
    for plate in others:
        other.addItem(plate.name, plate.id)
    other.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&With", other)

    def change() -> Made:
        if not others:
            raise EditRefused("There is no other plate.")
        return join_plates(project, option_id, plate_id, str(other.currentData()))

    name = project.option(option_id).plate(plate_id).name
    if dialog.ask(change):
        bench.stage.look_at_plate(next(plate.id for plate in bench.document.option.plates if plate.name == name))


def sheet_data(bench: Workbench, parent: QWidget) -> None:
    """What the plate is called, what it is made of, and what may be done to it."""
    project, option_id, plate_id = start(bench)
    plate = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "The sheet", "Take", parent, at=Dialog.SHEET)
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
