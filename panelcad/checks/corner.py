"""Inside corners that the cutter cannot reach, and sharp tongues of metal that are left."""

import math
from collections.abc import Iterator
from typing import Any, NamedTuple

from panelcad.checks.finding import Bound, is_short, of_features, short_of
from panelcad.checks.parts import Kind
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour, Rounded, reversed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.filed import filed
from panelcad.model.finding import Cure, Finding, Measure, Severity
from panelcad.model.layout import Feature, PlacedCut
from panelcad.model.plate import CutState, PlateState

SHARP = 60.0
"""Corners that turn less, in degrees, such as those of a chamfered case, stay within a tenth of the cutter's radius."""


class Corner(NamedTuple):
    """Where two pieces meet: the turn to the left in degrees of the contour that runs counter-clockwise."""

    at: Point
    turn: float


@rule(
    "inside-corner",
    title="Inside corner radius",
    measures="smallest inside radius of an opening or of a new sheet's edge against half the cutter's diameter",
    looks_at=EachPart((Kind.CUT, Kind.SHEET)),
    severities=(Severity.WARNING,),
    limits=("cutter_diameter",),
)
def inside_corner(source: PlacedCut | Contour, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.cutter_diameter / 2, Severity.WARNING, "cutter_diameter")
    for fields, contour in _to_be_cut(source, setting):
        radius, at = smallest_inside(contour)
        if is_short(radius, bound.required):
            cure = Cure(item=fields["items"][0], advice="give the corner a radius of {value}", value=bound.required)
            yield Finding(
                rule="inside-corner",
                problem="Inside corner is too sharp for the cutter",
                cure=cure,
                **fields | short_of(radius, bound) | {"where": (at,)},
            )


@rule(
    "sliver",
    title="Sliver",
    measures="angle of a tongue of metal that reaches into an opening, such as an old hole cut into leaves",
    looks_at=EachPart((Kind.CUT,)),
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("sliver_angle",),
)
def sliver(cut: PlacedCut, setting: Setting) -> Iterator[Finding]:
    is_old = cut.cut.state is CutState.EXISTING
    bound = Bound(setting.profile.sliver_angle, Severity.ADVICE if is_old else Severity.WARNING, "sliver_angle")
    for feature in cut.openings:
        sharpest = min(corners(feature.contour), key=lambda corner: corner.turn, default=None)
        if sharpest is not None and sharpest.turn < 0 and is_short(180 + sharpest.turn, bound.required):
            fields = of_features(setting, feature) | short_of(180 + sharpest.turn, bound)
            cure = Cure(item=cut.cut.id, advice="cut the tongue off")
            what = fields | {"where": (sharpest.at,), "measure": Measure.ANGLE, "cure": cure}
            yield Finding(rule="sliver", problem="A sharp tongue of metal is left", **what)


def smallest_inside(contour: Contour) -> tuple[float, Point]:
    """The smallest radius in mm at which the contour turns left, 0 at a sharp corner, and where."""
    if isinstance(contour, Rounded):
        corner = contour.core[0]
        return contour.radius, corner
    tight = [(0.0, corner.at) for corner in corners(contour) if corner.turn > SHARP]
    tight += [(arc.radius, arc.at(0.5)) for arc in contour.segments if isinstance(arc, Arc) and arc.sweep > 0]
    return min(tight, default=(math.inf, Point(0.0, 0.0)))


def corners(contour: Contour) -> Iterator[Corner]:
    """Every place where two pieces of a contour meet."""
    pieces = contour.segments
    for before, after in zip(pieces, (*pieces[1:], pieces[0]), strict=True):
        turn = math.degrees(_heading(after, 0.0) - _heading(before, 1.0))
        yield Corner(after.start, (turn + 180.0) % 360.0 - 180.0)


def _heading(piece: Segment, share: float) -> float:
    """The direction of travel in radians at the start or the end of a piece."""
    if isinstance(piece, Arc):
        return piece.start_angle + piece.sweep * share + math.copysign(math.pi / 2, piece.sweep)
    return math.atan2(piece.end.y - piece.start.y, piece.end.x - piece.start.x)


def _to_be_cut(source: PlacedCut | Contour, setting: Setting) -> Iterator[tuple[dict[str, Any], Contour]]:
    """New openings, and the edge of a new sheet seen from outside; drilled holes have no corners."""
    if isinstance(source, PlacedCut):
        if source.cut.state is not CutState.EXISTING:
            yield from ((of_features(setting, f), f.contour) for f in _cut_out(source))
    elif setting.plate.state is PlateState.NEW and not isinstance(source, Rounded):
        plate = setting.plate.id
        yield {"items": (plate,), "features": (f"{plate}/edge",), "plate": plate}, reversed_chain(source)


def _cut_out(cut: PlacedCut) -> Iterator[Feature]:
    """Openings, save round ones with a key or a flat, which is filed by hand."""
    by_hand = filed(cut)
    yield from (feature for feature in cut.openings if feature.id not in by_hand)
