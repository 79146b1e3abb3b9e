"""The report beside a cutting file, as lines of text in the project's unit."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.model.alloy import KG_PER_LB
from panelcad.model.layout import layout
from panelcad.model.part import part_text
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp, stamp
from panelcad.outputs.dxf import to_file_axes
from panelcad.outputs.dxf_finish import cut_outline
from panelcad.outputs.dxf_layers import MEANING, Layer
from panelcad.outputs.dxf_name import FileNames
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions, DxfVersion, FaceUp, LeadIns, SmallHoles
from panelcad.outputs.dxf_report import Corners, CutReport, cut_report, figures_of, unrelieved_options
from panelcad.outputs.dxf_stock import StockSheet, relaid
from panelcad.outputs.dxf_words import (
    CAUTION,
    DRAFT_TEXT,
    FACE_NAME,
    NOT_RELEASED,
    PIECE,
    STOCK_ORIGIN,
    UNIT_NAME,
    left_out_text,
    no_unit_text,
    origin_text,
    piece_text,
    removed_rows,
    sizes_text,
    used_sheet_rows,
)
from panelcad.outputs.hole_names import HoleNames
from panelcad.outputs.trial_piece import piece_around
from panelcad.units import LengthUnit, decimals, format_exact, format_length, format_number

_DEFAULTS: Final = DxfOptions()
_SHORT: Final = 6
"""A diameter of at most so many digits is told exactly."""
Rows = list[tuple[str, str]]


@dataclass(frozen=True)
class _Sheet:
    """What the figures of a file are of, and how it was written."""

    project: Project
    options: DxfOptions
    plate: Plate
    names: HoleNames

    @property
    def unit(self) -> LengthUnit:
        return self.project.unit


def report_text(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> str:
    """The report of one plate's file. Raises as `export_dxf`."""
    plate, mark = option.plate(plate_id), options.stamp or stamp(project, option)
    about = [
        ("File", FileNames(project, option, mark, options).plate(plate_id)),
        *_head(project, option, mark),
        ("Plate", f"{plate.name} ({plate.id})"),
        *([(PIECE, piece_text(options))] if options.around else []),
        *_part(option, (plate,)),
        *([] if options.around else _used_sheet(project, option, plate)),
        *_written_as(project, options, _plate_origin(project, option, plate, options)),
    ]
    sheet = _Sheet(project, options, plate, HoleNames(layout(project, option)))
    return _text(about, cut_report(project, option, plate_id, options), sheet)


def stock_report_text(
    project: Project, option: Option, sheet: StockSheet, options: DxfOptions = _DEFAULTS, name: str = ""
) -> str:
    """The report of a stock sheet's file, called `name` where that is no whole option's."""
    mark = options.stamp or stamp(project, option)
    about = [
        ("File", name or FileNames(project, option, mark, options).stock(sheet.number)),
        *_head(project, option, mark),
        ("Stock", f"sheet {sheet.number} of {sheet.count}"),
        ("Plates", ", ".join(part.plate for part in sheet.parts)),
        *_part(option, tuple(option.plate(part.plate) for part in sheet.parts)),
        *_written_as(project, options, STOCK_ORIGIN),
    ]
    before = relaid(project, option, sheet, unrelieved_options(options))
    figures = figures_of(sheet.plan, sheet.plate, options.cutter_of(project.profile), before)
    return _text(about, figures, _Sheet(project, options, sheet.plate, HoleNames(layout(project, option))))


def _used_sheet(project: Project, option: Option, plate: Plate) -> Rows:
    laid = layout(project, option).plate(plate.id)
    return [*used_sheet_rows(project, option, laid), *removed_rows(project, laid)]


def _head(project: Project, option: Option, mark: Stamp) -> Rows:
    return [
        ("Project", project.title),
        ("Option", f"{option.name} ({option.id})"),
        ("Revision", mark.revision_text),
        *([] if mark.is_released else [(NOT_RELEASED, DRAFT_TEXT)]),
        ("Fingerprint", mark.fingerprint),
    ]


def _part(option: Option, plates: tuple[Plate, ...]) -> Rows:
    part = part_text(option, plates)
    return [("Part of the option", part)] if part else []


def _written_as(project: Project, options: DxfOptions, origin: str) -> Rows:
    """The choices the file was written with."""
    unit = options.unit or project.unit
    marks = f"centre marks below {format_length(project.profile.smallest_cut, project.unit)}"
    cutter = f"for a cutter of {_cutter(project, options)}"
    return [
        ("DXF version", options.version.value),
        ("Unit of the file", UNIT_NAME[unit]),
        *([("Unit note", no_unit_text(unit))] if options.version is DxfVersion.R12 else []),
        ("Face", FACE_NAME[options.face_up]),
        ("Origin", origin),
        ("Left out", _left_out(options)),
        ("Finish", _finish_text(project)),
        ("Small holes", marks if options.small_holes is SmallHoles.CENTRE_MARKS else "circles, as all others"),
        ("Corner relief", f"round, {cutter}" if options.corner_relief is CornerRelief.ROUND else "none"),
        ("Lead-in points", f"in the scrap, {cutter}" if options.lead_ins is LeadIns.POINTS else "none"),
    ]


def _cutter(project: Project, options: DxfOptions) -> str:
    """Its diameter in the file's unit: exact where that is short, else to a hundredth of a millimetre or finer."""
    unit, diameter = options.unit or project.unit, options.cutter_of(project.profile)
    exact = format_exact(diameter, unit)
    return f"{exact} {unit.value}" if len(exact) <= _SHORT else format_length(diameter, unit, places=decimals(unit) + 1)


def _left_out(options: DxfOptions) -> str:
    chosen = left_out_text(options)
    by_choice = f"{chosen}, by choice" if chosen else ""
    lettering = "engraving, which is on the front face" if options.face_up is FaceUp.BACK else ""
    return "; ".join(words for words in (by_choice, lettering) if words) or "nothing"


def _finish_text(project: Project) -> str:
    thickness = project.profile.finish_thickness
    return f"{format_length(thickness, project.unit, places=4)} on each surface" if thickness else "none"


def _plate_origin(project: Project, option: Option, plate: Plate, options: DxfOptions) -> str:
    """Where the file's axes begin, and where the sheet or piece lies from there, in the project's unit."""
    laid, unit = piece_around(layout(project, option).plate(plate.id), options.around), project.unit
    edge = cut_outline(laid, project.profile.finish_thickness)
    left, bottom, right, top = to_file_axes(laid, project, options).contour(edge).bounds
    x = f"x {format_number(left, unit)} to {format_length(right, unit)}"
    y = f"y {format_number(bottom, unit)} to {format_length(top, unit)}"
    what = "piece" if options.around else "sheet"
    return f"{origin_text(project, plate, options)}; the {what} lies at {x}, {y}"


def _text(about: Rows, figures: CutReport, sheet: _Sheet) -> str:
    rows = [*about, *_figures(figures, sheet)]
    width = max(len(key) for key, _ in rows)
    lines = [f"{key + ':':<{width + 2}}{value}" for key, value in rows]
    layers = _layer_lines(figures, sheet.unit)
    return "\n".join(["CUTTING FILE REPORT", "", *lines, "", *layers, "", *CAUTION]) + "\n"


def _figures(figures: CutReport, sheet: _Sheet) -> Rows:
    plate, unit = sheet.plate, sheet.unit
    x1, y1, x2, y2 = figures.box
    return [
        ("Sheet", f"{plate.alloy}, {format_length(plate.thickness, unit)} thick"),
        ("Sizes", sizes_text(sheet.project)),
        ("Box of the edges", f"{format_length(x2 - x1, unit)} x {format_length(y2 - y1, unit)}"),
        ("Pierces", str(figures.pierces)),
        ("Way to cut", format_length(figures.cut_length, unit)),
        ("Way to engrave", format_length(figures.engraved_length, unit)),
        ("Smallest inside radius", _radius_text(figures, sheet)),
        ("Sharp inside corners", _in_holes(figures.sharp, sheet.names)),
        *([("Keys and flats to file", _in_holes(figures.filed, sheet.names))] if figures.filed.count else []),
        *_corner_rows(figures, sheet),
        ("Weight after these cuts", _weight_text(figures.sheet_weight, unit, plate)),
    ]


def _radius_text(figures: CutReport, sheet: _Sheet) -> str:
    if figures.smallest_radius is None:
        return "none"
    return f"{format_length(figures.smallest_radius, sheet.unit)}, in {sheet.names.listed(figures.smallest_at)}"


def _in_holes(corners: Corners, names: HoleNames) -> str:
    return f"{corners.count}, in {names.listed(corners.by_feature)}" if corners.count else "none"


def _corner_rows(figures: CutReport, sheet: _Sheet) -> Iterator[tuple[str, str]]:
    cutter = f"a cutter of {_cutter(sheet.project, sheet.options)}"
    if sheet.options.corner_relief is CornerRelief.NONE:
        yield "Inside corners", f"too tight for {cutter}: {_in_holes(figures.tight, sheet.names)}"
        return
    for reason, corners in figures.unrelieved.items():
        yield "Not relieved", f"{_in_holes(corners, sheet.names)}: {reason}"
    if not figures.unrelieved:
        yield "Not relieved", "none"


def _weight_text(kg: float | None, unit: LengthUnit, plate: Plate) -> str:
    if kg is None:
        return f"not known: no outline in the file, or no density for '{plate.alloy}'"
    return f"{kg / KG_PER_LB:.2f} lb" if unit is LengthUnit.INCH else f"{kg:.3f} kg"


def _layer_lines(figures: CutReport, unit: LengthUnit) -> Iterator[str]:
    for layer in Layer:
        if layer in figures.entities:
            way = figures.cut_lengths.get(layer)
            length = f"{format_length(way, unit):>14}" if way else " " * 14
            yield f"{layer.value:<24}{figures.entities[layer]:>5}{length}  {MEANING[layer]}"
