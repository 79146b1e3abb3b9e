"""The electrical judgement of an option: load in each phase, alternator, battery, circuits."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.model.equipment import Phase
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.function import Function
from panelcad.model.planning import ElectricalSystem
from panelcad.planning.electrical.capacity import (
    LIMIT,
    SHORT_LIMIT,
    Endurance,
    battery_needed,
    least_rating,
    rating,
    system_endurance,
)
from panelcad.planning.electrical.circuits import CircuitLine, judge_circuits, schedule
from panelcad.planning.electrical.loads import Load, PhaseLoad, load_by_phase, loads
from panelcad.planning.equipment import Equipment
from panelcad.planning.report import finding, unknown

_RULE_OF_THUMB = "AC 43.13-1B paragraph 11-35a; a screening check, not an electrical load analysis"
_SHORT = (
    "approved installation manuals: up to 95 % with pitot heat and landing light on, at most 80 % without the light"
)
_LIGHTEN = (
    "reduce the load, fit an alternator of at least {value}, or placard which loads may be on together "
    "(AC 43.13-1B paragraph 11-35b)"
)
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
    yield from _one_alternator_lost(figures)
    yield from _battery(figures)
    yield from judge_circuits(figures.system, figures.loads)


def _overload(figures: Electrical) -> Iterator[Finding]:
    if figures.rating is None:
        yield unknown("alternator-unknown", "The alternator's rating is not entered, so the load is not judged")
        return
    for row in figures.phases:
        if row.phase is not Phase.EMERGENCY and row.continuous > LIMIT * figures.rating:
            is_short = _is_short(row, figures, figures.rating)
            yield _above(row, figures, figures.rating, SHORT_LIMIT if is_short else LIMIT)


def _is_short(row: PhaseLoad, figures: Electrical, rating: float) -> bool:
    """Whether only the landing light, beside the pitot heat, carries take-off or landing above 80 %, not above 95 %."""
    on = [load for load in figures.loads if load.is_on(row.phase)]
    light = sum(load.continuous or 0.0 for load in on if Function.LANDING_LIGHT in load.provides)
    heated = any(Function.PITOT_HEAT in load.provides for load in on)
    in_phase = row.phase in {Phase.TAKE_OFF, Phase.LANDING}
    within = row.continuous - light <= LIMIT * rating and row.continuous <= SHORT_LIMIT * rating
    return bool(light) and heated and in_phase and within


def _above(row: PhaseLoad, figures: Electrical, rating: float, limit: float) -> Finding:
    is_short = limit == SHORT_LIMIT
    words = " while pitot heat and landing light are on" if is_short else ""
    return finding(
        "load-above-80" if is_short else "overload",
        Severity.ADVICE if is_short else Severity.ERROR,
        tuple(alternator.id for alternator in figures.system.alternators),
        f"Continuous load in {row.phase} against {limit:.0%} of the alternator's rating{words}",
        _SHORT if is_short else _RULE_OF_THUMB,
        features=(row.phase.value,),
        measure=Measure.AMPERES,
        measured=row.continuous,
        required=limit * rating,
        more_is_worse=True,
        advice=_LIGHTEN,
        advised=math.ceil(least_rating(row.continuous) * 10) / 10,
    )


def _one_alternator_lost(figures: Electrical) -> Iterator[Finding]:
    """A warning where what is left after one of several alternators cannot carry the heaviest phase."""
    alternators = figures.system.alternators
    if figures.rating is None or len(alternators) < 2:
        return
    for lost in alternators:
        left = LIMIT * (figures.rating - (lost.rating or 0.0))
        if figures.worst.continuous > left:
            yield finding(
                "alternator-lost",
                Severity.WARNING,
                (lost.id,),
                f"Its failure means shedding: continuous load in {figures.worst.phase} against 80% of the rest",
                _RULE_OF_THUMB,
                measure=Measure.AMPERES,
                measured=figures.worst.continuous,
                required=left,
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
        needed = math.ceil(battery_needed(figures.system, figures.loads))
        yield finding(
            "battery-endurance",
            Severity.ERROR,
            (),
            "The battery is flat too early after an alternator failure",
            _BATTERY,
            measure=Measure.MINUTES,
            measured=lasts.total_minutes,
            required=lasts.wanted,
            advice=f"shed more loads, or fit a battery of at least {needed} Ah",
        )
