"""Bezels against each other, and over screws that somebody must reach."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Kind, Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.model.finding import Finding, Severity

_REACHED: Final = "a screw that is driven from the front is reached from the front; common practice"


@rule(
    "bezels",
    title="Bezels against each other",
    measures="gap between two bezels seen from the front",
    looks_at=EachPair(Layer.BEZELS, Layer.BEZELS, lambda setting: setting.profile.bezel_gap),
    severities=(Severity.ERROR,),
    limits=("bezel_gap",),
)
def bezels(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(a, b, setting)
    bound = Bound(setting.profile.bezel_gap, Severity.ERROR, "bezel_gap")
    if is_short(near.distance, bound.required):
        problem = "Bezels overlap" if near.distance < -TIE else "Bezels are too near each other"
        yield near.finding("bezels", problem, bound)


@rule(
    "screw-under-bezel",
    title="Screw under a bezel",
    measures="how far the head of a screw, or of an attach screw, lies under the bezel of something else",
    looks_at=EachPair(Layer.HEADS, Layer.BEZELS, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_REACHED,
)
def screw_under_bezel(head: Piece, bezel: Piece, setting: Setting) -> Iterator[Finding]:
    if head.part.cut == bezel.part.cut:
        return
    near = in_plan(head, bezel, setting)
    if is_short(near.distance, 0.0):
        is_attach = head.part.kind is Kind.ATTACH
        problem = "Attach screw lies under a bezel" if is_attach else "Screw lies under a bezel"
        yield near.finding("screw-under-bezel", problem, Bound(0.0, Severity.ERROR, _REACHED))
