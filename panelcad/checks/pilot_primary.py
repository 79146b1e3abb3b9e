"""Which instruments are the pilot's flight instruments, and which stand by."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from panelcad.checks.pilot_sight import Seen, seen_where
from panelcad.geometry.space import Spot
from panelcad.model.function import Function
from panelcad.model.kept import kept_with
from panelcad.model.layout import Layout

FLIGHT: Final = (Function.ATTITUDE, Function.AIRSPEED, Function.ALTITUDE, Function.HEADING)
"""The four of 14 CFR 23.1321(d) before amendment 23-64; the magnetic compass does not count as direction."""


@dataclass(frozen=True)
class FlightInstruments:
    """The instrument that serves each of the four functions, and all others that could, which stand by."""

    by_function: dict[Function, Seen]
    standby: tuple[Seen, ...]

    @property
    def spans(self) -> bool:
        """Whether one electronic display shows all four."""
        return len(self.by_function) == len(FLIGHT) and len({seen.id for seen in self.by_function.values()}) == 1

    @property
    def each(self) -> tuple[Seen, ...]:
        """The primary instruments, each once."""
        return tuple({seen.id: seen for seen in self.by_function.values()}.values())


def flight_instruments(laid: Layout) -> FlightInstruments:
    """One display that shows all four, nearest the centre line; else for each function the instrument nearest to it.

    Attitude is sought near the pilot's centre line, the others near the attitude instrument.
    """
    return kept_with(laid, "flight instruments", lambda: _flight_instruments(laid))


def _flight_instruments(laid: Layout) -> FlightInstruments:
    able = seen_where(laid, "flight instrument", lambda item: not item.shows.isdisjoint(FLIGHT))
    eye = laid.project.surroundings.eye
    centre_line = eye.centre_line if eye else 0.0
    whole = [seen for seen in able if seen.item.shows >= set(FLIGHT)]
    if whole:
        display = _nearest_line(whole, centre_line)
        chosen = dict.fromkeys(FLIGHT, display)
    else:
        chosen = _one_by_one(able, centre_line)
    primary = {seen.id for seen in chosen.values()}
    return FlightInstruments(chosen, tuple(seen for seen in able if seen.id not in primary))


def _one_by_one(able: tuple[Seen, ...], centre_line: float) -> dict[Function, Seen]:
    attitudes = [seen for seen in able if Function.ATTITUDE in seen.item.shows]
    attitude = _nearest_line(attitudes, centre_line) if attitudes else None
    chosen: dict[Function, Seen] = {}
    for function in FLIGHT:
        candidates = [seen for seen in able if function in seen.item.shows]
        if not candidates:
            continue
        if attitude is None:
            chosen[function] = _nearest_line(candidates, centre_line)
        else:
            chosen[function] = attitude if function is Function.ATTITUDE else _nearest(candidates, attitude.middle)
    return chosen


def _nearest_line(seen: Iterable[Seen], centre_line: float) -> Seen:
    return min(seen, key=lambda each: (abs(each.middle.x - centre_line), each.id))


def _nearest(seen: Iterable[Seen], spot: Spot) -> Seen:
    return min(seen, key=lambda each: (spot.to(each.middle).length, each.id))
