"""What a cutting file asks of the machine: entities, way to cut, pierces, smallest radius; what the sheet weighs."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from panelcad.drawing.display import Bounds, union
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.alloy import density
from panelcad.model.layout import layout
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_layers import CUT_THROUGH, OUTLINES, Layer
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.outputs.dxf_relief import filed_corners, sharp_corners, tight_corners, unrelieved_corners

_DEFAULTS: Final = DxfOptions()
_ALIKE: Final = 1e-6
"""Radii within this many mm are the same one."""


@dataclass(frozen=True)
class Corners:
    """How many there are of some sort in each feature, by its id."""

    by_feature: dict[str, int]

    @property
    def count(self) -> int:
        return sum(self.by_feature.values())


@dataclass(frozen=True)
class CutReport:
    """Lengths in mm, weights in kg; `box` is that of the sheets' edges in the file's axes.

    `smallest_radius` is that of an inside corner or a hole, None without any, and `smallest_at` names the features that
    have it; `unrelieved` holds the corners too tight for the cutter by why they cannot be relieved.
    """

    entities: dict[Layer, int]
    cut_lengths: dict[Layer, float]
    engraved_length: float
    pierces: int
    smallest_radius: float | None
    smallest_at: tuple[str, ...]
    sharp: Corners
    filed: Corners
    tight: Corners
    unrelieved: dict[str, Corners]
    box: Bounds
    sheet_weight: float | None

    @property
    def cut_length(self) -> float:
        return sum(self.cut_lengths.values())


def cut_report(project: Project, option: Option, plate_id: str, options: DxfOptions = _DEFAULTS) -> CutReport:
    """The figures of the cutting file that these options give. Raises as `export_dxf`."""
    plate = layout(project, option).plate(plate_id).plate
    plan, sharp = (cutting_plan(project, option, plate_id, each) for each in (options, unrelieved_options(options)))
    return figures_of(plan, plate, options.cutter_of(project.profile), sharp)


def unrelieved_options(options: DxfOptions) -> DxfOptions:
    """The same choices without corner relief: what the corners are before it."""
    return replace(options, corner_relief=CornerRelief.NONE)


def figures_of(plan: Plan, plate: Plate, cutter_diameter: float, before_relief: Plan | None = None) -> CutReport:
    """The figures of a plan whose plates are of the sheet that this one is of."""
    cut, radius = _cut(plan), cutter_diameter / 2
    edges = [loop.contour for loop in plan.loops if loop.layer in OUTLINES] or [plate.outline.contour()]
    smallest = min((r for loop in cut for r in _inside_radii(loop)), default=None)
    return CutReport(
        entities=dict(Counter(part.layer for part in plan.parts)),
        cut_lengths={layer: sum(lp.contour.length for lp in cut if lp.layer is layer) for layer in _used(cut)},
        engraved_length=sum(_length(stroke.track.segments) for stroke in plan.strokes if stroke.layer is Layer.ENGRAVE),
        pierces=len(cut),
        smallest_radius=smallest,
        smallest_at=tuple(loop.feature for loop in cut if _has_radius(loop, smallest)),
        sharp=_corners((loop.feature, sharp_corners(loop)) for loop in cut),
        filed=_corners((loop.feature, filed_corners(loop)) for loop in cut),
        tight=_corners((loop.feature, tight_corners(loop, radius)) for loop in cut),
        unrelieved=_unrelieved(_cut(before_relief or plan), radius),
        box=union(edge.bounds for edge in edges),
        sheet_weight=_weight(plan, plate),
    )


def _cut(plan: Plan) -> list[Loop]:
    return [loop for loop in plan.loops if loop.layer in CUT_THROUGH]


def _corners(counts: Iterable[tuple[str, int]]) -> Corners:
    return Corners({feature: count for feature, count in counts if count})


def _unrelieved(cut: list[Loop], radius: float) -> dict[str, Corners]:
    reasons = [(loop.feature, reason) for loop in cut for reason in unrelieved_corners(loop, radius)]
    return {
        reason: Corners(dict(Counter(feature for feature, why in reasons if why == reason)))
        for reason in dict.fromkeys(why for _, why in reasons)
    }


def _used(loops: list[Loop]) -> list[Layer]:
    return [layer for layer in Layer if any(loop.layer is layer for loop in loops)]


def _length(segments: Iterable[Segment]) -> float:
    return sum(segment.length for segment in segments)


def _has_radius(loop: Loop, radius: float | None) -> bool:
    return radius is not None and any(abs(each - radius) < _ALIKE for each in _inside_radii(loop))


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
