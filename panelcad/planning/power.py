"""Which sources of power a unit hangs on."""

from itertools import combinations

from panelcad.model.equipment import Power
from panelcad.model.planning import ElectricalSystem
from panelcad.planning.equipment import Equipment, Fitted

_ELECTRICAL = "the electrical system"


def power_sources(fitted: Fitted, equipment: Equipment) -> frozenset[str]:
    """Names of what keeps the unit going; units that share none are independent of each other in power.

    A unit with its own battery hangs on that alone: the battery carries it when all else is gone.
    """
    if fitted.unit.power is Power.VACUUM:
        return frozenset({"vacuum"})
    if fitted.unit.power is Power.OWN_BATTERY:
        return frozenset({f"battery of {fitted.id}"})
    if fitted.unit.power is Power.NONE:
        return frozenset()
    system = equipment.system
    bus = fitted.item.circuit.bus
    return frozenset({_ELECTRICAL}) if system is None or bus is None else feeding(bus, system)


def feeding(bus: str, system: ElectricalSystem) -> frozenset[str]:
    """Ids of the alternators and the battery that feed a bus, directly or through other buses."""
    feeders = {b.id: b.fed_by for b in system.buses}
    found: set[str] = set()
    front = set(feeders.get(bus, ()))
    while front:
        found |= {source for source in front if source not in feeders}
        front = {above for source in front for above in feeders.get(source, ())}
    return frozenset(found or {_ELECTRICAL})


def hang_on_one_source(units: tuple[Fitted, ...], equipment: Equipment) -> bool:
    """True where every two of these units share a source of power."""
    sources = [power_sources(fitted, equipment) for fitted in units]
    return all(a & b for a, b in combinations(sources, 2))
