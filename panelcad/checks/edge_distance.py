"""Edge distance: metal around the centre of each screw and rivet, in nominal diameters D of the fastener."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from panelcad.checks.finding import Bound, is_short
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.parts_metal import edge_multiple
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Rounded
from panelcad.model.finding import Finding, Severity
from panelcad.model.hole import HoleKind
from panelcad.model.layout import FeatureKind

_LIMITS: Final = ("edge_distance_plain", "edge_distance_countersunk")


@rule(
    "edge-distance",
    title="Edge distance of a screw to another cut",
    measures="from the centre of a screw's or rivet's hole to the contour of another thing's cut",
    looks_at=EachPair(Layer.SCREWS, Layer.CUTS, lambda _: 0.0),
    severities=(Severity.ERROR, Severity.ADVICE),
    limits=_LIMITS,
)
def edge_distance(screw: Piece, cut: Piece, setting: Setting) -> Iterator[Finding]:
    if screw.owner != cut.owner:
        yield from _judge("edge-distance", screw, cut, setting)


@rule(
    "edge-distance-outline",
    title="Edge distance of a screw to the sheet's edge",
    measures="from the centre of a screw's or rivet's hole to the sheet's edge",
    looks_at=EachPair(Layer.SCREWS, Layer.BEYOND, lambda _: 0.0),
    severities=(Severity.ERROR, Severity.ADVICE),
    limits=_LIMITS,
)
def edge_distance_outline(screw: Piece, edge: Piece, setting: Setting) -> Iterator[Finding]:
    yield from _judge("edge-distance-outline", screw, edge, setting)


@rule(
    "rivet-pitch",
    title="Pitch of rivets",
    measures="from the centre of one nutplate's rivet to the centre of another's",
    looks_at=EachPair(Layer.SCREWS, Layer.SCREWS, lambda _: 0.0),
    severities=(Severity.ERROR, Severity.ADVICE),
    limits=("rivet_pitch",),
)
def rivet_pitch(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    if not _is_rivet(a) or not _is_rivet(b):
        return
    required = setting.profile.rivet_pitch * max(_fastener(a), _fastener(b))
    near = in_plan(_centre(a), _centre(b), setting)
    if is_short(near.distance, required):
        both_old = a.part.is_existing and b.part.is_existing
        bound = Bound(required, Severity.ADVICE if both_old else Severity.ERROR, "rivet_pitch")
        yield near.finding("rivet-pitch", "Rivets are too near each other", bound)


def _judge(rule_id: str, screw: Piece, other: Piece, setting: Setting) -> Iterator[Finding]:
    feature = screw.feature
    if feature is None:
        return
    required = edge_multiple(feature, setting) * _fastener(screw)
    near = in_plan(_centre(screw), other, setting)
    if is_short(near.distance, required):
        both_old = screw.part.is_existing and other.part.is_existing
        limit = _LIMITS[feature.form is not None and feature.form.kind is HoleKind.COUNTERSUNK]
        bound = Bound(required, Severity.ADVICE if both_old else Severity.ERROR, limit)
        yield near.finding(rule_id, "Edge distance of a screw is short", bound)


def _centre(screw: Piece) -> Piece:
    """The screw's centre as a piece of no size."""
    return replace(screw, contour=Rounded((screw.feature.centre,), 0.0)) if screw.feature else screw


def _fastener(screw: Piece) -> float:
    return screw.feature.form.fastener if screw.feature and screw.feature.form else 0.0


def _is_rivet(screw: Piece) -> bool:
    return screw.feature is not None and screw.feature.kind is FeatureKind.RIVET
