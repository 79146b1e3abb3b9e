"""How near two pieces are, in plan and in depth, from their true lines and arcs."""

import math
from collections.abc import Callable, Iterator
from typing import Any, Final, NamedTuple

from panelcad.checks.cures import moves_apart
from panelcad.checks.finding import Bound, Curable, about
from panelcad.checks.parts import Piece
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import Gap, edge_gap, gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.finding import Finding
from panelcad.model.travel import Turn

_STEP: Final = 2.0
"""Degrees between the angles at which a turning part is looked at before the nearest is sought exactly."""
_FINE: Final = 1e-4


class Nearness(NamedTuple):
    """Two pieces and the gap between them in mm; where depth counts, the larger of both gaps is what parts them."""

    a: Piece
    b: Piece
    setting: Setting
    plan: Gap
    depth: float = -math.inf

    @property
    def distance(self) -> float:
        return max(self.plan.distance, self.depth)

    def finding(self, rule: str, problem: str, bound: Bound, **more: Any) -> Finding:
        """The finding that these are nearer than the bound allows, with the moves that would cure it."""
        fields = {
            "severity": bound.severity,
            "measured": self.distance,
            "required": bound.required,
            "where": (self.plan.a, self.plan.b),
            "source": bound.why,
        }
        found = Curable(rule=rule, problem=problem, **fields | about(self.setting, self.a, self.b) | more)
        return found.by(lambda: moves_apart(self.a, self.b, bound.required, gap_to))


def in_plan(a: Piece, b: Piece, setting: Setting) -> Nearness:
    """How near two pieces are seen from the front."""
    return Nearness(a, b, setting, gap_to(b, a.contour))


def in_space(a: Piece, b: Piece, setting: Setting) -> Nearness:
    """How near two prisms are: they are clear of each other by the larger of the gaps in plan and along z."""
    return Nearness(a, b, setting, gap_to(b, a.contour), max(a.near - b.far, b.near - a.far))


def gap_to(piece: Piece, contour: Contour) -> Gap:
    """The gap from a contour to a piece: to the sheet's edge around it, or to a turning part where it comes nearest."""
    if piece.is_edge:
        return edge_gap(contour, piece.contour)
    if piece.turning is not None:
        return _nearest_turn(*piece.turning, contour)
    return gap(contour, piece.contour)


def _nearest_turn(part: Contour, turn: Turn, contour: Contour) -> Gap:
    """The smallest gap over the whole turn: looked for every two degrees, then narrowed down."""

    def at(angle: float) -> Gap:
        return gap(contour, turned(part, turn, angle))

    best = min(_angles(turn), key=lambda angle: at(angle).distance)
    low, high = max(turn.least, best - _STEP), min(turn.most, best + _STEP)
    return at(_lowest(lambda angle: at(angle).distance, low, high))


def turned(part: Contour, turn: Turn, angle: float) -> Contour:
    """The part turned by an angle in degrees about its pivot."""
    moved = Placement(rotation=angle).point(Point(turn.x, turn.y))
    return Placement(turn.x - moved.x, turn.y - moved.y, angle).contour(part)


def _angles(turn: Turn) -> Iterator[float]:
    count = max(1, math.ceil((turn.most - turn.least) / _STEP))
    return (turn.least + (turn.most - turn.least) * i / count for i in range(count + 1))


def _lowest(value: Callable[[float], float], low: float, high: float) -> float:
    """Where a function with one low is lowest (golden section)."""
    share = (math.sqrt(5) - 1) / 2
    while high - low > _FINE:
        left, right = high - share * (high - low), low + share * (high - low)
        low, high = (low, right) if value(left) <= value(right) else (left, high)
    return (low + high) / 2
