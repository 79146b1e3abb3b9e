"""The electrical judgement of an option: load in each phase, alternator, battery, circuits."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.model.equipment import Phase
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.planning import ElectricalSystem
from panelcad.planning.electrical.capacity import LIMIT, Endurance, rating, system_endurance
from panelcad.planning.electrical.circuits import CircuitLine, judge_circuits, schedule
from panelcad.planning.electrical.loads import Load, PhaseLoad, load_by_phase, loads
from panelcad.planning.equipment import Equipment
from panelcad.planning.report import finding, unknown

_RULE_OF_THUMB = "AC 43.13-1B paragraph 11-35a; a screening check, not an electrical load analysis"
_BATTERY = "14 CFR 23.1353(h), older text: 30 minutes; capacity taken at 0.75 as approved installation manuals do"


@dataclass(frozen=True)
class Electrical:
    """All of an option's electrical figures; A and minutes. None where it cannot be known."""

    system: ElectricalSystem
    loads: tuple[Load, ...]
    phases: tuple[PhaseLoad, ...]
    rating: float | None
    endurance: Endurance | None
    schedule: tuple[CircuitLine, ...]

    @property
    def worst(self) -> PhaseLoad:
        """The phase with the heaviest continuous load."""
        return max(self.phases, key=lambda row: row.continuous)

    @property
    def share(self) -> float | None:
        """The heaviest continuous load as a share of the alternators' rating; loads not known are not in it."""
        return self.worst.continuous / self.rating if self.rating else None

    @property
    def unknown(self) -> tuple[str, ...]:
        """Ids of the loads of which the current is not known."""
        return tuple(load.id for load in self.loads if load.continuous is None)


def electrical(equipment: Equipment) -> Electrical | None:
    """The figures of an option; None where no electrical system is entered."""
    system = equipment.system
    if system is None:
        return None
    all_loads = loads(equipment)
    return Electrical(
        system=system,
        loads=all_loads,
        phases=load_by_phase(all_loads),
        rating=rating(system),
        endurance=system_endurance(system, all_loads),
        schedule=schedule(system, all_loads),
    )


def judge_electrical(equipment: Equipment) -> Iterator[Finding]:
    """Overload, a battery that is flat too early, circuits that do not fit, and what is not known."""
    figures = electrical(equipment)
    if figures is None:
        yield unknown("system-unknown", "No electrical system is entered, so loads are not judged")
        return
    if figures.unknown:
        yield unknown("load-unknown", "The current is not known and in no sum", *figures.unknown)
    yield from _overload(figures)
    yield from _battery(figures)
    yield from judge_circuits(figures.system, figures.loads)


def _overload(figures: Electrical) -> Iterator[Finding]:
    if figures.rating is None:
        yield unknown("alternator-unknown", "The alternator's rating is not entered, so the load is not judged")
        return
    ids = tuple(alternator.id for alternator in figures.system.alternators)
    for row in figures.phases:
        if row.phase is not Phase.EMERGENCY and row.continuous > LIMIT * figures.rating:
            yield finding(
                "overload",
                Severity.ERROR,
                ids,
                f"Continuous load in {row.phase} against 80 % of the alternator's rating",
                _RULE_OF_THUMB,
                features=(row.phase.value,),
                measure=Measure.AMPERES,
                measured=row.continuous,
                required=LIMIT * figures.rating,
                more_is_worse=True,
            )


def _battery(figures: Electrical) -> Iterator[Finding]:
    lasts = figures.endurance
    if lasts is None:
        yield unknown("battery-unknown", "The battery's capacity is not entered, so its endurance is not judged")
    elif lasts.total_minutes is None:
        yield unknown(
            "nothing-kept", "No load is marked as kept after an alternator failure, so endurance is not judged"
        )
    elif not lasts.is_enough:
        yield finding(
            "battery-endurance",
            Severity.ERROR,
            (),
            "The battery is flat too early after an alternator failure",
            _BATTERY,
            measure=Measure.MINUTES,
            measured=lasts.total_minutes,
            required=lasts.wanted,
        )
