"""Voltage drop, hot wire and wire size after AC 43.13-1B paragraphs 11-48 and 11-66 to 11-68; lengths in mm."""

import math
from typing import Final

from panelcad.planning.electrical.tables import (
    BREAKER_OF_GAUGE,
    BREAKER_SIZES,
    SWITCH_FACTORS,
    TABLE_11_9,
    WireSize,
    wire_size,
)

MM_PER_FOOT: Final = 304.8
FEEDER_SHARE: Final = 0.02
"""AC 43.13-1B paragraph 11-66: the feeder may drop 2 % of the regulated voltage."""
CHART_TOLERANCE: Final = 0.01
"""The circular's own table 11-7 accepts 0.504 V where 0.5 V is allowed; a drop is held to the limit within 1 %."""


def voltage_drop(gauge: str, length: float, amperes: float) -> float:
    """Volts lost in a copper wire of `length` mm, the ground wire included, at 20 °C (paragraph 11-66d)."""
    return wire_size(gauge).ohms / 1000.0 * (length / MM_PER_FOOT) * amperes


def longest_run(gauge: str, volts: float, amperes: float) -> float:
    """The longest wire in mm that drops at most `volts` (the straight line of figure 11-2)."""
    return volts / (wire_size(gauge).ohms / 1000.0 * amperes) * MM_PER_FOOT


def drop_is_allowed(drop: float, allowed: float) -> bool:
    return drop <= allowed * (1.0 + CHART_TOLERANCE)


def smallest_gauge(length: float, amperes: float, allowed_drop: float, breaker: float) -> str | None:
    """The thinnest wire that keeps the drop and that the breaker protects; None where no listed one does."""
    for size in TABLE_11_9:
        protects = BREAKER_OF_GAUGE.get(size.gauge, 0.0) >= breaker
        if protects and drop_is_allowed(voltage_drop(size.gauge, length, amperes), allowed_drop):
            return size.gauge
    return None


def conductor_temperature(ambient: float, rated: float, amperes: float, most_amperes: float) -> float:
    """Degrees Celsius of a loaded conductor: T1 + (TR - T1) sqrt(I2 / Imax), paragraph 11-66d(6), from memory."""
    return ambient + (rated - ambient) * math.sqrt(amperes / most_amperes)


def hot_run(cold_run: float, temperature: float) -> float:
    """How much of the run allowed at 20 °C a copper conductor at `temperature` °C still allows (11-66d(4))."""
    return 254.5 * cold_run / (234.5 + temperature)


def aluminium_hot_run(cold_run: float, temperature: float) -> float:
    """As `hot_run`, for aluminium (11-66d)."""
    return 258.1 * cold_run / (238.1 + temperature)


def derated(free_air_amperes: float, altitude_factor: float, bundle_factor: float) -> float:
    """The current in A that a wire may carry at altitude in a bundle (figures 11-4 to 11-6)."""
    return free_air_amperes * altitude_factor * bundle_factor


def next_breaker(amperes: float) -> float | None:
    """The smallest breaker in A that carries this load; None where the list ends."""
    return next((size for size in BREAKER_SIZES if size >= amperes), None)


def switch_rating(amperes: float, volts: int, load: str) -> float:
    """The nominal rating in A of a switch for a continuous load (table 11-4)."""
    return amperes * SWITCH_FACTORS[volts, load]


def protected_by(breaker: float) -> tuple[WireSize, ...]:
    """The wires that a breaker of this rating protects (table 11-3), thinnest first."""
    return tuple(size for size in TABLE_11_9 if BREAKER_OF_GAUGE.get(size.gauge, 0.0) >= breaker)
