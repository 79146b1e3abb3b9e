"""What still works when something has failed.

A unit works while it has not failed, has its power, and each required need is met by a unit that works or by the
aircraft itself. Units that need each other keep each other working; `belonging` reports such circles.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from panelcad.model.equipment import Need, Power, Strength
from panelcad.model.function import Control, Function, Supply
from panelcad.planning.equipment import Equipment, Fitted

NONE: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Working:
    """The functions that each working unit still provides."""

    functions: dict[str, frozenset[Function]]

    def providers(self, function: Function) -> tuple[str, ...]:
        """Ids of the items that provide it, in the option's order."""
        return tuple(item for item, provided in self.functions.items() if function in provided)

    @property
    def all_functions(self) -> frozenset[Function]:
        return frozenset().union(*self.functions.values())


@lru_cache(maxsize=2048)
def working(equipment: Equipment, failed: frozenset[str] = NONE, dark: frozenset[str] = NONE) -> Working:
    """What works when the units `failed` are broken and the units `dark` get no electrical power.

    Of a dark unit what needs no power goes on; it supplies and controls nothing.
    """
    sound = [f for f in equipment.units if f.id not in failed]
    alive = [f for f in sound if not (f.id in dark and goes_dark(f))]
    while True:
        still = [f for f in alive if _has_what_it_needs(f, alive, equipment)]
        if len(still) == len(alive):
            break
        alive = still
    half = [f for f in sound if f.unit.unpowered and f not in alive and _has_what_it_needs(f, alive, equipment)]
    given = {f.id: _provided(f, others(alive, f), equipment) for f in alive}
    given |= {f.id: _provided(f, others(alive, f), equipment) & frozenset(f.unit.unpowered) for f in half}
    return Working({f.id: given[f.id] for f in equipment.units if f.id in given})


def _has_what_it_needs(fitted: Fitted, alive: list[Fitted], equipment: Equipment) -> bool:
    return all(is_met(need, others(alive, fitted), equipment) for need in vital_needs(fitted))


def goes_dark(fitted: Fitted) -> bool:
    """True for a unit that stops without electrical power from the aircraft."""
    return fitted.unit.power is Power.ELECTRICAL


def vital_needs(fitted: Fitted) -> Iterable[Need]:
    """The needs without which the whole unit stops."""
    return (n for n in fitted.unit.needs if n.strength is Strength.REQUIRED and not n.for_functions)


def others(units: Iterable[Fitted], one: Fitted) -> list[Fitted]:
    return [fitted for fitted in units if fitted.id != one.id]


def is_met(need: Need, by: Iterable[Fitted], equipment: Equipment) -> bool:
    """Whether one of these units, or the aircraft itself, meets the need."""
    return need.supply in equipment.supplied or any(meets(fitted, need.supply, need.controller) for fitted in by)


def meets(fitted: Fitted, supply: Supply | None, controller: Control | None) -> bool:
    return supply in fitted.unit.supplies if supply else controller in fitted.unit.controls


def _provided(fitted: Fitted, by: list[Fitted], equipment: Equipment) -> frozenset[Function]:
    unmet: set[Function] = set()
    for need in fitted.unit.needs:
        if need.strength is Strength.REQUIRED and need.for_functions and not is_met(need, by, equipment):
            unmet.update(need.for_functions)
    return frozenset(fitted.unit.provides) - unmet
