"""Hardware of screws: countersinks, nutplates and shock mounts, and the tools that reach them."""

import math
from collections.abc import Iterator

from panelcad.checks.finding import Bound, is_short, of_features, short_of
from panelcad.checks.nearness import in_plan, in_space
from panelcad.checks.parts import Fitting, Kind, Layer, Piece
from panelcad.checks.parts_metal import Attach
from panelcad.checks.registry import EachPair, EachPart, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.model.cutout import Mounting
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.hole import HoleForm
from panelcad.model.layout import FeatureKind, PlacedCut
from panelcad.model.plate import CutState

_METAL = "a nutplate, a mount or a bracket lies on metal; common practice"


@rule(
    "countersink",
    title="Countersink in thin sheet",
    measures="straight wall left below a countersink: sheet thickness less the countersink's depth",
    looks_at=EachPart((Kind.CUT, Kind.ATTACH)),
    severities=(Severity.ERROR, Severity.WARNING),
    limits=("countersink_land",),
)
def countersink(source: PlacedCut | Attach, setting: Setting) -> Iterator[Finding]:
    if isinstance(source, PlacedCut) and source.cut.state is CutState.EXISTING:
        return
    for feature in source.features:
        if feature.form is None or feature.form.countersink is None:
            continue
        left = setting.thickness - countersink_depth(feature.form)
        required = setting.profile.countersink_land * setting.thickness
        if is_short(left, required):
            severity = Severity.ERROR if is_short(left, 0.0) else Severity.WARNING
            bound = Bound(required, severity, "countersink_land")
            problem = "Countersink cuts through the sheet" if left < -TIE else "Countersink leaves nearly a knife edge"
            cure = Cure(item=feature.owner, advice="use a smaller head, a dimple or a thicker sheet")
            what = of_features(setting, feature) | short_of(left, bound)
            yield Finding(rule="countersink", problem=problem, cure=cure, **what)


def countersink_depth(form: HoleForm) -> float:
    """Depth of the cone in mm: (D - d) / 2 over the tangent of half its included angle."""
    if form.countersink is None:
        return 0.0
    return (form.countersink.diameter - form.diameter) / 2 / math.tan(math.radians(form.countersink.angle / 2))


@rule(
    "hardware-metal",
    title="Nutplates and mounts on metal",
    measures="overlap of a nutplate's flange or a mount with an opening or another thing's cut",
    looks_at=EachPair(Layer.BACKS, Layer.CUTS, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_METAL,
)
def hardware_metal(hardware: Piece, cut: Piece, setting: Setting) -> Iterator[Finding]:
    is_own_hole = hardware.owner == cut.owner and cut.feature is not None and cut.feature.kind in _HOLES
    if is_own_hole:
        return
    near = in_plan(hardware, cut, setting)
    if is_short(near.distance, 0.0):
        bound = Bound(0.0, Severity.ERROR, _METAL)
        yield near.finding("hardware-metal", "Hardware behind the sheet hangs over a cut", bound)


_HOLES = frozenset({FeatureKind.HOLE, FeatureKind.RIVET, FeatureKind.ATTACH})


@rule(
    "hardware-edge",
    title="Nutplates and mounts inside the edge",
    measures="how far a nutplate's flange or a mount reaches over the sheet's edge",
    looks_at=EachPair(Layer.BACKS, Layer.BEYOND, lambda _: 0.0),
    severities=(Severity.WARNING,),
    source=_METAL,
)
def hardware_edge(hardware: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    if hardware.feature is None:
        return
    near = in_plan(hardware, edge, setting)
    if is_short(near.distance, 0.0):
        bound = Bound(0.0, Severity.WARNING, _METAL)
        yield near.finding("hardware-edge", "Nutplate reaches over the sheet's edge", bound)


@rule(
    "hardware-meets",
    title="Nutplates and mounts against each other and against ribs",
    measures="overlap of a nutplate or mount with another one or with an obstacle",
    looks_at=EachPair(Layer.BACKS, Layer.BACKS, lambda _: 0.0, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_METAL,
)
def hardware_meets(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_space(a, b, setting)
    if is_short(near.distance, 0.0):
        bound = Bound(0.0, Severity.ERROR, _METAL)
        yield near.finding("hardware-meets", "Hardware behind the sheet is in one place", bound)


@rule(
    "hardware-obstacle",
    title="Nutplates against ribs and tubes",
    measures="overlap of a cut's nutplate with an obstacle behind the sheet",
    looks_at=EachPair(Layer.BACKS, Layer.OBSTACLES, lambda _: 0.0, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_METAL,
)
def hardware_obstacle(hardware: Piece, obstacle: Piece, setting: Setting) -> Iterator[Finding]:
    if hardware.part.kind is Kind.ATTACH:
        return
    near = in_space(hardware, obstacle, setting)
    if is_short(near.distance, 0.0):
        bound = Bound(0.0, Severity.ERROR, _METAL)
        yield near.finding("hardware-obstacle", "Nutplate meets an obstacle", bound)


@rule(
    "tool-access",
    title="Screwdriver to front screws",
    measures="room over a front screw, a clamp's adjuster or an attach screw that a knob, lever or plug takes",
    looks_at=EachPair(Layer.TOOLS, Layer.BEFORE, lambda _: 0.0),
    severities=(Severity.WARNING,),
    limits=("tool_diameter",),
)
def tool_access(tool: Piece, knob: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(tool, knob, setting)
    if is_short(near.distance, 0.0):
        bound = Bound(0.0, Severity.WARNING, "tool_diameter")
        yield near.finding("tool-access", "A knob, lever or plug is in the way of a screwdriver", bound)


@rule(
    "clamp-adjuster",
    title="Adjuster of a clamp ring",
    measures="whether it is known where the tension screw of a clamp ring is reached from the front",
    looks_at=EachPart((Kind.FITTING,)),
    severities=(),
    source="the clamp's tension screw is reached from the front, at the instrument's lower right (Navy training text)",
)
def clamp_adjuster(fitting: Fitting, _: Setting) -> Iterator[Unknown]:
    for item in fitting.items:
        if item.mounting is Mounting.CLAMP_RING and not fitting.cut.holes:
            yield Unknown("clamp-adjuster", (item.item.id,), "the place of its clamp ring's tension screw")
