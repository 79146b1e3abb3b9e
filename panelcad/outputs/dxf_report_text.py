"""The report beside a cutting file, as lines of text in the project's unit."""

from collections.abc import Iterator
from typing import Final

from panelcad.model.alloy import KG_PER_LB
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.dxf_layers import MEANING, Layer
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions
from panelcad.outputs.dxf_report import CutReport, cut_report, figures_of
from panelcad.outputs.dxf_stock import StockSheet
from panelcad.outputs.dxf_words import CAUTION, sizes_text
from panelcad.units import LengthUnit, format_length

_DEFAULTS: Final = DxfOptions()
Rows = list[tuple[str, str]]


def report_text(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> str:
    """The report of one plate's file. Raises as `export_dxf`."""
    plate = option.plate(plate_id)
    head = [*_head(project, option, options), ("Plate", f"{plate.name} ({plate.id})")]
    return _text(head, cut_report(project, option, plate_id, options), plate, project, options)


def stock_report_text(project: Project, option: Option, sheet: StockSheet, options: DxfOptions = _DEFAULTS) -> str:
    """The report of a stock sheet's file."""
    plates = ", ".join(part.plate for part in sheet.parts)
    stock = [("Stock", f"sheet {sheet.number} of {sheet.count}"), ("Plates", plates)]
    figures = figures_of(sheet.plan, sheet.plate, project.profile.cutter_diameter)
    return _text([*_head(project, option, options), *stock], figures, sheet.plate, project, options)


def _head(project: Project, option: Option, options: DxfOptions) -> Rows:
    mark = options.stamp or stamp(project, option)
    return [
        ("Project", project.title),
        ("Option", f"{option.name} ({option.id})"),
        ("Revision", mark.revision_text),
        ("Fingerprint", mark.fingerprint),
    ]


def _text(head: Rows, figures: CutReport, plate: Plate, project: Project, options: DxfOptions) -> str:
    rows = [*head, *_figures(figures, plate, project, options)]
    width = max(len(key) for key, _ in rows)
    lines = [f"{key + ':':<{width + 2}}{value}" for key, value in rows]
    layers = _layer_lines(figures, project.unit)
    return "\n".join(["CUTTING FILE REPORT", "", *lines, "", *layers, "", *CAUTION]) + "\n"


def _figures(figures: CutReport, plate: Plate, project: Project, options: DxfOptions) -> Rows:
    unit = project.unit
    return [
        ("Sheet", f"{plate.alloy}, {format_length(plate.thickness, unit)} thick"),
        ("Sizes", sizes_text(project)),
        ("Box of the edges", f"{format_length(figures.width, unit)} x {format_length(figures.height, unit)}"),
        ("Pierces", str(figures.pierces)),
        ("Way to cut", format_length(figures.cut_length, unit)),
        ("Way to engrave", format_length(figures.engraved_length, unit)),
        ("Smallest inside radius", _radius_text(figures, unit)),
        ("Inside corners", _corner_text(figures, project, options)),
        ("Weight after cutting", _weight_text(figures.sheet_weight, unit, plate)),
    ]


def _radius_text(figures: CutReport, unit: LengthUnit) -> str:
    return "none" if figures.smallest_radius is None else format_length(figures.smallest_radius, unit)


def _corner_text(figures: CutReport, project: Project, options: DxfOptions) -> str:
    cutter = format_length(project.profile.cutter_diameter, project.unit)
    if options.corner_relief is CornerRelief.ROUND:
        return f"relieved for a cutter of {cutter}; {figures.tight_corners} could not be"
    return f"{figures.tight_corners} too tight for a cutter of {cutter}"


def _weight_text(kg: float | None, unit: LengthUnit, plate: Plate) -> str:
    if kg is None:
        return f"not known: no density for '{plate.alloy}'"
    return f"{kg / KG_PER_LB:.2f} lb" if unit is LengthUnit.INCH else f"{kg:.3f} kg"


def _layer_lines(figures: CutReport, unit: LengthUnit) -> Iterator[str]:
    for layer in Layer:
        if layer in figures.entities:
            way = figures.cut_lengths.get(layer)
            length = f"{format_length(way, unit):>14}" if way else " " * 14
            yield f"{layer.value:<24}{figures.entities[layer]:>5}{length}  {MEANING[layer]}"
