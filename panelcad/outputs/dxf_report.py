"""What a cutting file asks of the machine: entities, way to cut, pierces, smallest radius; what the sheet weighs."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.display import union
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.alloy import density
from panelcad.model.layout import layout
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_layers import CUT_THROUGH, OUTLINES, Layer
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.outputs.dxf_relief import tight_corners

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
    return figures_of(plan, layout(project, option).plate(plate_id).plate, project.profile.cutter_diameter)


def figures_of(plan: Plan, plate: Plate, cutter_diameter: float) -> CutReport:
    """The figures of a plan whose plates are of the sheet that this one is of."""
    cut = [loop for loop in plan.loops if loop.layer in CUT_THROUGH]
    edges = [loop.contour for loop in plan.loops if loop.layer in OUTLINES] or [plate.outline.contour()]
    x1, y1, x2, y2 = union(edge.bounds for edge in edges)
    return CutReport(
        entities=dict(Counter(part.layer for part in plan.parts)),
        cut_lengths={layer: sum(lp.contour.length for lp in cut if lp.layer is layer) for layer in _used(cut)},
        engraved_length=sum(_length(stroke.track.segments) for stroke in plan.strokes if stroke.layer is Layer.ENGRAVE),
        pierces=len(cut),
        smallest_radius=min((r for loop in cut for r in _inside_radii(loop)), default=None),
        tight_corners=sum(tight_corners(loop, cutter_diameter / 2) for loop in cut),
        width=x2 - x1,
        height=y2 - y1,
        sheet_weight=_weight(plan, plate),
    )


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
