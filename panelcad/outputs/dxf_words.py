"""The text on a cutting file's reference layer: project, revision, face, unit, one 'key: value' a line."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.datum_words import datum_of
from panelcad.drawing.describe import contour_text
from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point
from panelcad.model.bending import allowance
from panelcad.model.fingerprint import plate_fingerprint
from panelcad.model.found import dropped_lettering, enlarged_from, standing_lettering
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.part import part_text
from panelcad.model.plate import Plate, PlateState
from panelcad.model.profile import Profile
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp, stamp
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_options import (
    Content,
    CornerRelief,
    DxfOptions,
    DxfVersion,
    FaceUp,
    LeadIns,
    Origin,
    SmallHoles,
)
from panelcad.outputs.dxf_plan import Label
from panelcad.outputs.hole_names import HoleNames
from panelcad.units import LengthUnit, format_angle, format_length

HEIGHT: Final = 3.5
PITCH: Final = 6.0
GAP: Final = 10.0
"""Lettering in mm: height of a capital (ISO 3098 series), line pitch, and distance below the sheet."""
DRAFT_HEIGHT: Final = 10.0
"""mm, of ISO 3098 too: read at a glance, whatever part of the file is on the screen."""
DRAFT: Final = "DRAFT - NOT RELEASED"
NOT_RELEASED: Final = "Draft"
DRAFT_TEXT: Final = "for a trial in scrap only; no part for the aircraft is made from it"
"""What a draft's words and report say."""

CAUTION: Final = (
    "Planning aid, it approves nothing. Check every dimension against the maker's manual and the aircraft.",
    "Do not cut before the data are approved and a paper or scrap template has been tried in the aircraft.",
)
PIECE: Final = "Trial piece"
STOCK_ORIGIN: Final = "lower left corner of the stock"
FACE_NAME: Final = {
    FaceUp.FRONT: "front face up, as the pilot sees it",
    FaceUp.BACK: "BACK FACE UP, MIRRORED left to right",
}
UNIT_NAME: Final = {LengthUnit.MM: "millimetres", LengthUnit.INCH: "inches"}


def plate_words(project: Project, option: Option, plate: PlateLayout, options: DxfOptions) -> list[str]:
    """The lines of one plate's file, first to last."""
    sheet = plate.plate
    return [
        *_of_the_option(project, option, options.stamp or stamp(project, option)),
        f"Plate: {sheet.name} ({sheet.id}), {sheet.role.value}, {sheet.state.value}",
        *_of_the_part(option, (sheet,)),
        *_of_the_piece(options),
        f"Plate fingerprint: {plate_fingerprint(project, option, sheet)}",
        f"Origin: {origin_text(project, sheet, options)}",
        *([] if options.around else _of_a_used_sheet(project, option, plate)),
        *_of_the_writing(project, sheet, options),
    ]


def stock_words(
    project: Project, option: Option, plates: tuple[Plate, ...], parts: tuple[str, ...], options: DxfOptions
) -> list[str]:
    """The lines of a stock sheet's file; `parts` say which of the plates lies where."""
    return [
        *_of_the_option(project, option, options.stamp or stamp(project, option)),
        *_of_the_part(option, plates),
        f"Origin: {STOCK_ORIGIN}",
        *parts,
        *_of_the_writing(project, plates[0], options),
    ]


def _of_the_option(project: Project, option: Option, mark: Stamp) -> Iterator[str]:
    yield f"Project: {project.title}"
    yield f"Aircraft: {project.aircraft.registration}, {project.aircraft.type_name}"
    yield f"Option: {option.name} ({option.id})"
    yield f"Revision: {mark.revision_text}"
    if not mark.is_released:
        yield f"{NOT_RELEASED}: {DRAFT_TEXT}"
    yield f"Fingerprint: {mark.fingerprint}"


def _of_the_writing(project: Project, sheet: Plate, options: DxfOptions) -> Iterator[str]:
    unit = options.unit or project.unit
    yield f"Unit: {UNIT_NAME[unit]}"
    if options.version is DxfVersion.R12:
        yield f"Unit note: {no_unit_text(unit)}"
    yield f"Sheet: {sheet.alloy}, {format_length(sheet.thickness, project.unit)} thick"
    yield f"Face: {FACE_NAME[options.face_up]}"
    yield f"Sizes: {sizes_text(project)}, no allowance for the cutter's width"
    yield from _of_bends(project, sheet)
    yield from _of_the_cutter(project, options)
    yield from _of_contents(options)
    yield from (f"Caution: {line}" for line in CAUTION)


def labels(lines: list[str], box: Bounds) -> Iterator[Label]:
    """The lines set below the sheet, flush left with it."""
    left, bottom = box[0], box[1] - GAP - HEIGHT
    for number, line in enumerate(lines):
        yield Label(Layer.REFERENCE, line, Point(left, bottom - number * PITCH), HEIGHT)


def draft_labels(mark: Stamp, box: Bounds) -> Iterator[Label]:
    """What stands above the sheet in a file that is not of a release."""
    if not mark.is_released:
        yield Label(Layer.REFERENCE, DRAFT, Point(box[0], box[3] + GAP), DRAFT_HEIGHT)


def is_cut_from_stock(sheet: Plate, profile: Profile) -> bool:
    """Whether the sheet is made, and from stock whose size the shop's profile states."""
    return sheet.state is PlateState.NEW and None not in {profile.stock_width, profile.stock_height}


def origin_text(project: Project, sheet: Plate, options: DxfOptions) -> str:
    if options.origin is Origin.DATUM:
        return f"datum: {datum_of(project, sheet)}"
    if options.around:
        return "lower left corner of the trial piece"
    if is_cut_from_stock(sheet, project.profile):
        margin = format_length(project.profile.stock_margin, project.unit)
        return f"lower left corner of the stock; the sheet lies {margin} inside it"
    return "lower left corner of the sheet's box"


def sizes_text(project: Project) -> str:
    """Whether the sizes in a cutting file are finished sizes too."""
    thickness = project.profile.finish_thickness
    if thickness == 0.0:
        return "finished sizes, which are the cut sizes"
    finish = format_length(thickness, project.unit, places=4)
    return f"cut sizes for a finish {finish} thick on each surface; finished sizes stand on the drawing"


def _of_bends(project: Project, sheet: Plate) -> Iterator[str]:
    for number, bend in enumerate(sheet.bends, 1):
        radius, taken = (
            format_length(mm, project.unit)
            for mm in (bend.inside_radius, allowance(bend, sheet.thickness, project.profile.bend_neutral))
        )
        bent = f"{format_angle(bend.angle)} {bend.direction}".replace("°", " degrees")
        yield f"Bend {number}: {bent}, inside radius {radius}, bend allowance {taken}"


def _of_the_part(option: Option, plates: tuple[Plate, ...]) -> Iterator[str]:
    part = part_text(option, plates)
    if part:
        yield f"Part of the option: {part}"


def piece_text(options: DxfOptions) -> str:
    """Which cuts a trial piece holds."""
    return f"around {', '.join(options.around)}; its edge is no edge of the sheet"


def _of_the_piece(options: DxfOptions) -> Iterator[str]:
    if options.around:
        yield f"{PIECE}: {piece_text(options)}"


def _of_the_cutter(project: Project, options: DxfOptions) -> Iterator[str]:
    cutter = options.cutter_text(project.profile, project.unit)
    if options.corner_relief is CornerRelief.ROUND:
        yield f"Corner relief: round, for a cutter of {cutter}"
    if options.lead_ins is LeadIns.POINTS:
        yield f"Lead-in points: in the scrap, for a cutter of {cutter}"


def file_note(project: Project, plate: Plate, name: str, options: DxfOptions) -> str:
    """The sentence on a drawing that names a plate's cutting file and how it is written."""
    unit = options.unit or project.unit
    words = [f"numbers in {UNIT_NAME[unit]}", FACE_NAME[options.face_up]]
    words += [f"without {left_out_text(options)}, by choice"] if options.left_out else []
    words += [no_unit_text(unit)] if options.version is DxfVersion.R12 else []
    return f"{plate.name}: the cutting file is {name}; {'; '.join(words)}."


def no_unit_text(unit: LengthUnit) -> str:
    """What must be told to whoever opens an R12 file."""
    return f"DXF R12 states no unit; tell the machine that every number is in {UNIT_NAME[unit]}"


def _of_contents(options: DxfOptions) -> Iterator[str]:
    if options.face_up is FaceUp.BACK:
        yield "Engraving: on the front face, so not in this file"
    if options.left_out:
        yield f"Content: {', '.join(each.value for each in Content if each in options.content)}"
        yield f"Left out by choice: {left_out_text(options)}"
    if options.small_holes is SmallHoles.CENTRE_MARKS:
        yield "Small holes: centre marks, to be drilled"


def left_out_text(options: DxfOptions) -> str:
    """'drills, engraving'; empty where nothing is left out by choice."""
    return ", ".join(each.value for each in options.left_out)


def _of_a_used_sheet(project: Project, option: Option, plate: PlateLayout) -> Iterator[str]:
    if plate.plate.state is not PlateState.NEW:
        yield f"Metal: the sheet is there already, with all that lies on {Layer.OUTLINE_EXISTING} and {Layer.EXISTING}"
    for key, words in used_sheet_rows(project, option, plate):
        plain = words.replace("Ø", "dia. ").replace("×", "x")
        yield f"{key}: {plain}, for reference on {Layer.REFERENCE}"
    for key, words in removed_rows(project, plate):
        yield f"{key}: {words}"


def removed_rows(project: Project, plate: PlateLayout) -> list[tuple[str, str]]:
    """What is on a used sheet and goes without being cut."""
    gone = [line.text for line in dropped_lettering(project, plate)]
    return [("Old lettering", f"to be removed: {', '.join(gone)}")] if gone else []


def used_sheet_rows(project: Project, option: Option, plate: PlateLayout) -> list[tuple[str, str]]:
    """What of a used sheet is made larger, from what, and which lettering stays as it is."""
    names = HoleNames(layout(project, option))
    rows = [
        ("Enlarged", f"{names.named(feature)} from {contour_text(old.contour, project.unit)}")
        for feature, old in enlarged_from(project, plate).items()
    ]
    there = standing_lettering(project, plate.plate)
    if there:
        count, every = len(there), len(plate.plate.engravings)
        rows.append(("Lettering", f"{count} of {every} lines are there already and are not engraved again"))
    return rows
