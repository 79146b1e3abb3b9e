"""Who provides what, how many sources are independent, and whether a single failure leaves enough to fly on."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function
from panelcad.model.planning import FlightKind
from panelcad.planning.equipment import Equipment
from panelcad.planning.failures import Outcome, outcomes
from panelcad.planning.report import finding, unknown
from panelcad.planning.working import working


@dataclass(frozen=True)
class FunctionRow:
    """One function: the items that provide it now, and how many of them no single unit takes away together."""

    function: Function
    providers: tuple[str, ...]
    independent: int


@dataclass(frozen=True)
class Minimum:
    """Something that has to be left after a single failure, and the functions of which any one is it."""

    name: str
    any_of: frozenset[Function]


_AIRSPEED: Final = Minimum("airspeed", frozenset({Function.AIRSPEED}))
_ALTITUDE: Final = Minimum("altitude", frozenset({Function.ALTITUDE}))
_ATTITUDE: Final = Minimum("attitude", frozenset({Function.ATTITUDE}))
_COM: Final = Minimum("one COM", frozenset({Function.COM}))
_NAV: Final = Minimum("one NAV", frozenset({Function.NAV, Function.GPS_NAVIGATION}))
_BY_REFERENCE: Final = (_ATTITUDE, _AIRSPEED, _ALTITUDE, _COM, _NAV)
MINIMUMS: Final[dict[FlightKind, tuple[Minimum, ...]]] = {
    FlightKind.DAY_VFR: (_AIRSPEED, _ALTITUDE),
    FlightKind.NIGHT_VFR: (_ATTITUDE, _AIRSPEED, _ALTITUDE),
    FlightKind.DAY_IFR: _BY_REFERENCE,
    FlightKind.NIGHT_IFR: _BY_REFERENCE,
}
"""Common practice; for IFR after 14 CFR 23.2615(b): what safe flight needs must outlast any single failure."""
_SOURCE: Final = "14 CFR 23.2615(b): information essential for safe flight after a single failure; common practice"


def matrix(equipment: Equipment) -> tuple[FunctionRow, ...]:
    """A row for each function that something is made to provide, in the order of the published list."""
    now = working(equipment)
    return tuple(
        FunctionRow(function, now.providers(function), len(source_groups(equipment, (function,))))
        for function in Function
        if equipment.providers(function)
    )


def source_groups(equipment: Equipment, functions: tuple[Function, ...]) -> tuple[tuple[str, ...], ...]:
    """Groups of items that provide one of the functions; no single unit's failure takes two groups away."""
    now = working(equipment)
    providers = dict.fromkeys(item for function in functions for item in now.providers(function))
    takes = {item: _takes_away(item, functions, equipment) for item in providers}
    groups: list[set[str]] = []
    for item, critical in takes.items():
        touching = [group for group in groups if any(takes[other] & critical for other in group)]
        groups = [group for group in groups if group not in touching]
        groups.append({item}.union(*touching))
    return tuple(tuple(item for item in providers if item in group) for group in groups)


def _takes_away(item: str, functions: tuple[Function, ...], equipment: Equipment) -> set[str]:
    """The units whose failure alone leaves the item without any of these functions."""
    wanted = frozenset(functions)
    return {
        fitted.id
        for fitted in equipment.units
        if not wanted & working(equipment, frozenset({fitted.id})).functions.get(item, frozenset())
    }


def missing_minimums(outcome: Outcome, flight: FlightKind) -> tuple[Minimum, ...]:
    """What the flight needs, was there before, and is gone."""
    gone = frozenset(outcome.gone)
    return tuple(m for m in MINIMUMS[flight] if m.any_of & gone and not m.any_of & outcome.left)


def judge_redundancy(equipment: Equipment) -> Iterator[Finding]:
    """A warning for each single failure that leaves less than the intended flight needs, and for what is not known."""
    yield from _functions_not_known(equipment)
    if equipment.flight is None:
        yield unknown("flight-unknown", "The kind of flight is not stated, so single failures are not judged")
        return
    for result in outcomes(equipment):
        for minimum in missing_minimums(result, equipment.flight):
            yield finding(
                "single-failure",
                Severity.WARNING,
                (result.failure.id,),
                f"Failure of this {result.failure.kind} leaves no {minimum.name.removeprefix('one ')}",
                _SOURCE,
                features=(minimum.name,),
            )
    yield from _buses_not_entered(equipment)


def _functions_not_known(equipment: Equipment) -> Iterator[Finding]:
    if equipment.nameless:
        problem = "Named as no unit, so functions, load, mass and price are not known"
        yield unknown("functions-unknown", problem, *(item.id for item in equipment.nameless))


def _buses_not_entered(equipment: Equipment) -> Iterator[Finding]:
    if equipment.system is None or not equipment.system.buses:
        return
    for fitted in equipment.units:
        if fitted.item.circuit.bus is None and fitted.unit.power.value.startswith("electrical"):
            yield unknown("bus-unknown", "The bus is not entered, so bus failures are not judged for it", fitted.id)
