"""A straight flange on an edge of the sheet: which edge, how high, how far it is bent and which way."""

from typing import Final

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edge_names import edge_name, side
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import length_row, start, text_row
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.plates import set_bends
from panelcad.errors import EditRefused
from panelcad.geometry.segment import Line
from panelcad.model.plate import Bend, Plate
from panelcad.model.project import Project
from panelcad.units import LengthUnit, parse_angle

_SHORTEST: Final = 10.0
"""mm; a shorter edge carries no flange."""
_WAYS: Final = ("away from the pilot", "toward the pilot")
_FLANGE: Final = {LengthUnit.INCH: 0.75 * 25.4, LengthUnit.MM: 20.0}
_RADIUS_IN_THICKNESSES: Final = 4.0
"""A radius to begin with: AC 43.13-1B table 4-6 gives 3 to 5 thicknesses for 2024-T3 of 0.064 in."""


def straight_edges(plate: Plate) -> list[Line]:
    """The edges that may carry a flange, counter-clockwise."""
    segments = plate.outline.contour().segments
    return [edge for edge in segments if isinstance(edge, Line) and edge.length >= _SHORTEST]


def bend_edge(bench: Workbench, parent: QWidget) -> None:
    """A flange more on the plate that is looked at; it is laid out flat afterwards, for cutting."""
    project, option_id, plate_id = start(bench)
    plate = project.option(option_id).plate(plate_id)
    dialog = EditDialog(bench, "Flange on an edge", "Add", parent, at=Dialog.FLANGE)
    edges = straight_edges(plate)
    edge = _edge_row(dialog, edges, bench.unit)
    height = length_row(dialog, "&Height of the flange", _FLANGE[bench.unit])
    radius = length_row(dialog, "&Inside radius", _RADIUS_IN_THICKNESSES * plate.thickness)
    angle = text_row(dialog, "An&gle", "90°")
    way = _way_row(dialog)
    dialog.form.words(
        "The height is measured from the bend's mould line. 'Lay out flat' makes the flat pattern of it, which a "
        "release needs.",
        "faint",
    )

    def change() -> Project:
        if not edges:
            raise EditRefused(f"Plate '{plate.name}' has no straight edge for a flange.")
        line = edges[edge.currentIndex()]
        ends = {"x1": line.start.x, "y1": line.start.y, "x2": line.end.x, "y2": line.end.y}
        bent = {"angle": _degrees(angle), "inside_radius": radius.mm, "direction": way.currentText()}
        bend = Bend.model_validate({**ends, **bent, "flange": height.mm})
        return set_bends(project, option_id, plate_id, (*plate.bends, bend))

    dialog.ask(change)


def _degrees(field: QLineEdit) -> float:
    degrees = parse_angle(field.text())
    if not 0.0 < degrees <= 165.0:
        raise EditRefused("A flange is bent by more than 0° and at most 165°.")
    return degrees


def _edge_row(dialog: EditDialog, edges: list[Line], unit: LengthUnit) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName("Edge")
    box.addItems([edge_name(edge, unit) for edge in edges])
    longest_below = max(range(len(edges)), key=lambda i: (side(edges[i]) == "lower", edges[i].length), default=-1)
    box.setCurrentIndex(longest_below)
    box.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&Edge", box)
    return box


def _way_row(dialog: EditDialog) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName("Bent")
    box.addItems(_WAYS)
    box.activated.connect(lambda _: dialog.preview())
    dialog.form.row("&Bent", box)
    return box
