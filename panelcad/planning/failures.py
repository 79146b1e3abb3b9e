"""Every single failure: a unit, the vacuum pump, a bus, an alternator; what is lost and what is left."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from panelcad.model.function import Function, Supply
from panelcad.model.planning import AfterFailure, Alternator, ElectricalSystem
from panelcad.planning.equipment import Equipment, Fitted
from panelcad.planning.working import NONE, Working, working


class FailureKind(StrEnum):
    UNIT = "unit"
    DISPLAY = "display that combines roles"
    VACUUM = "vacuum pump"
    BUS = "bus"
    ALTERNATOR = "alternator"


@dataclass(frozen=True)
class Failure:
    """One thing that breaks, and the items it breaks or leaves without power."""

    kind: FailureKind
    id: str
    name: str
    failed: frozenset[str] = NONE
    dark: frozenset[str] = NONE


@dataclass(frozen=True)
class Loss:
    """Sources of one function before and after a failure."""

    function: Function
    before: tuple[str, ...]
    after: tuple[str, ...]

    @property
    def is_total(self) -> bool:
        return not self.after


@dataclass(frozen=True)
class Outcome:
    failure: Failure
    losses: tuple[Loss, ...]
    left: frozenset[Function]

    @property
    def gone(self) -> tuple[Function, ...]:
        """The functions of which no source is left."""
        return tuple(loss.function for loss in self.losses if loss.is_total)


_ROLES = frozenset(
    {
        Function.ATTITUDE,
        Function.HEADING,
        Function.AIRSPEED,
        Function.ALTITUDE,
        Function.MOVING_MAP,
        Function.OIL_PRESSURE,
    }
)
_COMBINES = 3
"""A display that shows at least this many of the roles counts as one that combines them."""


def failures(equipment: Equipment) -> Iterator[Failure]:
    """Every single failure worth looking at, units first, in the option's order."""
    for fitted in equipment.units:
        if fitted.unit.provides or fitted.unit.supplies or fitted.unit.controls:
            yield Failure(_kind(fitted), fitted.id, fitted.name, failed=frozenset({fitted.id}))
    if equipment.system is not None:
        yield from _bus_failures(equipment, equipment.system)
        for alternator in equipment.system.alternators:
            dark = _without(alternator, equipment, equipment.system)
            yield Failure(FailureKind.ALTERNATOR, alternator.id, alternator.name, dark=dark)


def outcome(equipment: Equipment, failure: Failure) -> Outcome:
    """What a failure takes away and what it leaves."""
    before = working(equipment)
    after = working(equipment, failure.failed, failure.dark)
    return Outcome(failure, tuple(_losses(before, after)), after.all_functions)


def outcomes(equipment: Equipment) -> tuple[Outcome, ...]:
    """The outcomes of every single failure."""
    return tuple(outcome(equipment, failure) for failure in failures(equipment))


def powered_by(bus_or_source: str, system: ElectricalSystem) -> frozenset[str]:
    """Ids of the buses that go dark with a bus because nothing else feeds them, the bus itself among them."""
    dark = {bus_or_source}
    while more := {b.id for b in system.buses if b.id not in dark and b.fed_by and dark.issuperset(b.fed_by)}:
        dark |= more
    return frozenset(dark)


def generated_buses(system: ElectricalSystem, alternators: frozenset[str]) -> frozenset[str]:
    """Ids of the buses that one of these alternators feeds, directly or through another bus."""
    live = set(alternators)
    while more := {b.id for b in system.buses if b.id not in live and live.intersection(b.fed_by)}:
        live |= more
    return frozenset(live)


def _kind(fitted: Fitted) -> FailureKind:
    if Supply.VACUUM in fitted.unit.supplies:
        return FailureKind.VACUUM
    return FailureKind.DISPLAY if len(_ROLES.intersection(fitted.unit.provides)) >= _COMBINES else FailureKind.UNIT


def _bus_failures(equipment: Equipment, system: ElectricalSystem) -> Iterator[Failure]:
    for bus in system.buses:
        buses = powered_by(bus.id, system)
        dark = frozenset(fitted.id for fitted in equipment.units if fitted.item.circuit.bus in buses)
        yield Failure(FailureKind.BUS, bus.id, bus.name, dark=dark)


def _without(alternator: Alternator, equipment: Equipment, system: ElectricalSystem) -> frozenset[str]:
    """What is dark once an alternator failed and all that is not kept was shed from what the battery feeds."""
    left = frozenset(other.id for other in system.alternators if other.id != alternator.id)
    live = generated_buses(system, left)
    return frozenset(
        fitted.id
        for fitted in equipment.units
        if fitted.item.circuit.after_failure is not AfterFailure.KEPT and fitted.item.circuit.bus not in live
    )


def _losses(before: Working, after: Working) -> Iterator[Loss]:
    for function in Function:
        had, has = before.providers(function), after.providers(function)
        if len(has) < len(had):
            yield Loss(function, had, has)
