import pytest

from panelcad.model.finding import Finding, Severity
from panelcad.planning.electrical.circuits import judge_circuits, schedule
from panelcad.planning.electrical.loads import loads
from panelcad.planning.electrical.wire import MM_PER_FOOT
from tests.planning import kit

SYSTEM = {
    "voltage": 14,
    "buses": ({"id": "main", "name": "Main bus"}, {"id": "avionics", "name": "Avionics bus"}),
}


def box(amperes: float | None = 4.0, breaker: float | None = 5.0, peak: float | None = None) -> object:
    draw = None if amperes is None else {"continuous": amperes, "peak": peak}
    return kit.unit("box", draw_14=draw, breaker=breaker)


def judged(unit: object, gauge: str | None = "22", feet: float | None = 5.0, **circuit: object) -> dict[str, Finding]:
    wire = {"gauge": gauge, "length": None if feet is None else feet * MM_PER_FOOT}
    equipment = kit.fitted(
        unit, items=(kit.fit("box", circuit={"wire": wire, **circuit}),), planning={"electrical": SYSTEM}
    )
    assert equipment.system is not None
    return {f.rule: f for f in judge_circuits(equipment.system, loads(equipment))}


def test_load_breaker_and_wire_that_fit() -> None:
    assert judged(box()) == {}


@pytest.mark.parametrize(("breaker", "found"), [(5.0, 0), (7.5, 1), (10.0, 1)])
def test_a_breaker_larger_than_table_11_3_gives_the_wire(breaker: float, found: int) -> None:
    rules = judged(box(breaker=breaker))
    assert ("breaker-above-wire" in rules) == bool(found)


def test_the_next_larger_breaker_is_a_warning() -> None:
    """AC 43.13-1B paragraph 11-49 lets a single wire in open air take it."""
    assert judged(box(breaker=7.5))["breaker-above-wire"].severity is Severity.WARNING
    assert judged(box(breaker=10.0))["breaker-above-wire"].severity is Severity.ERROR


@pytest.mark.parametrize(("amperes", "found"), [(5.0, 0), (5.1, 1)])
def test_a_load_above_its_breaker(amperes: float, found: int) -> None:
    assert ("load-above-breaker" in judged(box(amperes), feet=1.0)) == bool(found)


@pytest.mark.parametrize(("feet", "found"), [(7.7, 0), (8.2, 1)])
def test_a_run_that_drops_too_much(feet: float, found: int) -> None:
    """No. 22 at 4 A may be 7.7 ft long for 0.5 V (table 11-9: 16.20 ohm/1000 ft)."""
    assert ("voltage-drop" in judged(box(), feet=feet)) == bool(found)


def test_the_items_own_breaker_comes_first() -> None:
    assert "breaker-above-wire" in judged(box(breaker=5.0), breaker=15.0)


def test_the_schedule_advises_a_gauge_and_a_breaker() -> None:
    wire = {"length": 20 * MM_PER_FOOT}
    items = (kit.fit("box", circuit={"wire": wire, "bus": "avionics"}),)
    equipment = kit.fitted(box(4.0, None, 6.0), items=items, planning={"electrical": SYSTEM})
    assert equipment.system is not None
    (line,) = schedule(equipment.system, loads(equipment))
    assert (line.breaker, line.breaker_is_stated, line.bus) == (7.5, False, "Avionics bus")
    assert line.advised_gauge == "18"  # 20 ft, 4 A: No. 18 drops 0.498 V (6.23 ohm/1000 ft), No. 20 0.790 V
    assert line.drop is None


def test_a_wire_nobody_entered_is_said() -> None:
    assert judged(box(), gauge=None)["wire-unknown"].items == ("box",)
    assert "wire-unknown" in judged(box(), feet=None)


def test_a_gauge_without_a_breaker_in_the_table_is_said() -> None:
    assert "wire-unprotected" in judged(box(), gauge="0")


def test_a_wire_that_loses_too_much_names_the_one_that_does_not() -> None:
    """20 ft at 4 A for 0.5 V: No. 18 (6.23 ohm/1000 ft) loses 0.498 V."""
    cure = judged(box(), feet=20.0)["voltage-drop"].cure
    assert cure is not None
    assert cure.advice == "use wire 18"
