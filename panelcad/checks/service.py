"""Service: a rack unit comes out toward the pilot, and a hand reaches the connector behind."""

import math
from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, of_items, short_of
from panelcad.checks.nearness import gap_to, in_space
from panelcad.checks.parts import Kind, Layer, Piece
from panelcad.checks.parts_fitted import body_names
from panelcad.checks.registry import EachNeighbourhood, EachPair, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import rectangle
from panelcad.geometry.gap import TIE
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlacedItem, Prism
from panelcad.model.surroundings import DepthLimit, ObstacleKind

SUPPORT_NEAR: Final = 6.35
"""A tray support within this many mm of a tray, in plan, holds it."""


def _slide(other: Layer) -> EachPair:
    return EachPair(Layer.SLIDE_OUT, other, _slide_clearance, _slide_clearance)


def _slide_clearance(setting: Setting) -> float:
    return setting.profile.slide_clearance


def _in_the_way(
    rule_id: str, problem: str, pair: tuple[Piece, Piece], bound: Bound, setting: Setting
) -> Iterator[Finding]:
    near = in_space(*pair, setting)
    if is_short(near.distance, bound.required):
        yield near.finding(rule_id, problem, bound)


@rule(
    "slide-out",
    title="Way out of a rack unit",
    measures="gap between a unit pulled out of its tray, and the bezel of something outside its stack",
    looks_at=_slide(Layer.BEZELS),
    severities=(Severity.ERROR,),
    limits=("slide_clearance",),
)
def slide_out(way: Piece, bezel: Piece, setting: Setting) -> Iterator[Finding]:
    if way.part.cut is not None and way.part.cut == bezel.part.cut:
        return
    bound = Bound(setting.profile.slide_clearance, Severity.ERROR, "slide_clearance")
    yield from _in_the_way("slide-out", "A bezel is in the way of a unit's tray", (way, bezel), bound, setting)


@rule(
    "slide-out-knob",
    title="Way out of a rack unit past knobs and plugs",
    measures="gap between a unit pulled out of its tray and a knob, lever or plug of something else",
    looks_at=_slide(Layer.BEFORE),
    severities=(Severity.WARNING,),
    limits=("slide_clearance",),
)
def slide_out_knob(way: Piece, knob: Piece, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.slide_clearance, Severity.WARNING, "slide_clearance")
    yield from _in_the_way("slide-out-knob", "A knob is in the way of a unit's tray", (way, knob), bound, setting)


@rule(
    "slide-out-keep-out",
    title="Way out of a rack unit past what hangs over",
    measures="gap between a unit pulled out of its tray and a keep-out such as the glareshield",
    looks_at=_slide(Layer.KEEP_OUTS),
    severities=(Severity.WARNING,),
    limits=("slide_clearance",),
)
def slide_out_keep_out(way: Piece, kept: Piece, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.slide_clearance, Severity.WARNING, "slide_clearance")
    problem = "A unit cannot be pulled straight out of its tray"
    yield from _in_the_way("slide-out-keep-out", problem, (way, kept), bound, setting)


@rule(
    "slide-out-moving",
    title="Way out of a rack unit past what moves",
    measures="gap between a unit pulled out of its tray and the yoke or a lever over its whole travel",
    looks_at=_slide(Layer.MOVING),
    severities=(Severity.ADVICE,),
    limits=("slide_clearance",),
)
def slide_out_moving(way: Piece, moving: Piece, setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.slide_clearance, Severity.ADVICE, "slide_clearance")
    problem = "A moving part must be held aside to pull a unit"
    yield from _in_the_way("slide-out-moving", problem, (way, moving), bound, setting)


@rule(
    "tray-support",
    title="Support at the back of a tray",
    measures="whether a tray that is deeper than it may be is held behind the panel too, by a tray support near it",
    looks_at=EachNeighbourhood(Kind.ITEM, Layer.BEHIND, (Layer.OBSTACLES,), lambda _: SUPPORT_NEAR),
    severities=(),
    limits=("tray_unsupported",),
)
def tray_support(item: PlacedItem, near: tuple[Piece, ...], setting: Setting) -> Iterator[Unknown]:
    trays = [body for body in item.behind if body.kind is BodyKind.TRAY]
    deepest = max((tray.far for tray in trays), default=0.0)
    supports = [each for each in near if each.obstacle is ObstacleKind.SUPPORT and each.far > deepest / 2]
    held = any(gap_to(each, tray.footprint).distance <= SUPPORT_NEAR + TIE for each in supports for tray in trays)
    if deepest > setting.profile.tray_unsupported + TIE and not held:
        yield Unknown("tray-support", (item.item.id,), "what holds the back of its tray")


def _hand_space(setting: Setting) -> float:
    return setting.profile.hand_space


@rule(
    "hand-space",
    title="A hand at the connector",
    measures="the widest free space beside or behind a connector, seen in its own directions",
    looks_at=EachNeighbourhood(
        Kind.ITEM, Layer.CONNECTORS, (Layer.BEHIND, Layer.OBSTACLES, Layer.MOVING, Layer.DEPTH_LIMITS), _hand_space
    ),
    severities=(Severity.WARNING,),
    limits=("hand_space",),
)
def hand_space(item: PlacedItem, near: tuple[Piece, ...], setting: Setting) -> Iterator[Finding]:
    bound = Bound(setting.profile.hand_space, Severity.WARNING, "hand_space")
    names = body_names(tuple(body.kind for body in item.bodies))
    for name, body, prism in zip(names, item.cutout.bodies, item.bodies, strict=True):
        if body.kind is not BodyKind.CONNECTOR:
            continue
        others = [p for p in near if p.near < prism.far and p.far > prism.near and p.part.kind is not Kind.DEPTH_LIMIT]
        beside = (_room(item, body, side, others, bound.required) for side in _SIDES)
        widest = _room_behind(prism, near)
        widest = max(widest, *beside) if is_short(widest, bound.required) else widest
        if is_short(widest, bound.required):
            fields = of_items(setting, item) | short_of(widest, bound)
            problem = "A hand does not reach the connector"
            yield Finding(rule="hand-space", problem=problem, features=(f"{item.item.id}/{name}",), **fields)


_SIDES = (0.0, 90.0, 180.0, 270.0)
_HALVINGS = 16


def _room_behind(prism: Prism, near: tuple[Piece, ...]) -> float:
    """Free depth in mm straight behind a connector, where the plug comes off."""
    behind = [piece for piece in near if piece.far > prism.far and gap_to(piece, prism.footprint).distance < 0.0]
    return min((_front_of(piece, prism) for piece in behind), default=math.inf) - prism.far


def _front_of(piece: Piece, prism: Prism) -> float:
    if isinstance(piece.part.source, DepthLimit):
        x1, y1, x2, y2 = prism.footprint.bounds
        return min(piece.part.source.depth_at(x, y) for x in (x1, x2) for y in (y1, y2))
    return max(piece.near, prism.far)


def _room(item: PlacedItem, body: Body, side: float, others: list[Piece], wanted: float) -> float:
    """Free width in mm, up to what is wanted, beside a connector on one of its sides."""
    if _is_free(item, body, side, others, wanted):
        return wanted
    low, high = 0.0, wanted
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if _is_free(item, body, side, others, middle) else (low, middle)
    return low


def _is_free(item: PlacedItem, body: Body, side: float, others: list[Piece], width: float) -> bool:
    """Whether a box of this width beside the connector, as long as that side, touches nothing."""
    x1, y1, x2, y2 = body.shape.contour().bounds
    across, along = (x2 - x1, y2 - y1) if side in {0.0, 180.0} else (y2 - y1, x2 - x1)
    box = rectangle(Point(across / 2 + width / 2, 0.0), width, along)
    middle = Placement((x1 + x2) / 2, (y1 + y2) / 2)
    at = item.placement.after(Placement(body.x, body.y, body.rotation)).after(middle).after(Placement(rotation=side))
    return all(gap_to(other, at.contour(box)).distance >= -TIE for other in others)
