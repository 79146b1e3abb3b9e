"""Parts of metal: cuts, screws and their hardware, inner openings, bends and the sheet itself."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.checks.parts import Fitting, Kind, Layer, Part, Piece, Pieces
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour, Rounded, circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.hole import HoleKind, Nutplate
from panelcad.model.layout import Feature, FeatureKind, PlacedCut
from panelcad.model.plate import AttachScrew, Bend, CutState, PlateState

NUTPLATE_HEIGHT: Final = 6.35
"""How far a nutplate stands behind the sheet, in mm; from memory, on the safe side of common ones."""


@dataclass(frozen=True, eq=False)
class Attach:
    """An attach screw with its hole and its nutplate's rivet holes."""

    screw: AttachScrew
    features: tuple[Feature, ...]


def cut_part(placed: PlacedCut, _: Setting) -> Part:
    def pieces(part: Part) -> Pieces:
        return _contours(part, placed.features)

    return Part(Kind.CUT, placed.cut.id, placed, pieces, placed.cut.id, _is_old(placed))


def fitting_part(fitting: Fitting, setting: Setting) -> Part:
    """The screws of a cut are there when something uses it or it is still to be made."""

    def pieces(part: Part) -> Pieces:
        features = fitting.cut.features
        if fitting.items or not part.is_existing:
            return _all_hardware(part, features, setting)
        return ((Layer.OLD_CUTS, Piece(part, f.owner, f.name, f.contour, feature=f)) for f in features)

    cut = fitting.cut
    return Part(Kind.FITTING, cut.cut.id, fitting, pieces, cut.cut.id, _is_old(cut))


def attach_part(attach: Attach, setting: Setting) -> Part:
    def pieces(part: Part) -> Pieces:
        yield from _contours(part, attach.features)
        yield from _all_hardware(part, attach.features, setting)
        if attach.screw.backing is not None:
            backing, centre = attach.screw.backing, Point(attach.screw.x, attach.screw.y)
            near, far = setting.thickness, setting.thickness + backing.depth
            disc = circle(centre, backing.diameter)
            yield Layer.BACKS, Piece(part, part.id, backing.purpose, disc, near, far)

    return Part(Kind.ATTACH, attach.screw.id, attach, pieces, attach.screw.id, is_existing=_is_old_plate(setting))


def inner_part(feature: Feature, setting: Setting) -> Part:
    def pieces(part: Part) -> Pieces:
        return _contours(part, (feature,))

    return Part(Kind.INNER, feature.id, feature, pieces, feature.id, is_existing=_is_old_plate(setting))


def sheet_part(setting: Setting) -> Part:
    def pieces(part: Part) -> Pieces:
        yield Layer.BEYOND, Piece(part, part.id, "edge", setting.outline, is_edge=True)

    return Part(Kind.SHEET, setting.plate.id, setting.outline, pieces, is_existing=True)


def bend_part(bend: Bend, number: int, setting: Setting) -> Part:
    def pieces(part: Part) -> Pieces:
        line = Rounded((Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)), 0.0)
        yield Layer.BENDS, Piece(part, setting.plate.id, f"bend {number}", line)

    return Part(Kind.BEND, f"{setting.plate.id}/bend {number}", bend, pieces, is_existing=True)


def _is_old(placed: PlacedCut) -> bool:
    return placed.cut.state is CutState.EXISTING


def _is_old_plate(setting: Setting) -> bool:
    return setting.plate.state is not PlateState.NEW


def _contours(part: Part, features: tuple[Feature, ...]) -> Iterator[tuple[Layer, Piece]]:
    for feature in features:
        yield Layer.CUTS, Piece(part, feature.owner, feature.name, feature.contour, feature=feature)


def _all_hardware(part: Part, features: tuple[Feature, ...], setting: Setting) -> Iterator[tuple[Layer, Piece]]:
    for feature in features:
        if feature.form is not None:
            radius = edge_multiple(feature, setting) * feature.form.fastener
            yield Layer.SCREWS, _disc(part, feature, radius)
            if feature.kind is not FeatureKind.RIVET and feature.form.kind not in _NO_SCREW:
                yield from _screw(part, feature, setting)
            if feature.form.nutplate is not None:
                flange = _flange(feature, feature.form.nutplate, features)
                near, far = setting.thickness, setting.thickness + NUTPLATE_HEIGHT
                yield Layer.BACKS, Piece(part, feature.owner, feature.name, flange, near, far, feature)


_NO_SCREW: Final = frozenset({HoleKind.KEYED, HoleKind.FLATTED})


def _screw(part: Part, feature: Feature, setting: Setting) -> Iterator[tuple[Layer, Piece]]:
    form = feature.form
    if form is None:
        return
    countersink = form.countersink.diameter if form.countersink else 0.0
    yield Layer.HEADS, _disc(part, feature, max(form.head, countersink, form.diameter) / 2)
    yield Layer.TOOLS, _disc(part, feature, setting.profile.tool_diameter / 2)


def edge_multiple(feature: Feature, setting: Setting) -> float:
    """How many nominal diameters D of metal a screw or rivet needs around its centre."""
    is_countersunk = feature.form is not None and feature.form.kind is HoleKind.COUNTERSUNK
    profile = setting.profile
    return profile.edge_distance_countersunk if is_countersunk else profile.edge_distance_plain


def _disc(part: Part, feature: Feature, radius: float) -> Piece:
    return Piece(part, feature.owner, feature.name, circle(feature.centre, 2 * radius), feature=feature)


def _flange(feature: Feature, nutplate: Nutplate, features: tuple[Feature, ...]) -> Contour:
    """The nutplate's flange, along the line of its two rivets."""
    rivet = next(other for other in features if other.id == f"{feature.id} rivet 1")
    turn = math.degrees(math.atan2(rivet.centre.y - feature.centre.y, rivet.centre.x - feature.centre.x))
    radius = nutplate.flange_width / 2
    flange = rectangle(Point(0.0, 0.0), nutplate.flange_length, nutplate.flange_width, radius)
    return Placement(*feature.centre, turn).contour(flange)
