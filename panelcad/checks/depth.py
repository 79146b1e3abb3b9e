"""Depth: the firewall and sloping floors behind the panel."""

import math
from collections.abc import Iterator

import shapely

from panelcad.checks.finding import about, is_short
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import Side, polygon
from panelcad.model.finding import Finding, Severity
from panelcad.model.profile import limit_source
from panelcad.model.surroundings import DepthLimit


@rule(
    "depth",
    title="Depth to the firewall",
    measures="from the back of a body, at its worst corner, to a depth limit along z, less the panel's sway",
    looks_at=EachPair(Layer.BEHIND, Layer.DEPTH_LIMITS, lambda _: 0.0),
    severities=(Severity.ERROR,),
    limits=("depth_clearance",),
)
def depth(body: Piece, piece: Piece, setting: Setting) -> Iterator[Finding]:
    limit: DepthLimit = piece.part.source
    at = shallowest(body.contour, piece.contour, limit)
    if at is None:
        return
    sway = setting.plate.sway.z if setting.plate.sway else 0.0
    left = limit.depth_at(*at) - sway - body.far
    required = setting.profile.depth_clearance
    if is_short(left, required):
        yield Finding(
            rule="depth",
            severity=Severity.ERROR,
            problem="Body reaches too deep",
            measured=left,
            required=required,
            where=(at,),
            source=str(limit_source("depth_clearance")),
            acceptable=left >= 0.0,
            **about(setting, body, piece),
        )


def shallowest(body: Contour, footprint: Contour, limit: DepthLimit) -> Point | None:
    """The point of a body, where it is over the limit's footprint, at which the limit is nearest."""
    inside = polygon(footprint, Side.CIRCUMSCRIBED)
    whole = polygon(body, Side.CIRCUMSCRIBED)
    if shapely.contains_properly(inside, whole):
        return min(_corners(body, limit), key=lambda p: limit.depth_at(*p))
    shared = shapely.intersection(inside, whole)
    corners = [Point(*p) for p in shapely.get_coordinates(shared)]
    return min(corners, key=lambda p: limit.depth_at(*p), default=None)


def _corners(body: Contour, limit: DepthLimit) -> list[Point]:
    """The points of the true contour that lie farthest toward where the limit comes nearer."""
    steep = math.hypot(limit.slope_x, limit.slope_y)
    if isinstance(body, Rounded):
        reach = body.radius / steep if steep else 0.0
        return [Point(p.x - reach * limit.slope_x, p.y - reach * limit.slope_y) for p in body.core]
    return [Point(*p) for p in polygon(body, Side.CIRCUMSCRIBED).exterior.coords[:-1]]
