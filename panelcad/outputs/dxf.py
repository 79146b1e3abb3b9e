"""The cutting file of one plate: one closed contour per cut, true arcs, one unit, layers that say what is cut."""

from dataclasses import replace
from pathlib import Path
from typing import Final

from panelcad.drawing.display import Bounds
from panelcad.errors import UnusableInput
from panelcad.geometry.placement import Placement
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.dxf_contents import plate_plan
from panelcad.outputs.dxf_finish import cut_outline
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL, Layer
from panelcad.outputs.dxf_options import DxfOptions, FaceUp, Origin
from panelcad.outputs.dxf_plan import Plan
from panelcad.outputs.dxf_words import HEIGHT, draft_labels, is_cut_from_stock, labels, plate_words
from panelcad.outputs.dxf_writer import dxf_bytes
from panelcad.outputs.trial_piece import piece_around
from panelcad.store.atomic import write_atomically

_DEFAULTS: Final = DxfOptions()
_WORTH_A_FILE: Final = CUT_THROUGH | IN_THE_METAL | {Layer.BEND, Layer.CENTRE_MARK, Layer.ENGRAVE}
_LETTER_WIDTH: Final = 0.9
"""Of a capital's height, for the extents of text in whatever font the reader has."""


def export_dxf(
    project: Project, option: Option, plate_id: str, path: Path | str, options: DxfOptions = _DEFAULTS
) -> None:
    """Write the cutting file of one plate; an older file stays whole until the new one is complete.

    Raises `UnknownName` for a plate the option does not have, `UnusableInput` where nothing is chosen or the file
    cannot be written.
    """
    content = dxf_content(project, option, plate_id, options)
    file = Path(path)
    try:
        write_atomically(file, content)
    except OSError as error:
        problem = f"it cannot be written ({error.strerror})"
        raise UnusableInput(str(file), "", problem, "a folder one may write in") from error


def dxf_content(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> bytes:
    """The bytes of one plate's cutting file: the same project and options give the same bytes."""
    mark = options.stamp or stamp(project, option)
    plan = cutting_plan(project, option, plate_id, replace(options, stamp=mark))
    if not any(part.layer in _WORTH_A_FILE for part in plan.parts):
        problem = "nothing is left to write with these choices"
        raise UnusableInput("", f"plate {plate_id}", problem, "something of it to cut, drill, mark or engrave")
    return dxf_bytes(plan, whole_box(plan), options.version, options.unit or project.unit, mark.on)


def cutting_plan(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> Plan:
    """What the plate's file holds, in mm and in the file's axes."""
    plate = layout(project, option).plate(plate_id)
    placement = to_file_axes(plate, project, options)
    placed = plate_plan(plate, project, options).placed(placement)
    lines = plate_words(project, option, plate, options)
    box = placement.contour(piece_around(plate, options.around).outline).bounds
    mark = options.stamp or stamp(project, option)
    return placed.joined(Plan(labels=(*labels(lines, box), *draft_labels(mark, box))))


def to_file_axes(plate: PlateLayout, project: Project, options: DxfOptions) -> Placement:
    """From the plate's axes to the file's: mirrored for the back face, then moved to the chosen origin.

    Where the profile states the stock, a sheet that is made lies its margin inside the stock's lower left corner.
    """
    mirrored = options.face_up is FaceUp.BACK
    piece = piece_around(plate, options.around)
    if options.origin is Origin.DATUM:
        return Placement(mirrored=mirrored)
    edge = cut_outline(piece, project.profile.finish_thickness)
    left, bottom, _, _ = Placement(mirrored=mirrored).contour(edge).bounds
    margin = project.profile.stock_margin if piece is plate and is_cut_from_stock(plate.plate, project.profile) else 0.0
    return Placement(margin - left, margin - bottom, mirrored=mirrored)


def whole_box(plan: Plan) -> Bounds:
    """The box of a plan, its labels included at an ordinary letter's width."""
    x1, y1, x2, y2 = plan.bounds
    for label in plan.labels:
        x1, y1 = min(x1, label.at.x), min(y1, label.at.y - HEIGHT / 2)
        x2 = max(x2, label.at.x + len(label.text) * label.height * _LETTER_WIDTH)
        y2 = max(y2, label.at.y + label.height)
    return x1, y1, x2, y2
