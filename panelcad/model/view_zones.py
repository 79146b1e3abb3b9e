"""Which function belongs in which zone of the pilot's view: the defaults with their sources, and a shop's own."""

from collections.abc import Iterable, Mapping
from enum import StrEnum
from functools import cache
from typing import Final

from panelcad.model.base import Record
from panelcad.model.function import Function
from panelcad.model.source import Source, Standing


class ViewZone(StrEnum):
    """What a function's instrument is held to; the angles are limits of the profile."""

    PRIMARY = "primary"
    """The instrument that serves it lies in the primary field of view, any other in the wider one."""
    PRIMARY_ADVISED = "primary advised"
    """The same, where leaving the primary field is advice only."""
    IMPORTANT = "important"
    """Every instrument that shows it lies in the wider field of view."""
    ANYWHERE = "anywhere"


class FunctionZone(Record):
    function: Function
    zone: ViewZone


_TABLE_3: Final = "AC 23.1311-1C table 3, from memory; verify"
_FLIGHT: Final = Source(
    standing=Standing.MEMORY, text=f"primary flight information, 14 CFR 23.1321(d) before 2017; {_TABLE_3}"
)
_NAVIGATION: Final = Source(standing=Standing.MEMORY, text=f"navigation course deviation, {_TABLE_3}")
_STANDBY: Final = Source(standing=Standing.MEMORY, text=f"other flight information, {_TABLE_3}")
_POWERPLANT: Final = Source(standing=Standing.MEMORY, text=f"required powerplant information, {_TABLE_3}")
_NONE: Final = Source(standing=Standing.MEMORY, text="no field of view is published for it that we know of")

DEFAULT_ZONES: Final[Mapping[Function, tuple[ViewZone, Source]]] = {
    Function.ATTITUDE: (ViewZone.PRIMARY, _FLIGHT),
    Function.AIRSPEED: (ViewZone.PRIMARY, _FLIGHT),
    Function.ALTITUDE: (ViewZone.PRIMARY, _FLIGHT),
    Function.HEADING: (ViewZone.PRIMARY, _FLIGHT),
    Function.COURSE_DEVIATION: (ViewZone.PRIMARY_ADVISED, _NAVIGATION),
    Function.VERTICAL_SPEED: (ViewZone.IMPORTANT, _STANDBY),
    Function.RATE_OF_TURN: (ViewZone.IMPORTANT, _STANDBY),
    Function.SLIP: (ViewZone.IMPORTANT, _STANDBY),
    Function.ANGLE_OF_ATTACK: (ViewZone.IMPORTANT, _STANDBY),
    Function.TACHOMETER: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.MANIFOLD_PRESSURE: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.OIL_PRESSURE: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.OIL_TEMPERATURE: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.COOLANT_TEMPERATURE: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.FUEL_PRESSURE: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.FUEL_QUANTITY: (ViewZone.IMPORTANT, _POWERPLANT),
    Function.GEAR_POSITION: (ViewZone.IMPORTANT, _POWERPLANT),
}
"""All other functions may be anywhere."""


def default_zone(function: Function) -> ViewZone:
    return DEFAULT_ZONES[function][0] if function in DEFAULT_ZONES else ViewZone.ANYWHERE


def zone_source(function: Function) -> Source:
    """Where a function's default zone comes from."""
    return DEFAULT_ZONES[function][1] if function in DEFAULT_ZONES else _NONE


def only_changed(zones: Iterable[FunctionZone]) -> tuple[FunctionZone, ...]:
    """Those other than the defaults, in the order of the functions. Raises `ValueError` for a function named twice."""
    by_function: dict[Function, FunctionZone] = {}
    for each in zones:
        if each.function in by_function:
            raise ValueError(f"the zone of '{each.function}' is stated twice; each may be stated once")
        by_function[each.function] = each
    changed = (by_function[function] for function in Function if function in by_function)
    return tuple(each for each in changed if each.zone is not default_zone(each.function))


@cache
def functions_in(zone: ViewZone, changed: tuple[FunctionZone, ...] = ()) -> frozenset[Function]:
    """The functions that belong in a zone, with a shop's changes of the defaults."""
    own = {each.function: each.zone for each in changed}
    return frozenset(function for function in Function if own.get(function, default_zone(function)) is zone)


@cache
def functions_told(changed: tuple[FunctionZone, ...] = ()) -> frozenset[Function]:
    """The functions that may not be anywhere."""
    return frozenset(Function) - functions_in(ViewZone.ANYWHERE, changed)
