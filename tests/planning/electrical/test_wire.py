"""Worked examples of AC 43.13-1B chapter 11. Misprints found in them by working them out again are named."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.model.planning import Voltage
from panelcad.planning.electrical.tables import (
    BREAKER_OF_GAUGE,
    CONTINUOUS_DROP,
    FUSE_OF_GAUGE,
    TABLE_11_9,
)
from panelcad.planning.electrical.wire import (
    MM_PER_FOOT,
    conductor_temperature,
    derated,
    drop_is_allowed,
    hot_run,
    longest_run,
    next_breaker,
    protected_by,
    smallest_gauge,
    switch_rating,
    voltage_drop,
)


def feet(number: float) -> float:
    return number * MM_PER_FOOT


@pytest.mark.parametrize(
    ("gauge", "run_ft", "volts"),
    [
        ("6", 107, 0.942),  # table 11-7
        ("4", 90, 0.504),  # table 11-7
        ("12", 88, 3.555),  # table 11-7 prints 3.60
        ("14", 100, 6.12),  # table 11-7
        ("10", 39, 0.983),  # table 11-8
        ("10", 19.5, 0.491),  # table 11-8 prints .366
        ("10", 156, 3.931),  # table 11-8
        ("10", 273, 6.880),  # table 11-8
    ],
)
def test_voltage_drop_of_tables_11_7_and_11_8(gauge: str, run_ft: float, volts: float) -> None:
    assert voltage_drop(gauge, feet(run_ft), 20.0) == pytest.approx(volts, abs=0.001)


def test_the_circulars_own_example_of_no_4_is_not_refused() -> None:
    """Table 11-7 accepts 0.504 V where 0.5 V is allowed."""
    assert drop_is_allowed(voltage_drop("4", feet(90), 20.0), 0.5)
    assert not drop_is_allowed(0.506, 0.5)


def test_example_1_of_11_68() -> None:
    """50 ft, 20 A continuous, 28 V: No. 8; No. 10 would lose 1.26 V, No. 8 loses 0.70 V."""
    allowed = CONTINUOUS_DROP[Voltage.V28]
    assert smallest_gauge(feet(50), 20.0, allowed, breaker=20.0) == "8"
    assert voltage_drop("10", feet(50), 20.0) == pytest.approx(1.26, abs=0.001)
    assert voltage_drop("8", feet(50), 20.0) == pytest.approx(0.70, abs=0.001)


def test_example_2_of_11_68() -> None:
    """15.5 ft, 20 A, 28 V, 200 °C wire at 50 °C in a bundle of 8 at 20,000 ft: No. 14 fails, No. 12 is accepted.

    The conductor's temperature rests on a formula from memory.
    """
    assert derated(47.0, 0.91, 0.6) == pytest.approx(25.7, abs=0.05)
    hot = conductor_temperature(50.0, 200.0, 20.0, 26.0)
    assert hot == pytest.approx(181.6, abs=0.5)
    assert hot_run(15.5, hot) == pytest.approx(9.48, abs=0.05)
    assert hot_run(15.5, hot) < 15.5
    assert hot_run(24.0, 160.3) == pytest.approx(15.47, abs=0.05)


@given(st.floats(0.1, 1000.0))
def test_at_twenty_degrees_nothing_is_shortened(run: float) -> None:
    assert math.isclose(hot_run(run, 20.0), run, rel_tol=1e-12)


@pytest.mark.parametrize(
    ("gauge", "runs_ft"),
    [
        ("22", (6.2, 12.3, 3.1, 6.2, 1.5, 3.1)),
        ("20", (10.1, 20.2, 5.1, 10.1, 2.5, 5.1)),
        ("18", (16.1, 32.1, 8.0, 16.1, 4.0, 8.0)),
        ("16", (20.8, 41.6, 10.4, 20.8, 5.2, 10.4)),
        ("14", (32.7, 65.4, 16.3, 32.7, 8.2, 16.3)),
        ("12", (49.5, 99.0, 24.8, 49.5, 12.4, 24.8)),
        ("10", (79.4, 158.7, 39.7, 79.4, 19.8, 39.7)),
        ("8", (142.9, 285.7, 71.4, 142.9, 35.7, 71.4)),
        ("6", (227.3, 454.5, 113.6, 227.3, 56.8, 113.6)),
        ("4", (357.1, 714.3, 178.6, 357.1, 89.3, 178.6)),
    ],
)
def test_longest_runs(gauge: str, runs_ft: tuple[float, ...]) -> None:
    """L = 1000 VD / (R I) with R of table 11-9; the chart of figure 11-2 reads up to 5 % shorter."""
    cases = [(5.0, 0.5), (5.0, 1.0), (10.0, 0.5), (10.0, 1.0), (20.0, 0.5), (20.0, 1.0)]
    for (amperes, volts), run in zip(cases, runs_ft, strict=True):
        assert longest_run(gauge, volts, amperes) / MM_PER_FOOT == pytest.approx(run, abs=0.06)


@pytest.mark.parametrize(("gauge", "run_ft", "volts"), [("10", 39, 1.0), ("14", 15.5, 1.0), ("12", 24, 1.0)])
def test_readings_of_the_chart_lie_within_five_percent(gauge: str, run_ft: float, volts: float) -> None:
    """Figure 11-2 as read in table 11-8 and the examples of 11-68."""
    assert longest_run(gauge, volts, 20.0) / MM_PER_FOOT == pytest.approx(run_ft, rel=0.055)


def test_table_11_3_pairs_each_gauge_with_breaker_and_fuse() -> None:
    assert [
        BREAKER_OF_GAUGE.get(g) for g in ("22", "20", "18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "0")
    ] == [
        5,
        7.5,
        10,
        15,
        20,
        30,
        40,
        50,
        80,
        100,
        125,
        None,
        None,
    ]
    assert list(FUSE_OF_GAUGE.values()) == [5, 5, 10, 10, 15, 20, 30, 50, 70, 70, 100, 150, 150]


def test_table_11_4_rates_a_switch() -> None:
    assert switch_rating(4.0, 28, "motor") == 12.0
    assert switch_rating(1.5, 28, "lamp") == 12.0


def test_thicker_wire_carries_more_and_resists_less() -> None:
    for thin, thick in pairwise(TABLE_11_9):
        assert thin.ohms > thick.ohms
        assert thin.amperes_105 < thick.amperes_105
        assert thin.circular_mils < thick.circular_mils


@given(st.floats(0.1, 40.0), st.floats(10.0, 20_000.0))
def test_the_smallest_gauge_keeps_drop_and_breaker_and_the_next_thinner_does_not(amperes: float, length: float) -> None:
    breaker = next_breaker(amperes)
    assert breaker is not None
    gauge = smallest_gauge(length, amperes, 1.0, breaker)
    names = [size.gauge for size in TABLE_11_9]
    protected = [size.gauge for size in protected_by(breaker)]
    if gauge is None:
        assert not drop_is_allowed(voltage_drop(protected[-1], length, amperes), 1.0)
        return
    assert gauge in protected
    thinner = names[names.index(gauge) - 1]
    assert thinner not in protected or not drop_is_allowed(voltage_drop(thinner, length, amperes), 1.0)
