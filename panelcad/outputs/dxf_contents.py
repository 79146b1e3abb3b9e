"""From a laid-out plate to the plan of its cutting file, in the plate's own axes and finished sizes."""

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour, Vertex, circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line
from panelcad.model.filed import filed
from panelcad.model.found import old_contours, standing_lettering
from panelcad.model.layout import Feature, PlacedCut, PlateLayout
from panelcad.model.plate import CutState, Engraving, PlateState
from panelcad.model.project import Project
from panelcad.model.stroke_font import missing_letters, stroke_lettering
from panelcad.outputs.dxf_clean import cleaned
from panelcad.outputs.dxf_finish import before_finish
from panelcad.outputs.dxf_layers import Layer, layer_of
from panelcad.outputs.dxf_marks import with_centre_marks, with_lead_ins
from panelcad.outputs.dxf_options import EVERYTHING, Content, CornerRelief, DxfOptions, FaceUp, LeadIns, SmallHoles
from panelcad.outputs.dxf_plan import Loop, Plan, Stroke
from panelcad.outputs.dxf_relief import with_relief
from panelcad.outputs.trial_piece import piece_around

_CROSS: Final = 5.0
"""Half the length in mm of the cross at the datum."""
LAYERS_OF: Final = {
    Content.CUTS: frozenset({Layer.OUTLINE, Layer.OUTLINE_EXISTING, Layer.CUTOUT, Layer.LEAD_IN, Layer.BEND}),
    Content.DRILLS: frozenset(layer for layer in Layer if layer.startswith("DRILL")) | {Layer.CENTRE_MARK},
    Content.ENGRAVING: frozenset({Layer.ENGRAVE}),
    Content.REFERENCE: frozenset({Layer.EXISTING, Layer.HARDWARE, Layer.REFERENCE}),
}


def plate_plan(plate: PlateLayout, project: Project, options: DxfOptions) -> Plan:
    """What the plate's file holds, in the plate's own axes and in cut sizes. Raises `UnusableInput`."""
    profile = project.profile
    finished = finished_plan(piece_around(plate, options.around), project)
    if options.around:
        finished = replace(finished, strokes=())
    if options.face_up is FaceUp.BACK:
        finished = replace(finished, strokes=tuple(stroke for stroke in finished.strokes if not stroke.feature))
    plan = before_finish(finished, profile.finish_thickness)
    if options.corner_relief is CornerRelief.ROUND:
        plan = with_relief(plan, options.cutter_of(profile))
    plan = cleaned(plan, profile.smallest_segment, project.unit)
    if options.small_holes is SmallHoles.CENTRE_MARKS:
        plan = with_centre_marks(plan, profile.smallest_cut)
    if options.lead_ins is LeadIns.POINTS:
        plan = with_lead_ins(plan, options.cutter_of(profile))
    return chosen(plan, options.written)


def finished_plan(plate: PlateLayout, project: Project) -> Plan:
    """Everything on the plate in finished sizes; the outline first, then cuts in the plate's order."""
    return Plan(
        loops=(_outline(plate), *_cut_loops(plate), *_hardware(plate), *_old_contours(plate, project)),
        strokes=(*_engraving(plate, project), *_bends(plate), *_datum_cross()),
    )


def chosen(plan: Plan, content: frozenset[Content]) -> Plan:
    """What of a plan a file shall hold."""
    if content == EVERYTHING:
        return plan
    return plan.on_layers(frozenset().union(*(LAYERS_OF[each] for each in content)))


def _outline(plate: PlateLayout) -> Loop:
    is_new = plate.plate.state is PlateState.NEW
    return Loop(Layer.OUTLINE if is_new else Layer.OUTLINE_EXISTING, plate.outline, plate.plate.id)


def _cut_loops(plate: PlateLayout) -> Iterator[Loop]:
    was_there = plate.plate.state is not PlateState.NEW
    for feature in (*plate.inner, *plate.attach):
        yield _loop(feature, Layer.EXISTING if was_there else layer_of(feature))
    for cut in plate.cuts:
        by_hand = filed(cut)
        for feature in cut.features:
            layer = Layer.EXISTING if was_there and _is_in_the_metal(cut) else layer_of(feature)
            yield replace(_loop(feature, layer), is_filed=feature.id in by_hand)


def _old_contours(plate: PlateLayout, project: Project) -> Iterator[Loop]:
    """What the cuts that are enlarged were, for reference."""
    for old in old_contours(project, plate):
        yield Loop(Layer.REFERENCE, old.contour)


def _is_in_the_metal(cut: PlacedCut) -> bool:
    return cut.cut.state is CutState.EXISTING


def _loop(feature: Feature, layer: Layer) -> Loop:
    return Loop(layer, feature.contour, feature.id)


def _hardware(plate: PlateLayout) -> Iterator[Loop]:
    for feature in plate.features:
        form = feature.form
        if form is not None and form.countersink is not None:
            yield Loop(Layer.HARDWARE, circle(feature.centre, form.countersink.diameter), feature.id)
        if form is not None and form.nutplate is not None:
            yield Loop(Layer.HARDWARE, _flange(feature, plate), feature.id)


def _flange(screw: Feature, plate: PlateLayout) -> Contour:
    """The nutplate's flange, along the line through its two rivets."""
    nutplate = screw.form.nutplate if screw.form else None
    if nutplate is None:
        raise ValueError(f"{screw.id} has no nutplate")
    rivet = next(f for f in plate.features if f.owner == screw.owner and f.name == f"{screw.name} rivet 1")
    turn = math.degrees(math.atan2(rivet.centre.y - screw.centre.y, rivet.centre.x - screw.centre.x))
    flange = rectangle(Point(0.0, 0.0), nutplate.flange_length, nutplate.flange_width)
    return Placement(screw.centre.x, screw.centre.y, turn).contour(flange)


def _engraving(plate: PlateLayout, project: Project) -> Iterator[Stroke]:
    there = standing_lettering(project, plate.plate)
    for line_of_text in plate.plate.engravings:
        layer = Layer.REFERENCE if line_of_text.id in there else Layer.ENGRAVE
        _refuse_undrawn_letters(line_of_text)
        at = Point(line_of_text.x, line_of_text.y)
        for track in stroke_lettering(line_of_text.text, line_of_text.height, at, line_of_text.rotation):
            yield Stroke(layer, track, line_of_text.id)


def _refuse_undrawn_letters(line_of_text: Engraving) -> None:
    for letter in missing_letters(line_of_text.text):
        problem = f"the stroke font has no letter '{letter}'"
        raise UnusableInput("", f"lettering {line_of_text.id}", problem, "Latin letters, or Greek or Cyrillic capitals")


def _bends(plate: PlateLayout) -> Iterator[Stroke]:
    for bend in plate.plate.bends:
        yield Stroke(Layer.BEND, line(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)))


def _datum_cross() -> Iterator[Stroke]:
    for dx, dy in ((_CROSS, 0.0), (0.0, _CROSS)):
        yield Stroke(Layer.REFERENCE, Track((Vertex(-dx, -dy), Vertex(dx, dy))))
