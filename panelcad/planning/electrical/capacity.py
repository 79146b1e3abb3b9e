"""Continuous load against the alternator, and how long the battery lasts after it failed.

A screening check, not an electrical load analysis: AC 43.13-1B paragraph 11-35 itself calls its 80 % a rule of thumb.
"""

from dataclasses import dataclass
from typing import Final

from panelcad.model.equipment import Phase
from panelcad.model.planning import ElectricalSystem
from panelcad.planning.electrical.loads import Load, emergency_landing_load, phase_load

LIMIT: Final = 0.80
"""AC 43.13-1B paragraph 11-35a: share of the alternator's rating that continuous loads may reach."""
SHORT_LIMIT: Final = 0.95
"""Approved installation data: with pitot heat and landing light on during take-off and landing."""


def utilisation(continuous: float, rating: float) -> float:
    """The continuous load as a share of the rating, both in A."""
    return continuous / rating


def least_rating(continuous: float) -> float:
    """The smallest alternator rating in A of which the load is at most 80 %."""
    return continuous / LIMIT


def rating(system: ElectricalSystem) -> float | None:
    """The sum of the alternators' ratings in A; None where one is not known or there is none."""
    ratings = [alternator.rating for alternator in system.alternators]
    known = [r for r in ratings if r is not None]
    return sum(known) if known and len(known) == len(ratings) else None


@dataclass(frozen=True)
class Endurance:
    """The battery after the alternator failed: shares in A-min, times in minutes.

    Before the failure is noticed all loads of the worst phase flow, then those that are kept, at last those of landing.
    """

    available: float
    until_shed: float
    for_landing: float
    cruise_minutes: float | None
    """None where nothing is kept on, so that the battery lasts for ever on paper."""
    total_minutes: float | None
    wanted: float

    @property
    def is_enough(self) -> bool:
        return self.total_minutes is None or self.total_minutes >= self.wanted


def endurance(  # noqa: PLR0913 - the form has this many entries
    capacity: float,
    derate: float,
    normal: float,
    landing: float,
    kept: float,
    *,
    recognition_minutes: float = 5.0,
    landing_minutes: float = 10.0,
    wanted: float = 30.0,
) -> Endurance:
    """Battery endurance: capacity in Ah, currents in A, as approved installation manuals reckon it.

    Thirty minutes: 14 CFR 23.1353(h), older text, for airplanes limited to 25,000 ft.
    """
    available = derate * capacity * 60.0
    until_shed = recognition_minutes * normal
    for_landing = landing_minutes * landing
    rest = available - until_shed - for_landing
    if rest < 0:
        total = _early_end(available, until_shed, recognition_minutes, landing)
        return Endurance(available, until_shed, for_landing, 0.0, total, wanted)
    if kept == 0:
        return Endurance(available, until_shed, for_landing, None, None, wanted)
    cruise = rest / kept
    return Endurance(available, until_shed, for_landing, cruise, recognition_minutes + landing_minutes + cruise, wanted)


def _early_end(available: float, until_shed: float, recognition_minutes: float, landing: float) -> float:
    """Minutes to the end where the battery is flat before the landing is over."""
    if available < until_shed:
        return recognition_minutes * available / until_shed
    return recognition_minutes + (available - until_shed) / landing


def capacity_needed(system: ElectricalSystem, derate: float, normal: float, landing: float, kept: float) -> float:
    """The battery capacity in Ah that lasts the wanted time."""
    cruise = system.endurance - system.recognition - system.landing
    charge = system.recognition * normal + system.landing * landing + cruise * kept
    return charge / (60.0 * derate)


def system_endurance(system: ElectricalSystem, all_loads: tuple[Load, ...]) -> Endurance | None:
    """The endurance of an option; None where the battery's capacity is not known.

    The load until the failure is noticed is the heavier of climb and cruise. Intermittent loads are not in it.
    """
    battery = system.battery
    if battery is None or battery.capacity is None:
        return None
    return endurance(
        battery.capacity,
        battery.derate,
        normal_load(all_loads),
        emergency_landing_load(all_loads).continuous,
        phase_load(all_loads, Phase.EMERGENCY).continuous,
        recognition_minutes=system.recognition,
        landing_minutes=system.landing,
        wanted=system.endurance,
    )


def normal_load(all_loads: tuple[Load, ...]) -> float:
    """The heavier of the continuous loads of climb and cruise, in A."""
    return max(phase_load(all_loads, phase).continuous for phase in (Phase.TAKE_OFF, Phase.CRUISE))


def emergency_landing_amperes(all_loads: tuple[Load, ...]) -> float:
    """What flows in A in the landing after an alternator failure."""
    return emergency_landing_load(all_loads).continuous


def battery_needed(system: ElectricalSystem, all_loads: tuple[Load, ...]) -> float:
    """The battery capacity in Ah with which the option's loads last the wanted time."""
    derate = system.battery.derate if system.battery else 0.75
    kept = phase_load(all_loads, Phase.EMERGENCY).continuous
    return capacity_needed(system, derate, normal_load(all_loads), emergency_landing_amperes(all_loads), kept)
