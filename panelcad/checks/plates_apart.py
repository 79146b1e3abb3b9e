"""What belongs to different plates, compared in the aircraft as convex solids, on the safe side.

Bodies behind one plate against those behind another, and what one plate carries against what stands around the panel
and is given in another plate's axes. A shock-mounted plate's boxes are grown by its sway.
"""

from collections.abc import Callable, Iterable, Iterator
from itertools import combinations
from typing import Any, NamedTuple

import numpy as np

from panelcad.checks.finding import Bound, is_short, short_of
from panelcad.checks.registry import TheWhole, rule
from panelcad.checks.standing import Standing, behind, depth_limit, in_front, moving, obstacle
from panelcad.geometry.box_clearance import clearance
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.plate import Plate

Carried = Callable[[PlateLayout], list[Standing]]


class Charge(NamedTuple):
    """What is said of two things that are nearer than a bound."""

    rule: str
    problem: str
    bound: Bound


@rule(
    "plates-apart",
    title="Cases of different plates",
    measures="gap between the boxes of bodies behind two plates, in the aircraft; never more than the truth",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.ERROR,),
    limits=("body_clearance",),
)
def plates_apart(laid: Layout) -> Iterator[Finding]:
    charge = Charge("plates-apart", "Bodies of two plates interfere", _error(laid, "body_clearance"))
    if len(laid.plates) < 2:
        return
    for one, other in combinations([behind(plate) for plate in laid.plates], 2):
        yield from _interfering(one, other, charge)


@rule(
    "other-plates-obstacles",
    title="Cases against what stands behind another plate",
    measures="gap between the box of a body behind one plate and that of an obstacle, of a moving part over its travel "
    "and turn, or of what lies beyond a depth limit, in another plate's axes; never more than the truth",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.ERROR,),
    limits=("obstacle_clearance", "moving_clearance", "depth_clearance"),
)
def other_plates_obstacles(laid: Layout) -> Iterator[Finding]:
    around, rule_id = laid.project.surroundings, "other-plates-obstacles"
    problem = "Body meets an obstacle behind another plate"
    fixed = Charge(rule_id, problem, _error(laid, "obstacle_clearance"))
    yield from _against(laid, behind, _standing(around.obstacles, obstacle, laid), fixed)
    problem = "Body is in the way of a part that moves behind another plate"
    moves = Charge(rule_id, problem, _error(laid, "moving_clearance"))
    yield from _against(laid, behind, _standing(around.moving_parts, moving, laid), moves)
    deep = Charge(rule_id, "Body reaches too deep behind another plate", _error(laid, "depth_clearance"))
    yield from _against(laid, behind, _standing(around.depth_limits, depth_limit, laid), deep)


@rule(
    "other-plates-front",
    title="Knobs and bezels against what stands before another plate",
    measures="gap between the box of a bezel, knob, lever or plug of one plate and that of a keep-out, or of a moving "
    "part over its travel and turn, in another plate's axes; never more than the truth",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.ERROR,),
    limits=("front_clearance",),
)
def other_plates_front(laid: Layout) -> Iterator[Finding]:
    around, rule_id, bound = laid.project.surroundings, "other-plates-front", _error(laid, "front_clearance")
    kept_free = Charge(rule_id, "Bezel, knob or plug stands in a space to be kept free before another plate", bound)
    yield from _against(laid, in_front, _standing(around.keep_outs, obstacle, laid), kept_free)
    moves = Charge(rule_id, "Bezel, knob or plug is in the way of a part that moves before another plate", bound)
    yield from _against(laid, in_front, _standing(around.moving_parts, moving, laid), moves)


def _error(laid: Layout, limit: str) -> Bound:
    return Bound(float(getattr(laid.project.profile, limit)), Severity.ERROR, limit)


def _standing(things: Iterable[Any], stand: Callable[[Any, Plate], Standing], laid: Layout) -> list[Standing]:
    """Things around the panel, each in the axes of its own plate; of another option's where this one has it not."""
    plates = {plate.id: plate for option in (*laid.project.all_options, laid.option) for plate in option.plates}
    return [stand(thing, plates[thing.plate]) for thing in things if thing.plate in plates]


def _against(laid: Layout, carried: Carried, things: list[Standing], charge: Charge) -> Iterator[Finding]:
    """What each plate carries against the things that are given in other plates' axes."""
    for plate in laid.plates:
        others = [thing for thing in things if thing.plate != plate.plate.id]
        if others:
            yield from _interfering(carried(plate), others, charge)


def _interfering(one: list[Standing], other: list[Standing], charge: Charge) -> Iterator[Finding]:
    """The worst finding for each pair of things."""
    worst: dict[tuple[str, str], tuple[float, Standing]] = {}
    for a, b in _near(one, other, charge.bound.required):
        left = clearance(a.solid, b.solid)
        if is_short(left, charge.bound.required) and left < worst.get((a.id, b.id), (left + 1.0, a))[0]:
            worst[a.id, b.id] = (left, a)
    for ids, (left, a) in worst.items():
        yield Finding(
            rule=charge.rule,
            problem=charge.problem,
            items=tuple(sorted(ids)),
            plate=a.plate,
            where=(a.at,),
            **short_of(left, charge.bound),
        )


def _near(one: list[Standing], other: list[Standing], reach: float) -> Iterator[tuple[Standing, Standing]]:
    """Pairs whose upright boxes are within reach."""
    if not one or not other:
        return
    a, b = np.array([s.solid.bounds for s in one])[:, None], np.array([s.solid.bounds for s in other])[None]
    close = ((a[..., 0, :] - reach <= b[..., 1, :]) & (b[..., 0, :] - reach <= a[..., 1, :])).all(-1)
    for i, j in zip(*np.nonzero(close), strict=True):
        yield one[int(i)], other[int(j)]
