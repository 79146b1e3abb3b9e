"""Bodies behind the panel against each other and against what stands there, in two and a half dimensions.

Two prisms interfere when the gap in plan and the gap along z are both less than the clearance.
"""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, missed
from panelcad.checks.nearness import Nearness, in_space
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Finding, Severity
from panelcad.model.surroundings import ObstacleKind

WIRED: Final = frozenset({BodyKind.CONNECTOR, BodyKind.HARNESS})


def _between(a: Layer, b: Layer, limit: str) -> EachPair:
    def clearance(setting: Setting) -> float:
        return float(getattr(setting.profile, limit))

    return EachPair(a, b, clearance, clearance)


def interfering(rule_id: str, problem: str, near: Nearness, bound: Bound) -> Iterator[Finding]:
    """A finding where the bound is missed; bodies in one place can never be right."""
    if is_short(near.distance, bound.required):
        yield near.finding(rule_id, problem, bound, acceptable=near.distance >= -TIE)


@rule(
    "bodies",
    title="Cases against each other",
    measures="gap between cases, trays, connectors, harness bends, hoses and cooling air of two items outside a stack",
    looks_at=_between(Layer.BEHIND, Layer.BEHIND, "body_clearance"),
    severities=(Severity.ERROR,),
    limits=("body_clearance",),
)
def bodies(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    if a.part.cut is None or a.part.cut != b.part.cut:
        bound = Bound(setting.profile.body_clearance, Severity.ERROR, "body_clearance")
        yield from interfering("bodies", "Bodies behind interfere", in_space(a, b, setting), bound)


@rule(
    "obstacles",
    title="Cases against ribs, tubes and ducts",
    measures="gap between a body behind and an obstacle, less the panel's sway; a tray's support may touch it",
    looks_at=_between(Layer.BEHIND, Layer.OBSTACLES, "obstacle_clearance"),
    severities=(Severity.ERROR,),
    limits=("obstacle_clearance",),
)
def obstacles(body: Piece, obstacle: Piece, setting: Setting) -> Iterator[Finding]:
    is_support = obstacle.obstacle is ObstacleKind.SUPPORT
    required = 0.0 if is_support else setting.profile.obstacle_clearance
    bound = Bound(required, Severity.ERROR, "obstacle_clearance")
    yield from interfering("obstacles", "Body meets an obstacle", in_space(body, obstacle, setting), bound)


@rule(
    "moving-behind",
    title="Cases against moving parts",
    measures="gap between a body behind and a moving part over its whole travel, less the panel's sway",
    looks_at=_between(Layer.BEHIND, Layer.MOVING, "moving_clearance"),
    severities=(Severity.ERROR,),
    limits=("moving_clearance",),
)
def moving_behind(body: Piece, moving: Piece, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.moving_clearance, Severity.ERROR, "moving_clearance")
    yield from interfering(
        "moving-behind", "Body is in the way of a moving part", in_space(body, moving, setting), bound
    )


@rule(
    "hardware-behind",
    title="Cases against hardware behind",
    measures="gap between a body behind and a nutplate, a shock mount or a bracket of something else",
    looks_at=_between(Layer.BEHIND, Layer.BACKS, "body_clearance"),
    severities=(Severity.ERROR,),
    limits=("body_clearance",),
)
def hardware_behind(body: Piece, hardware: Piece, setting: Setting) -> Iterator[Finding]:
    if body.part.cut is None or body.part.cut != hardware.part.cut:
        bound = Bound(setting.profile.body_clearance, Severity.ERROR, "body_clearance")
        near = in_space(body, hardware, setting)
        yield from interfering("hardware-behind", "Body meets hardware behind the sheet", near, bound)


def _wire_reach(setting: Setting) -> float:
    return max(setting.profile.cable_advised, setting.profile.fluid_line_advised)


@rule(
    "wire-separation",
    title="Wires to control cables and fluid lines",
    measures="gap between a connector or harness bend and a control cable, or a fuel, fluid or oxygen line",
    looks_at=EachPair(Layer.BEHIND, Layer.OBSTACLES, _wire_reach, _wire_reach),
    severities=(Severity.ERROR, Severity.WARNING),
    limits=("cable_advised", "moving_clearance", "fluid_line_advised", "fluid_line_least"),
)
def wire_separation(body: Piece, obstacle: Piece, setting: Setting) -> Iterator[Finding]:
    if body.body not in WIRED:
        return
    near = in_space(body, obstacle, setting)
    bound = missed(near.distance, *_separations(obstacle, setting))
    if bound is not None:
        yield near.finding("wire-separation", "Wires come too near", bound)


def _separations(obstacle: Piece, setting: Setting) -> tuple[Bound, ...]:
    profile = setting.profile
    if obstacle.obstacle is ObstacleKind.CABLE:
        return (
            Bound(profile.moving_clearance, Severity.ERROR, "moving_clearance"),
            Bound(profile.cable_advised, Severity.WARNING, "cable_advised"),
        )
    if obstacle.obstacle is ObstacleKind.FLUID_LINE:
        return (
            Bound(profile.fluid_line_least, Severity.ERROR, "fluid_line_least"),
            Bound(profile.fluid_line_advised, Severity.WARNING, "fluid_line_advised"),
        )
    return ()
