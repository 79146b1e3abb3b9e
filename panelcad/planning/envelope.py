"""The loading extremes against the CG envelope (AC 43.13-1B paragraph 10-17); kg and mm."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from panelcad.model.planning import EnvelopePoint, Station, WeightAndBalance
from panelcad.planning.weight import Loading, Mass


@dataclass(frozen=True)
class LoadedCase:
    """A loading of the aircraft: `loads` are station name, kg and arm. None where it cannot be told."""

    name: str
    loads: tuple[tuple[str, float, float], ...]
    loading: Loading
    is_inside: bool | None


def limits_at(envelope: tuple[EnvelopePoint, ...], kg: float) -> tuple[float, float] | None:
    """The forward and aft limit in mm at a mass; None where the envelope has none at it."""
    arms = sorted(_crossings(envelope, kg))
    return (arms[0], arms[-1]) if arms else None


def is_inside(envelope: tuple[EnvelopePoint, ...], loading: Loading) -> bool:
    """Whether a loading lies in the envelope, its edge included."""
    limits = limits_at(envelope, loading.kg)
    return limits is not None and limits[0] - 1e-6 <= loading.arm <= limits[1] + 1e-6


def _crossings(envelope: tuple[EnvelopePoint, ...], kg: float) -> Iterator[float]:
    for a, b in zip(envelope, (*envelope[1:], envelope[0]), strict=True):
        low, high = sorted((a, b), key=lambda point: point.mass)
        if not low.mass - 1e-9 <= kg <= high.mass + 1e-9:
            continue
        if high.mass == low.mass:
            yield from (a.arm, b.arm)
        else:
            yield low.arm + (high.arm - low.arm) * (kg - low.mass) / (high.mass - low.mass)


def extremes(sheet: WeightAndBalance, empty: Loading) -> tuple[LoadedCase, ...]:
    """Most forward and most rearward loading, full and nearly empty, as the circular's figures 10-10 to 10-13 do."""
    if not sheet.stations:
        return ()
    forward, aft = _limits(sheet)
    rules: dict[str, Callable[[float], bool]] = {
        "most forward": lambda arm: forward is not None and arm < forward,
        "most rearward": lambda arm: aft is not None and arm > aft,
        "least aboard": lambda _: False,
    }
    cases = (_case(name, _loaded(sheet, is_full), sheet, empty) for name, is_full in rules.items())
    return (*cases, _heaviest(sheet, empty))


def _limits(sheet: WeightAndBalance) -> tuple[float | None, float | None]:
    """The envelope's forward-most and rear-most arm; None without an envelope."""
    arms = [point.arm for point in sheet.envelope]
    return (min(arms), max(arms)) if arms else (None, None)


def _loaded(sheet: WeightAndBalance, is_full: Callable[[float], bool]) -> list[tuple[Station, float]]:
    """Stations at arms the rule names are full; of the others what must be aboard, with the least fuel."""
    return [(station, station.most if is_full(station.arm) else least(station, sheet)) for station in sheet.stations]


def least(station: Station, sheet: WeightAndBalance) -> float:
    """What is aboard at least, in kg; the fuel of the extreme cases is shared by the tanks' sizes."""
    fuel = sheet.least_fuel
    if not station.is_fuel or fuel is None:
        return station.least
    capacity = sum(tank.most for tank in sheet.stations if tank.is_fuel)
    return max(station.least, min(station.most, fuel * station.most / capacity)) if capacity else station.least


def _heaviest(sheet: WeightAndBalance, empty: Loading) -> LoadedCase:
    """Everything aboard, baggage first left behind until the greatest mass is kept."""
    left = None if sheet.most_mass is None else sheet.most_mass - empty.kg
    loads: list[tuple[Station, float]] = []
    for station in sorted(sheet.stations, key=lambda s: (not s.least, not s.is_fuel, s.arm)):
        kg = station.most if left is None else max(0.0, min(station.most, left))
        left = None if left is None else left - kg
        loads.append((station, kg))
    return _case("heaviest", loads, sheet, empty)


def _case(name: str, loads: list[tuple[Station, float]], sheet: WeightAndBalance, empty: Loading) -> LoadedCase:
    loading = empty.plus(Mass(kg, station.arm) for station, kg in loads)
    inside = is_inside(sheet.envelope, loading) if sheet.envelope else None
    if sheet.most_mass is not None and loading.kg > sheet.most_mass + 1e-9:
        inside = False
    return LoadedCase(name, tuple((s.name, kg, s.arm) for s, kg in loads if kg), loading, inside)
