"""Controls: labelled, master halves together, levers in order, carburettor heat in its place."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any, Final

from panelcad.checks.pilot_sight import Seen, seen_where
from panelcad.checks.pilot_words import with_words_of_their_own, without_words, words_on
from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.gap import TIE, gap
from panelcad.geometry.point import Point
from panelcad.model.finding import Cure, Finding, Measure, Severity
from panelcad.model.kept import kept_choice, kept_with
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.pilot import Purpose
from panelcad.model.plate import PlateRole
from panelcad.model.profile import limit_source

_LEVERS: Final = (Purpose.POWER, Purpose.PROPELLER, Purpose.MIXTURE)
_CFR_777: Final = "14 CFR 23.777(d) before amendment 23-64"


@rule(
    "label",
    title="A label at each control",
    measures="distance from each control to the nearest engraving or placard; one stands for the control it is "
    "centred below or above of, or else for the nearest",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("label_distance",),
    source="14 CFR 23.1367(d) and 23.777(a) before amendment 23-64, 23.2605(a) since; distance: shop setting",
)
def label(laid: Layout) -> Iterator[Finding]:
    for plate in laid.plates:
        yield from _unlabelled(plate, laid)


def _unlabelled(plate: PlateLayout, laid: Layout) -> Iterator[Finding]:
    limit = laid.project.profile.label_distance
    words = tuple(words_on(plate))
    controls = kept_choice(("controls", plate.plate.id), plate.items, lambda placed: placed.cutout.control is not None)
    labelled = with_words_of_their_own(controls, words, limit)
    for placed in controls:
        missing = without_words(placed, words, limit)
        problem = "Control has no label near it"
        if missing is None and placed.item.id not in labelled:
            missing, problem = without_words(placed, (), limit), "The label near it stands for another control"
        if missing:
            yield Finding(
                rule="label",
                problem=problem,
                plate=plate.plate.id,
                source=f"14 CFR 23.1367(d), 23.2605(a); {limit_source('label_distance')}",
                cure=Cure(item=placed.item.id, advice="engrave what it does beside it, or fit a placard"),
                **missing,
            )


@rule(
    "split-master",
    title="Halves of a split master switch",
    measures="gap between the battery and the alternator half of the master switch; middle to middle on two plates",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("master_apart",),
    source="14 CFR 23.1361(c) before amendment 23-64: one hand in a single movement; gap: shop setting",
)
def split_master(laid: Layout) -> Iterator[Finding]:
    limit = laid.project.profile.master_apart
    for battery in _of(laid, Purpose.BATTERY_MASTER):
        for half in _of(laid, Purpose.ALTERNATOR_MASTER):
            apart, where = _apart(battery, half)
            if apart > limit + TIE:
                what = _pair(battery, half) | {"where": where}
                what |= {"measured": apart, "required": limit, "more_is_worse": True}
                source = f"14 CFR 23.1361(c); {limit_source('master_apart')}"
                yield Finding(rule="split-master", problem="Halves of the master are apart", source=source, **what)


def _apart(one: Seen, other: Seen) -> tuple[float, tuple[Point, ...]]:
    """Between two faces of one plate; between the middles of two that stand on different plates."""
    if one.plate is other.plate:
        between = gap(one.item.face, other.item.face)
        return between.distance, (between.a, between.b)
    return one.middle.to(other.middle).length, (other.item.centre,)


@rule(
    "lever-order",
    title="Order of power, propeller and mixture",
    measures="order from left to right of the engine controls on one plate",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    source=_CFR_777,
)
def lever_order(laid: Layout) -> Iterator[Finding]:
    levers = [seen for purpose in _LEVERS for seen in _of(laid, purpose)]
    groups: dict[tuple[str, int | None], list[Seen]] = {}
    for seen in levers:
        groups.setdefault((seen.plate.id, seen.item.item.engine), []).append(seen)
    for group in groups.values():
        for left, right in pairwise(sorted(group, key=lambda seen: seen.middle.x)):
            if _rank(left) > _rank(right):
                problem = "Engine controls are not in the order power, propeller, mixture"
                yield Finding(rule="lever-order", problem=problem, source=_CFR_777, **_pair(left, right))


def _rank(seen: Seen) -> int:
    return _LEVERS.index(seen.item.purpose) if seen.item.purpose in _LEVERS else len(_LEVERS)


@rule(
    "carburettor-heat",
    title="Place of carburettor heat or alternate air",
    measures="distance from the mixture control, for a control right of the throttle and not on a pedestal",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("carburettor_heat_apart",),
)
def carburettor_heat(laid: Layout) -> Iterator[Finding]:
    limit = laid.project.profile.carburettor_heat_apart
    for purpose in (Purpose.CARBURETTOR_HEAT, Purpose.ALTERNATE_AIR):
        for heat in _of(laid, purpose):
            if heat.plate.role is not PlateRole.PEDESTAL and not _is_left_of_throttle(heat, laid):
                yield from _too_near_mixture(heat, laid, limit)


def _is_left_of_throttle(heat: Seen, laid: Layout) -> bool:
    return any(heat.middle.x < throttle.middle.x for throttle in _of(laid, Purpose.POWER))


def _too_near_mixture(heat: Seen, laid: Layout, limit: float) -> Iterator[Finding]:
    for mixture in _of(laid, Purpose.MIXTURE):
        apart = heat.middle.to(mixture.middle).length
        if apart < limit - TIE:
            what = _pair(heat, mixture) | {"measured": apart, "required": limit}
            problem = "Right of the throttle and near the mixture control"
            source = str(limit_source("carburettor_heat_apart"))
            yield Finding(rule="carburettor-heat", problem=problem, source=source, **what)


def _of(laid: Layout, purpose: Purpose) -> list[Seen]:
    return kept_with(laid, "seen by purpose", lambda: _by_purpose(laid)).get(purpose, [])


def _by_purpose(laid: Layout) -> dict[Purpose | None, list[Seen]]:
    found: dict[Purpose | None, list[Seen]] = {}
    for seen in seen_where(laid, "has a purpose", lambda item: item.purpose is not None):
        found.setdefault(seen.item.purpose, []).append(seen)
    return found


def _pair(a: Seen, b: Seen) -> dict[str, Any]:
    return {
        "severity": Severity.WARNING,
        "items": tuple(sorted((a.id, b.id))),
        "plate": b.plate.id,
        "measure": Measure.LENGTH,
        "where": (a.item.centre, b.item.centre) if a.plate is b.plate else (b.item.centre,),
    }
