"""The load table an amateur builder published in the 1990s, modelled on a certificated four-seater's analysis, and the
emergency power form of an approved installation manual."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.model.equipment import Phase
from panelcad.planning.electrical.capacity import (
    LIMIT,
    SHORT_LIMIT,
    capacity_needed,
    endurance,
    least_rating,
    utilisation,
)
from panelcad.planning.electrical.judge import electrical, judge_electrical
from tests.planning import kit

CONTINUOUS = (0.50, 0.03, 0.03, 0.60, 7.00, 5.60, 4.25, 0.25, 0.30, 1.25, 0.01, 0.00, 0.75, 0.08)
AVIONICS = (1.60, 0.35, 0.70, 0.20, 0.90, 0.30, 1.00, 0.10, 0.35)
SHORT_TERM = (0.65, 8.00, 7.50, 29.00, 6.80)


def system(rating: float | None = 35.0, capacity: float | None = None, extra: float = 0.0) -> dict[str, object]:
    loads = [
        {"id": f"c{i}", "name": f"Continuous {i}", "draw": {"continuous": a}}
        for i, a in enumerate((*CONTINUOUS, *AVIONICS, *([extra] if extra else [])))
    ]
    loads += [
        {"id": f"s{i}", "name": f"Short {i}", "draw": {"peak": a}, "duty": "intermittent"}
        for i, a in enumerate(SHORT_TERM)
    ]
    return {
        "voltage": 14,
        "alternators": ({"id": "alternator", "name": "Alternator", "rating": rating},),
        "battery": {"capacity": capacity},
        "loads": tuple(loads),
    }


def test_the_published_table_adds_up() -> None:
    """20.65 and 5.50 make 26.15 A continuous, 51.95 A short term, 78.10 A in all."""
    assert sum(CONTINUOUS) == pytest.approx(20.65, abs=0.005)
    assert sum(AVIONICS) == pytest.approx(5.50, abs=0.005)
    figures = electrical(kit.fitted(planning={"electrical": system()}))
    assert figures is not None
    (cruise,) = (row for row in figures.phases if row.phase is Phase.CRUISE)
    assert cruise.continuous == pytest.approx(26.15, abs=0.005)
    assert cruise.intermittent == pytest.approx(51.95, abs=0.005)
    assert cruise.continuous + cruise.intermittent == pytest.approx(78.10, abs=0.005)


def test_eighty_percent_of_the_alternator() -> None:
    """AC 43.13-1B 11-35a: 26.15 A of 35 A is 74.7 % and passes; with pitot heat, 6.5 A more, 93.3 % does not."""
    assert utilisation(26.15, 35.0) == pytest.approx(0.747, abs=0.0005)
    assert least_rating(26.15) == pytest.approx(32.69, abs=0.05)
    assert utilisation(32.65, 35.0) == pytest.approx(0.933, abs=0.0005)
    assert LIMIT < utilisation(32.65, 35.0) < SHORT_LIMIT
    assert "overload" not in rules(system())
    assert "overload" in rules(system(extra=6.5))


def rules(entered: dict[str, object]) -> set[str]:
    return {f.rule for f in judge_electrical(kit.fitted(planning={"electrical": entered}))}


@pytest.mark.parametrize(("rating", "is_over"), [(32.69, 0), (32.68, 1)])
def test_just_inside_and_just_outside_the_limit(rating: float, is_over: int) -> None:
    assert ("overload" in rules(system(rating=rating))) == bool(is_over)


LIGHTS = (
    {"id": "heat", "name": "Pitot heat", "provides": ("pitot heat",), "draw": {"continuous": 6.5}},
    {
        "id": "light",
        "name": "Landing light",
        "provides": ("landing light",),
        "draw": {"continuous": 7.5},
        "phases": ("landing",),
    },
)


@pytest.mark.parametrize(
    ("other", "expected"), [(12.0, []), (16.0, ["load-above-80"]), (21.4, ["load-above-80"]), (21.6, ["overload"])]
)
def test_the_landing_light_may_carry_the_load_to_95_percent(other: float, expected: list[str]) -> None:
    """Approved installation manuals. Of 37.4 A 80 % are 29.9 A and 95 % are 35.5 A."""
    rest = {"id": "rest", "name": "Rest", "draw": {"continuous": other}}
    entered = {"voltage": 14, "alternators": ({"id": "a", "name": "A", "rating": 37.4},), "loads": (*LIGHTS, rest)}
    found = [f.rule for f in judge_electrical(kit.fitted(planning={"electrical": entered})) if f.measured]
    assert found == expected


def test_battery_endurance_of_the_installation_manuals_form() -> None:
    """35 Ah at 0.75; 43.5 A for 5 min, 48.1 A for 10 min, then 34.0 A: 1575 - 217.5 - 481 = 876.5 A-min, 40.8 min."""
    lasts = endurance(35.0, 0.75, normal=43.5, landing=48.1, kept=34.0)
    assert lasts.available == pytest.approx(1575.0)
    assert lasts.until_shed == pytest.approx(217.5)
    assert lasts.for_landing == pytest.approx(481.0)
    assert lasts.cruise_minutes == pytest.approx(25.8, abs=0.05)
    assert lasts.total_minutes == pytest.approx(40.8, abs=0.05)
    assert lasts.is_enough


@given(st.floats(1, 100), st.floats(0.5, 60), st.floats(0.5, 60), st.floats(0.5, 60))
def test_a_heavier_load_never_makes_the_battery_last_longer(
    capacity: float, normal: float, landing: float, kept: float
) -> None:
    light = endurance(capacity, 0.75, normal, landing, kept).total_minutes
    heavy = endurance(capacity, 0.75, normal * 1.5, landing, kept).total_minutes
    assert light is not None
    assert heavy is not None
    assert heavy <= light + 1e-9


def test_the_battery_needed_is_the_one_that_just_lasts() -> None:
    entered = kit.fitted(planning={"electrical": system()}).system
    assert entered is not None
    needed = capacity_needed(entered, 0.75, 43.5, 48.1, 34.0)
    lasts = endurance(needed, 0.75, 43.5, 48.1, 34.0)
    assert lasts.total_minutes == pytest.approx(30.0)


def test_what_is_not_entered_is_said() -> None:
    assert rules(system(rating=None)) >= {"alternator-unknown", "battery-unknown"}
    assert {f.rule for f in judge_electrical(kit.fitted())} == {"system-unknown"}


def test_a_missing_current_is_unknown_and_in_no_sum() -> None:
    box = kit.unit("box", draw_28={"continuous": 1.0})
    equipment = kit.fitted(box, planning={"electrical": system()})
    (found,) = (f for f in judge_electrical(equipment) if f.rule == "load-unknown")
    assert found.items == ("box",)
    figures = electrical(equipment)
    assert figures is not None
    assert figures.unknown == ("box",)
    assert figures.worst.continuous == pytest.approx(26.15)


def test_a_flat_battery_is_an_error() -> None:
    box = kit.unit("box", draw_14={"continuous": 20.0})
    items = (kit.fit("box", circuit={"after_failure": "kept"}),)
    entered = {"voltage": 14, "alternators": ({"id": "a", "name": "A", "rating": 60.0},), "battery": {"capacity": 10.0}}
    (found,) = (
        f
        for f in judge_electrical(kit.fitted(box, items=items, planning={"electrical": entered}))
        if f.rule == "battery-endurance"
    )
    assert found.measured == pytest.approx(10.0 * 0.75 * 60 / 20)
    assert found.required == 30.0
    assert found.cure is not None
    assert found.cure.advice.endswith("a battery of at least 14 Ah")  # 30 min × 20 A / (60 × 0.75) = 13.3 Ah


def test_an_overload_names_the_alternator_that_would_do() -> None:
    found = next(
        f for f in judge_electrical(kit.fitted(planning={"electrical": system(extra=6.5)})) if f.rule == "overload"
    )
    assert found.cure is not None
    assert found.cure.value == 40.9  # 32.65 / 0.80 = 40.81, rounded up


@pytest.mark.parametrize(("amperes", "expected"), [(40.0, []), (40.1, ["left", "right"]), (24.1, ["left"])])
def test_after_one_of_two_alternators_the_other_is_held_to_eighty_percent(amperes: float, expected: list[str]) -> None:
    """AC 43.13-1B 11-35a applied to what is left: 80 % of 50 A is 40 A, of 30 A 24 A."""
    left = 30.0 if amperes < 40.0 else 50.0
    ratings = (("left", 50.0), ("right", left))
    entered = {
        "voltage": 28,
        "alternators": tuple({"id": name, "name": name, "rating": rating} for name, rating in ratings),
        "loads": ({"id": "all", "name": "All", "draw": {"continuous": amperes}},),
    }
    found = judge_electrical(kit.fitted(planning={"electrical": entered}))
    assert [f.items[0] for f in found if f.rule == "alternator-lost"] == expected


def test_without_a_kept_load_endurance_is_not_judged() -> None:
    assert "nothing-kept" in rules(system(capacity=35.0))
