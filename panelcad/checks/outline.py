"""The sheet's edge: cuts that leave the sheet or come too near its edge, bezels that hang over it."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, missed
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.model.finding import Finding, Severity

_INSIDE: Final = "a cut lies inside the sheet or it is no cut"
_RESTS: Final = "a bezel rests on the sheet; common practice"


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
    measures="metal left between a cut's contour and the sheet's edge; old cuts are advice",
    looks_at=EachPair(Layer.CUTS, Layer.BEYOND, _reach),
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("outline_advised", "outline_least_thicknesses"),
)
def outline(cut: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(cut, edge, setting)
    bound = missed(near.distance, *_bounds(setting))
    if bound is None or near.distance < -TIE:
        return
    if cut.part.is_existing:
        bound = bound._replace(severity=Severity.ADVICE)
    yield near.finding("outline", "Cut is near the sheet's edge", bound)


@rule(
    "outside",
    title="Cut outside the sheet",
    measures="how far a cut reaches over the sheet's edge",
    looks_at=EachPair(Layer.CUTS, Layer.BEYOND, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_INSIDE,
)
def outside(cut: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(cut, edge, setting)
    if near.distance < -TIE:
        bound = Bound(0.0, Severity.ERROR, _INSIDE)
        yield near.finding("outside", "Cut reaches over the sheet's edge", bound, acceptable=False)


@rule(
    "bezel-over-edge",
    title="Bezel over the sheet's edge",
    measures="how far a bezel hangs over the sheet's edge",
    looks_at=EachPair(Layer.BEZELS, Layer.BEYOND, lambda _: 0.0),
    severities=(Severity.ERROR,),
    source=_RESTS,
)
def bezel_over_edge(bezel: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(bezel, edge, setting)
    if near.distance < -TIE:
        bound = Bound(0.0, Severity.ERROR, _RESTS)
        yield near.finding("bezel-over-edge", "Bezel hangs over the sheet's edge", bound)
