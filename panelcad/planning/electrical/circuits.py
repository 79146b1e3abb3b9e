"""The breaker and wire schedule: one line a load, with what does not fit together."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.planning import ElectricalSystem
from panelcad.planning.electrical.loads import Load
from panelcad.planning.electrical.tables import BREAKER_OF_GAUGE, BREAKER_SIZES, CONTINUOUS_DROP, INTERMITTENT_DROP
from panelcad.planning.electrical.wire import drop_is_allowed, next_breaker, smallest_gauge, voltage_drop
from panelcad.planning.report import finding, unknown

_BREAKER = "AC 43.13-1B paragraph 11-48 and table 11-3: load, breaker, wire, each at most the next"
_DROP = "AC 43.13-1B paragraph 11-66 and table 11-6"
_ONE_STEP = "AC 43.13-1B paragraph 11-49: a single wire in open air may take the next higher breaker"


@dataclass(frozen=True)
class CircuitLine:
    """A line of the schedule; A, V and mm. None is not known. `advised_gauge` keeps breaker and drop."""

    load: Load
    bus: str
    breaker: float | None
    breaker_is_stated: bool
    gauge: str | None
    advised_gauge: str | None
    length: float | None
    drop: float | None
    allowed_drop: float


def schedule(system: ElectricalSystem, all_loads: tuple[Load, ...]) -> tuple[CircuitLine, ...]:
    """The breaker panel schedule, by bus in the system's order, loads without a bus last."""
    names = {bus.id: bus.name for bus in system.buses}
    order = {bus.id: i for i, bus in enumerate(system.buses)}
    ranked = sorted(all_loads, key=lambda load: order.get(load.circuit.bus or "", len(order)))
    return tuple(_line(load, names.get(load.circuit.bus or "", ""), system) for load in ranked)


def _line(load: Load, bus: str, system: ElectricalSystem) -> CircuitLine:
    wire, peak = load.circuit.wire, load.peak
    amperes, allowed = _governing(load, system)
    breaker = load.stated_breaker or (next_breaker(peak) if peak else None)
    known = amperes is not None and wire.length is not None
    return CircuitLine(
        load=load,
        bus=bus,
        breaker=breaker,
        breaker_is_stated=load.stated_breaker is not None,
        gauge=wire.gauge,
        advised_gauge=_advised(wire.length, amperes, allowed, breaker),
        length=wire.length,
        drop=voltage_drop(wire.gauge, wire.length or 0.0, amperes or 0.0) if known and wire.gauge else None,
        allowed_drop=allowed,
    )


def _governing(load: Load, system: ElectricalSystem) -> tuple[float | None, float]:
    """The current in A and the drop allowed for it in V that ask most of the wire: continuous, or peak for moments."""
    continuous, moments = CONTINUOUS_DROP[system.voltage], INTERMITTENT_DROP[system.voltage]
    pairs = [
        (amperes, allowed) for amperes, allowed in ((load.continuous, continuous), (load.peak, moments)) if amperes
    ]
    return max(pairs, key=lambda pair: pair[0] / pair[1], default=(load.peak, continuous))


def _advised(length: float | None, amperes: float | None, allowed: float, breaker: float | None) -> str | None:
    if length is None or amperes is None or breaker is None:
        return None
    return smallest_gauge(length, amperes, allowed, breaker)


def judge_circuits(system: ElectricalSystem, all_loads: tuple[Load, ...]) -> Iterator[Finding]:
    """Loads above their breaker, breakers above their wire, drops above what is allowed; and what is not known."""
    unknown_wires = []
    for line in schedule(system, all_loads):
        yield from _load_above_breaker(line)
        yield from _breaker_above_wire(line)
        yield from _too_much_drop(line)
        if line.gauge is None or line.length is None:
            unknown_wires.append(line.load.id)
    if unknown_wires:
        yield unknown("wire-unknown", "Wire gauge or length is not entered, so it is not judged", *unknown_wires)


def _load_above_breaker(line: CircuitLine) -> Iterator[Finding]:
    amperes = line.load.peak
    if line.breaker is not None and amperes is not None and amperes > line.breaker:
        yield _amperes("load-above-breaker", line, "It draws more than its breaker carries", amperes, line.breaker)


def _breaker_above_wire(line: CircuitLine) -> Iterator[Finding]:
    if line.gauge is None or line.breaker is None:
        return
    most = BREAKER_OF_GAUGE.get(line.gauge)
    if most is None:
        yield unknown("wire-unprotected", f"Table 11-3 gives no breaker for wire {line.gauge}", line.load.id)
    elif line.breaker > most:
        severity, source = (Severity.WARNING, _ONE_STEP) if _is_next_step(line.breaker, most) else (Severity.ERROR, "")
        words = f"The breaker is larger than wire {line.gauge} allows"
        yield _amperes(
            "breaker-above-wire", line, words, line.breaker, most, severity=severity, source=source or _BREAKER
        )


def _is_next_step(breaker: float, most: float) -> bool:
    return breaker == next(size for size in BREAKER_SIZES if size > most)


def _too_much_drop(line: CircuitLine) -> Iterator[Finding]:
    if line.drop is not None and not drop_is_allowed(line.drop, line.allowed_drop):
        yield finding(
            "voltage-drop",
            Severity.ERROR,
            (line.load.id,),
            f"Wire {line.gauge} loses too much voltage over its length",
            _DROP,
            measure=Measure.VOLTS,
            measured=line.drop,
            required=line.allowed_drop,
            more_is_worse=True,
            advice=_thicker(line),
        )


def _amperes(  # noqa: PLR0913 - a finding says all of this
    rule: str,
    line: CircuitLine,
    problem: str,
    measured: float,
    required: float,
    *,
    severity: Severity = Severity.ERROR,
    source: str = _BREAKER,
) -> Finding:
    return finding(
        rule,
        severity,
        (line.load.id,),
        problem,
        source,
        measure=Measure.AMPERES,
        measured=measured,
        required=required,
        more_is_worse=True,
        advice=_thicker(line) if rule == "breaker-above-wire" else "",
    )


def _thicker(line: CircuitLine) -> str:
    return f"use wire {line.advised_gauge}" if line.advised_gauge else ""
