"""What a cutting file asks of the machine: entities, way to cut, pierces, smallest radius; what the sheet weighs."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.geometry.segment import Arc, Segment
from panelcad.model.alloy import KG_PER_LB, density
from panelcad.model.layout import layout
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_layers import CUT_THROUGH, MEANING, OUTLINES, Layer
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.outputs.dxf_relief import tight_corners
from panelcad.outputs.dxf_words import CAUTION
from panelcad.units import LengthUnit, format_length

_DEFAULTS: Final = DxfOptions()


@dataclass(frozen=True)
class CutReport:
    """Lengths in mm, weights in kg; `smallest_radius` is that of an inside corner or hole, None without any."""

    entities: dict[Layer, int]
    cut_lengths: dict[Layer, float]
    engraved_length: float
    pierces: int
    smallest_radius: float | None
    tight_corners: int
    width: float
    height: float
    sheet_weight: float | None

    @property
    def cut_length(self) -> float:
        return sum(self.cut_lengths.values())


def cut_report(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> CutReport:
    """The figures of the cutting file that these options give. Raises as `export_dxf`."""
    plan = cutting_plan(project, option, plate_id, options)
    plate = layout(project, option).plate(plate_id).plate
    cut = [loop for loop in plan.loops if loop.layer in CUT_THROUGH]
    x1, y1, x2, y2 = plate.outline.contour().bounds
    return CutReport(
        entities=dict(Counter(part.layer for part in plan.parts)),
        cut_lengths={layer: sum(lp.contour.length for lp in cut if lp.layer is layer) for layer in _used(cut)},
        engraved_length=sum(_length(stroke.track.segments) for stroke in plan.strokes if stroke.layer is Layer.ENGRAVE),
        pierces=len(cut),
        smallest_radius=min((r for loop in cut for r in _inside_radii(loop)), default=None),
        tight_corners=sum(tight_corners(loop, project.profile.cutter_diameter / 2) for loop in cut),
        width=x2 - x1,
        height=y2 - y1,
        sheet_weight=_weight(plan, plate),
    )


def report_text(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> str:
    """The report as lines of text in the project's unit, for a file beside the DXF."""
    figures, unit = cut_report(project, option, plate_id, options), project.unit
    plate = option.plate(plate_id)
    mark = options.stamp or stamp(project, option)
    rows = [
        ("Project", project.title),
        ("Option", f"{option.name} ({option.id})"),
        ("Plate", f"{plate.name} ({plate.id}), {plate.alloy}, {format_length(plate.thickness, unit)} thick"),
        ("Revision", mark.revision_text),
        ("Fingerprint", mark.fingerprint),
        ("Sheet's box", f"{format_length(figures.width, unit)} x {format_length(figures.height, unit)}"),
        ("Pierces", str(figures.pierces)),
        ("Way to cut", format_length(figures.cut_length, unit)),
        ("Way to engrave", format_length(figures.engraved_length, unit)),
        ("Smallest inside radius", _radius_text(figures, unit)),
        ("Inside corners", _corner_text(figures, project, options)),
        ("Sheet weight after cutting", _weight_text(figures.sheet_weight, unit, plate)),
    ]
    width = max(len(key) for key, _ in rows)
    lines = [f"{key + ':':<{width + 2}}{value}" for key, value in rows]
    return "\n".join(["CUTTING FILE REPORT", "", *lines, "", *_layer_lines(figures, unit), "", *CAUTION]) + "\n"


def _used(loops: list[Loop]) -> list[Layer]:
    return [layer for layer in Layer if any(loop.layer is layer for loop in loops)]


def _length(segments: Iterable[Segment]) -> float:
    return sum(segment.length for segment in segments)


def _inside_radii(loop: Loop) -> Iterator[float]:
    """Radii that a round cutter must get into: of holes, of an opening's corners, of notches in the outline."""
    metal_outside = loop.layer is not Layer.OUTLINE
    for segment in loop.contour.segments:
        if isinstance(segment, Arc) and (segment.sweep > 0.0) == metal_outside:
            yield segment.radius


def _weight(plan: Plan, plate: Plate) -> float | None:
    """Kg of the sheet with all its cuts, those that are in the metal already included; None for an unknown alloy."""
    heavy = density(plate.alloy)
    outline = [loop for loop in plan.loops if loop.layer in OUTLINES]
    if heavy is None or not outline:
        return None
    cuts = [lp for lp in plan.loops if lp.layer is Layer.EXISTING or (lp.layer in CUT_THROUGH and lp not in outline)]
    metal = sum(loop.contour.area for loop in outline) - sum(loop.contour.area for loop in cuts)
    return metal * plate.thickness * heavy


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
