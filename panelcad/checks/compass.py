"""The magnetic compass and what stands near it."""

import math
from collections.abc import Iterator

from panelcad.checks.finding import Bound, is_short, of_items, short_of
from panelcad.checks.parts import Kind
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import circle
from panelcad.geometry.gap import gap
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlacedItem, Prism

_WHY = "RTCA DO-160 section 15: from there on the unit turns a compass by at most one degree (from memory)"


@rule(
    "compass",
    title="Compass-safe distance",
    measures="from the magnetic compass to the nearest point of an item, against the distance its maker states",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.WARNING,),
    source=_WHY,
)
def compass(item: PlacedItem, setting: Setting) -> Iterator[Finding | Unknown]:
    stated, where = item.cutout.compass_safe, setting.surroundings.compass
    if where is None:
        if stated is not None:
            yield Unknown("compass", (item.item.id,), "where the compass is")
    elif stated is None:
        if item.behind:
            yield Unknown("compass", (item.item.id,), "its compass-safe distance")
    else:
        frame = setting.plate.frame
        axes = PlateFrame(Spot(frame.x, frame.y, frame.z), frame.tilt, frame.cant)
        spot = axes.to_plate(Spot(where.x, where.y, where.z))
        away = min((_away(body, spot) for body in item.bodies), default=math.inf)
        bound = Bound(stated.distance, Severity.WARNING, _WHY)
        if is_short(away, bound.required):
            fields = of_items(setting, item) | short_of(away, bound)
            yield Finding(rule="compass", problem="Item is too near the compass", **fields)


def _away(body: Prism, spot: Spot) -> float:
    """Distance in mm from a point to a prism."""
    aside = max(0.0, gap(body.footprint, circle(Point(spot.x, spot.y), 0.0)).distance)
    along = max(0.0, body.near - spot.z, spot.z - body.far)
    return math.hypot(aside, along)
