"""Bezels against each other."""

from collections.abc import Iterator

from panelcad.checks.finding import Bound, about, falls_short, is_short
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import gap
from panelcad.model.finding import Finding, Severity


@rule(
    "bezels",
    title="Bezels against each other",
    measures="gap between two bezels seen from the front",
    looks_at=EachPair(Layer.BEZELS, Layer.BEZELS, lambda setting: setting.profile.bezel_gap),
    severities=(Severity.ERROR,),
    limits=("bezel_gap",),
)
def bezels(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    left = gap(a.contour, b.contour)
    bound = Bound(setting.profile.bezel_gap, Severity.ERROR, "bezel_gap")
    if is_short(left.distance, bound.required):
        problem = "Bezels overlap" if left.distance < 0.0 else "Bezels are too near each other"
        yield Finding(rule="bezels", problem=problem, **about(setting, a, b), **falls_short(left, bound))
