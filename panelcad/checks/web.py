"""Web: the metal left between the cuts of different things."""

from collections.abc import Iterator

from panelcad.checks.finding import Bound, about, falls_short, missed
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import gap
from panelcad.model.finding import Finding, Severity


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
    measures="metal left between the contours of two cuts; a cutout's own screw holes have their own limit",
    looks_at=EachPair(Layer.CUTS, Layer.CUTS, _reach),
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("web_advised", "web_least_thicknesses"),
)
def web(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    left = gap(a.contour, b.contour)
    bound = missed(left.distance, *_bounds(setting))
    if bound is None or left.distance <= 0.0:
        return
    if a.part.is_existing and b.part.is_existing:
        bound = bound._replace(severity=Severity.ADVICE)
    yield Finding(rule="web", problem="Web between cuts is narrow", **about(setting, a, b), **falls_short(left, bound))
