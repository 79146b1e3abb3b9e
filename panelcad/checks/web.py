"""Web: the metal left between cuts."""

from collections.abc import Iterator
from itertools import combinations
from typing import Final

from panelcad.checks.finding import Bound, is_short, missed, of_features
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Kind, Layer, Piece
from panelcad.checks.registry import EachPair, EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE, gap
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import Feature, FeatureKind, PlacedCut
from panelcad.model.plate import CutState

_OWN: Final = "the cutout's own least web"


def _reach(setting: Setting) -> float:
    return max(setting.profile.web_advised, setting.web_least)


def _bounds(setting: Setting) -> tuple[Bound, Bound]:
    return (
        Bound(setting.web_least, Severity.ERROR, "web_least_thicknesses"),
        Bound(setting.profile.web_advised, Severity.WARNING, "web_advised"),
    )


@rule(
    "web",
    title="Web between cuts",
    measures="metal left between cuts of different things; old cuts among themselves are advice",
    looks_at=EachPair(Layer.CUTS, Layer.CUTS, _reach),
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("web_advised", "web_least_thicknesses"),
)
def web(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(a, b, setting)
    bound = missed(near.distance, *_bounds(setting))
    if bound is None or near.distance < -TIE:
        return
    if a.part.is_existing and b.part.is_existing:
        bound = bound._replace(severity=Severity.ADVICE)
    yield near.finding("web", "Web between cuts is narrow", bound)


@rule(
    "own-web",
    title="Web within one cutout",
    measures="metal left between a cutout's opening and its own holes",
    looks_at=EachPart((Kind.CUT,)),
    severities=(Severity.ERROR, Severity.ADVICE),
    source=_OWN,
)
def own_web(cut: PlacedCut, setting: Setting) -> Iterator[Finding]:
    worst = min(_webs(cut), key=lambda row: round(row[0], 6), default=None)
    if worst is None or not is_short(worst[0], cut.own_web):
        return
    distance, a, b = worst
    left = gap(a.contour, b.contour)
    yield Finding(
        rule="own-web",
        problem="Cuts of one cutout overlap" if distance < -TIE else "Web within a cutout is narrow",
        severity=Severity.ADVICE if cut.cut.state is CutState.EXISTING else Severity.ERROR,
        measured=distance,
        required=cut.own_web,
        source=_OWN,
        acceptable=distance >= -TIE,
        **of_features(setting, a, b) | {"where": (left.a, left.b)},
    )


def _webs(cut: PlacedCut) -> Iterator[tuple[float, Feature, Feature]]:
    for a, b in combinations(cut.features, 2):
        if FeatureKind.RIVET not in {a.kind, b.kind}:
            yield gap(a.contour, b.contour).distance, a, b
