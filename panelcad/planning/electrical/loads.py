"""Every load of an option: the aircraft's own and its units of equipment; what flows in each phase of flight, in A."""

from dataclasses import dataclass

from panelcad.model.equipment import Draw, Duty, Phase, Power
from panelcad.model.function import Function
from panelcad.model.planning import AfterFailure, Circuit, ElectricalSystem
from panelcad.planning.equipment import Equipment, Fitted


@dataclass(frozen=True)
class Load:
    """Something that draws current. `draw` is None where nobody entered it."""

    id: str
    name: str
    draw: Draw | None
    duty: Duty
    phases: tuple[Phase, ...]
    circuit: Circuit
    stated_breaker: float | None
    provides: tuple[Function, ...] = ()

    @property
    def continuous(self) -> float | None:
        """A drawn continuously: zero for an intermittent load, None where it is not known."""
        if self.duty is Duty.INTERMITTENT:
            return 0.0
        return self.draw.continuous if self.draw else None

    @property
    def peak(self) -> float | None:
        """The most it draws, in A; None where it is not known."""
        if self.draw is None:
            return None
        return self.draw.peak if self.draw.peak is not None else self.draw.continuous

    @property
    def intermittent(self) -> float:
        """What it draws for moments beyond its continuous current, in A; what is not known is not in it."""
        return (self.peak or 0.0) - (self.continuous or 0.0) if self.peak is not None else 0.0

    def is_on(self, phase: Phase) -> bool:
        if phase is Phase.EMERGENCY:
            return self.circuit.after_failure is AfterFailure.KEPT
        return phase in self.phases

    @property
    def is_on_for_emergency_landing(self) -> bool:
        return self.circuit.after_failure is not AfterFailure.SHED


def loads(equipment: Equipment) -> tuple[Load, ...]:
    """The aircraft's own loads, then the option's electrical units, in their order; none without a system."""
    system = equipment.system
    if system is None:
        return ()
    own = (
        Load(load.id, load.name, load.draw, load.duty, load.phases, load.circuit, load.circuit.breaker, load.provides)
        for load in system.loads
    )
    return (*own, *(_load(fitted, system) for fitted in equipment.units if draws(fitted)))


def draws(fitted: Fitted) -> bool:
    """True for a unit that hangs on the electrical system."""
    return fitted.unit.power in {Power.ELECTRICAL, Power.OWN_BATTERY}


def _load(fitted: Fitted, system: ElectricalSystem) -> Load:
    unit, circuit = fitted.unit, fitted.item.circuit
    breaker = circuit.breaker or unit.breaker
    return Load(
        fitted.id, fitted.name, unit.draw(system.voltage), unit.duty, unit.phases, circuit, breaker, unit.provides
    )


@dataclass(frozen=True)
class PhaseLoad:
    """What flows in one phase, in A. `unknown` names loads of which the current is not known; they are not in it."""

    phase: Phase
    continuous: float
    intermittent: float
    unknown: tuple[str, ...]


def phase_load(all_loads: tuple[Load, ...], phase: Phase) -> PhaseLoad:
    """The sums of a phase; in the emergency phase only the loads that are kept after an alternator failure."""
    return _sums(phase, [load for load in all_loads if load.is_on(phase)])


def emergency_landing_load(all_loads: tuple[Load, ...]) -> PhaseLoad:
    """What flows in the landing after an alternator failure: what is kept and what is on again for it."""
    return _sums(Phase.EMERGENCY, [load for load in all_loads if load.is_on_for_emergency_landing])


def _sums(phase: Phase, on: list[Load]) -> PhaseLoad:
    return PhaseLoad(
        phase=phase,
        continuous=sum(load.continuous or 0.0 for load in on),
        intermittent=sum(load.intermittent for load in on),
        unknown=tuple(load.id for load in on if load.continuous is None),
    )


def load_by_phase(all_loads: tuple[Load, ...]) -> tuple[PhaseLoad, ...]:
    """One row a phase, in the order of a flight."""
    return tuple(phase_load(all_loads, phase) for phase in Phase)
