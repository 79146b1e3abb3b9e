"""The sheet's edge: cuts that leave the sheet or come too near its edge."""

from collections.abc import Iterator

from panelcad.checks.finding import Bound, about, falls_short, missed
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE, edge_gap
from panelcad.model.finding import Finding, Severity


def _reach(setting: Setting) -> float:
    return max(setting.profile.outline_advised, setting.outline_least)


def _bounds(setting: Setting) -> tuple[Bound, Bound]:
    return (
        Bound(setting.outline_least, Severity.ERROR, "outline_least_thicknesses"),
        Bound(setting.profile.outline_advised, Severity.WARNING, "outline_advised"),
    )


@rule(
    "outline",
    title="Metal between a cut and the edge",
    measures="metal left between a cut's contour and the sheet's edge",
    looks_at=EachPair(Layer.CUTS, Layer.BEYOND, _reach),
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("outline_advised", "outline_least_thicknesses"),
)
def outline(cut: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    left = edge_gap(cut.contour, setting.outline)
    bound = missed(left.distance, *_bounds(setting))
    if bound is None or left.distance < -TIE:
        return
    if cut.part.is_existing:
        bound = bound._replace(severity=Severity.ADVICE)
    problem = "Cut is near the sheet's edge"
    yield Finding(rule="outline", problem=problem, **about(setting, cut, edge), **falls_short(left, bound))


@rule(
    "outside",
    title="Cut outside the sheet",
    measures="how far a cut reaches over the sheet's edge",
    looks_at=EachPair(Layer.CUTS, Layer.BEYOND, lambda _: 0.0),
    severities=(Severity.ERROR,),
    limits=("outline_least_thicknesses",),
)
def outside(cut: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    left = edge_gap(cut.contour, setting.outline)
    if left.distance < -TIE:
        bound = Bound(0.0, Severity.ERROR, "outline_least_thicknesses")
        what = about(setting, cut, edge) | falls_short(left, bound)
        yield Finding(rule="outside", problem="Cut reaches over the sheet's edge", acceptable=False, **what)
