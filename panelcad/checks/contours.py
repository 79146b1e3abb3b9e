"""Contours that cannot be cut: overlapping, doubled, self-crossing, or too small."""

import math
from collections.abc import Iterator

import shapely

from panelcad.checks.finding import Bound, about, is_short, of_features, short_of
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Kind, Layer, Piece
from panelcad.checks.parts_metal import Attach
from panelcad.checks.registry import EachPair, EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Chain, Contour
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point, middle
from panelcad.geometry.polygon import polygon
from panelcad.geometry.sweep import least_width
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import Feature, PlacedCut

SAME = 0.01
"""Two contours whose boxes differ by less than this many mm on every side are one contour cut twice."""
_NEVER = "two cuts never share metal; a contour never crosses itself"


@rule(
    "overlap",
    title="Overlapping cuts",
    measures="how far two cuts overlap; an old cut that lies wholly in a new one is gone and passes",
    looks_at=EachPair(Layer.CUTS, Layer.CUTS, lambda _: 0.0),
    severities=(Severity.ERROR, Severity.ADVICE),
    source=_NEVER,
)
def overlap(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_plan(a, b, setting)
    if near.distance >= -TIE or _is_doubled(a, b):
        return
    yield near.finding("overlap", "Cuts overlap", _bound(a, b), acceptable=_both_old(a, b))


@rule(
    "doubled",
    title="Doubled cut",
    measures="two cuts of one size at one place",
    looks_at=EachPair(Layer.CUTS, Layer.CUTS, lambda _: 0.0),
    severities=(Severity.ERROR, Severity.ADVICE),
    source="a contour is cut once",
)
def doubled(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    if _is_doubled(a, b):
        centre = Point(*a.contour.bounds[:2])
        yield Finding(
            rule="doubled",
            severity=_bound(a, b).severity,
            problem="The same cut is there twice",
            where=(middle(centre, Point(*a.contour.bounds[2:])),),
            source="a contour is cut once",
            acceptable=_both_old(a, b),
            **about(setting, a, b),
        )


@rule(
    "self-crossing",
    title="Self-crossing contour",
    measures="whether a contour crosses itself",
    looks_at=EachPart((Kind.CUT, Kind.INNER, Kind.SHEET)),
    severities=(Severity.ERROR,),
    source=_NEVER,
)
def self_crossing(source: PlacedCut | Feature | Contour, setting: Setting) -> Iterator[Finding]:
    for owner, name, contour in _named_contours(source, setting):
        where = _crossing(contour)
        if where is not None:
            yield Finding(
                rule="self-crossing",
                severity=Severity.ERROR,
                items=(owner,),
                features=(name,),
                plate=setting.plate.id,
                problem="Contour crosses itself",
                where=(where,),
                source=_NEVER,
                acceptable=False,
            )


@rule(
    "tiny-cut",
    title="Tiny cut",
    measures="least width of a cut, at any angle",
    looks_at=EachPart((Kind.CUT, Kind.ATTACH, Kind.INNER)),
    severities=(Severity.WARNING,),
    limits=("smallest_cut",),
)
def tiny_cut(source: PlacedCut | Attach | Feature, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.smallest_cut, Severity.WARNING, "smallest_cut")
    for feature in _features(source):
        size = least_width(feature.contour)
        if is_short(size, bound.required):
            fields = of_features(setting, feature) | short_of(size, bound)
            yield Finding(rule="tiny-cut", problem="Cut is tiny", **fields)


@rule(
    "short-piece",
    title="Very short piece of a contour",
    measures="length of the shortest line or arc of a contour",
    looks_at=EachPart((Kind.CUT, Kind.INNER)),
    severities=(Severity.WARNING,),
    limits=("smallest_segment",),
)
def short_piece(source: PlacedCut | Feature, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.smallest_segment, Severity.WARNING, "smallest_segment")
    for feature in _features(source):
        if not isinstance(feature.contour, Chain):
            continue
        size = min(segment.length for segment in feature.contour.segments)
        if is_short(size, bound.required):
            fields = of_features(setting, feature) | short_of(size, bound)
            yield Finding(rule="short-piece", problem="Contour has a very short piece", **fields)


def _features(source: PlacedCut | Attach | Feature) -> tuple[Feature, ...]:
    return (source,) if isinstance(source, Feature) else source.features


def _named_contours(source: PlacedCut | Feature | Contour, setting: Setting) -> Iterator[tuple[str, str, Contour]]:
    if isinstance(source, PlacedCut | Feature):
        yield from ((feature.owner, feature.id, feature.contour) for feature in _features(source))
    else:
        yield setting.plate.id, f"{setting.plate.id}/edge", source


def _crossing(contour: Contour) -> Point | None:
    if not isinstance(contour, Chain):
        return None
    shape = polygon(contour)
    if shapely.is_valid(shape):
        return None
    said = shapely.is_valid_reason(shape)
    x, _, y = said.partition("[")[2].rstrip("]").partition(" ")
    return Point(float(x), float(y)) if y else contour.vertices[0].point


def _bound(a: Piece, b: Piece) -> Bound:
    return Bound(0.0, Severity.ADVICE if _both_old(a, b) else Severity.ERROR, _NEVER)


def _both_old(a: Piece, b: Piece) -> bool:
    return a.part.is_existing and b.part.is_existing


def _is_doubled(a: Piece, b: Piece) -> bool:
    sides = zip(a.contour.bounds, b.contour.bounds, strict=True)
    same_box = all(abs(one - other) < SAME for one, other in sides)
    return same_box and math.isclose(a.contour.area, b.contour.area, rel_tol=1e-3)
