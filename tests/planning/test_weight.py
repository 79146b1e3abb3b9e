"""Worked examples of AC 43.13-1B chapter 10 and of the FAA handbooks, in pounds and inches as printed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.model.planning import WeightAndBalance
from panelcad.planning.balance import balance, is_negligible, judge_balance
from panelcad.planning.envelope import extremes, is_inside, limits_at
from panelcad.planning.equipment import equipment
from panelcad.planning.weight import (
    Loading,
    Mass,
    ballast,
    chord_share,
    empty_loading,
    least_fuel_of_power,
    weight_change,
)
from panelcad.units import KG_PER_POUND, MM_PER_INCH
from tests.planning import kit

LB_IN = KG_PER_POUND * MM_PER_INCH


def lb(pounds: float) -> float:
    return pounds * KG_PER_POUND


def inch(inches: float) -> float:
    return inches * MM_PER_INCH


def loading(pounds: float, moment: float) -> Loading:
    return Loading(lb(pounds), moment * LB_IN)


def at(pounds: float, arm: float) -> Mass:
    return Mass(lb(pounds), inch(arm))


def is_loading(found: Loading, pounds: float, moment: float, arm: float, tolerance: float = 0.005) -> None:
    assert found.kg / KG_PER_POUND == pytest.approx(pounds, abs=0.005)
    assert found.moment / LB_IN == pytest.approx(moment, abs=max(0.5, tolerance))
    assert found.arm / MM_PER_INCH == pytest.approx(arm, abs=tolerance)


def test_equipment_change_of_a_knowledge_test() -> None:
    """Two seats out, cabinet, seat and radio in: 3,003 lb, 110,670.78, 36.85 in, 1.62 in aft."""
    old = loading(2886, 101_673.78)
    new = old.plus([at(-30, 71), at(97, 71), at(20, 71), at(30, 94)])
    is_loading(new, 3003, 110_670.78, 36.853)
    assert (new.arm - old.arm) / MM_PER_INCH == pytest.approx(1.623, abs=0.005)


@pytest.mark.parametrize(
    ("seat", "pounds", "moment", "arm"), [(25, 2141, 72_118.5, 33.684), (35, 2151, 72_863.5, 33.874)]
)
def test_equipment_change_in_its_two_published_variants(seat: float, pounds: float, moment: float, arm: float) -> None:
    old = Loading(lb(2100), lb(2100) * inch(32.5))
    is_loading(old.plus([at(-36, 73), at(17, 77), at(seat, 74.5), at(35, 95)]), pounds, moment, arm)


def sheet(**fields: object) -> WeightAndBalance:
    """The aircraft of AC 43.13-1B figures 10-10 to 10-13."""
    stations = (
        ("oil", -49.0, 17.0, 17.0, False),
        ("pilot", 16.0, 170.0, 170.0, False),
        ("rear", 48.0, 340.0, 0.0, False),
        ("fuel", 22.0, 240.0, 0.0, True),
        ("baggage", 75.5, 100.0, 0.0, False),
    )
    plain = {
        "datum": "leading edge of the wing",
        "empty_mass": lb(1169),
        "empty_arm": inch(10.6),
        "most_mass": lb(2100),
        "least_fuel": lb(83),
        "envelope": tuple(
            {"arm": inch(arm), "mass": lb(mass)} for arm, mass in ((8.5, 1000), (8.5, 2100), (21.9, 2100), (21.9, 1000))
        ),
        "stations": tuple(
            {"id": name, "name": name, "arm": inch(arm), "most": lb(most), "least": lb(least), "is_fuel": fuel}
            for name, arm, most, least, fuel in stations
        ),
    }
    return WeightAndBalance.model_validate(plain | fields)


def cases(**fields: object) -> dict[str, object]:
    entered = sheet(**fields)
    empty = empty_loading(entered)
    assert empty is not None
    return {case.name: case for case in extremes(entered, empty)}


def test_most_forward_extreme_of_figure_10_10() -> None:
    """1,439 lb, 16,104, +11.2 in: inside +8.5. The figure rounds its moments (1169 x 10.6 is 12391.4)."""
    case = cases()["most forward"]
    is_loading(case.loading, 1439, 16_104, 11.19, 0.05)
    assert case.is_inside is True


def test_most_rearward_extreme_of_figure_10_11() -> None:
    """2,036 lb, 43,428, +21.3 in: inside +21.9."""
    case = cases()["most rearward"]
    is_loading(case.loading, 2036, 43_428, 21.33, 0.05)
    assert case.is_inside is True


def test_maximum_passengers_of_figure_10_13() -> None:
    """2,100 lb, 38,466, +18.32 in; the figure prints +18.6."""
    empty = Loading(lb(1169), lb(1169) * inch(10.6))
    full = empty.plus([at(17, -49), at(170, 16), at(170, 16), at(340, 48), at(234, 22)])
    is_loading(full, 2100, 38_466, 18.32, 0.05)
    assert is_inside(sheet().envelope, full)


def test_weighing_of_a_nose_wheel_aircraft() -> None:
    """FAA general handbook figure 4-20: 1,331.5 lb, 66,698, 50.09 in (the result line worked out here)."""
    wheels = [at(650 - 5, 70), at(640 - 5, 70), at(225 - 2.5, -30), at(-30 * 5.9, 95), at(6, 98)]
    is_loading(Loading(0.0, 0.0).plus(wheels), 1331.5, 66_698, 50.09, 0.05)


def test_percent_of_the_chord_and_added_mass() -> None:
    """A published example: LEMAC 625.6, MAC 134.5; CG 663 is 27.8 %; 2,500 lb at 360 make 645.59, 14.86 %."""
    assert 100 * chord_share(663, 625.6, 134.5) == pytest.approx(27.8, abs=0.05)
    heavier = loading(41_000, 41_000 * 663).plus([at(2500, 360)])
    assert heavier.arm / MM_PER_INCH == pytest.approx(645.59, abs=0.05)
    assert 100 * chord_share(heavier.arm / MM_PER_INCH, 625.6, 134.5) == pytest.approx(14.86, abs=0.05)


def test_least_fuel_is_half_a_pound_for_each_horsepower() -> None:
    """AC 43.13-1B figure 10-10: 165 hp is 13.75 gallons, 82.5 lb."""
    assert least_fuel_of_power(165) / KG_PER_POUND == pytest.approx(82.5)


def test_ballast_brings_the_cg_where_it_is_wanted() -> None:
    """AC 43.13-1B figure 10-19's formula, checked by adding the ballast."""
    now = loading(1900, 1900 * 22.5)
    kg = ballast(now, inch(21.9), inch(-20.0))
    assert now.plus([Mass(kg, inch(-20.0))]).arm / MM_PER_INCH == pytest.approx(21.9)


@pytest.mark.parametrize(("added", "expected"), [(1.0, 1), (1.5, 0), (-1.0, 1)])
def test_a_pound_is_negligible_below_5000(added: float, expected: int) -> None:
    """AC 43.13-1B paragraph 10-2c."""
    old = loading(2000, 2000 * 10.0)
    assert is_negligible(old, old.plus([at(added, 10.0)]), None) == bool(expected)


def test_half_a_thousandth_of_the_chord_is_the_limit_of_a_negligible_shift() -> None:
    old = Loading(1000.0, 0.0)
    assert is_negligible(old, Loading(1000.0, 1000.0 * 0.49), 1000.0)
    assert not is_negligible(old, Loading(1000.0, 1000.0 * 0.51), 1000.0)


def test_a_removed_item_ahead_of_the_datum_gives_a_positive_moment() -> None:
    """FAA general handbook, equipment change: 5 lb at -20 removed is +100."""
    assert at(-5, -20).moment / LB_IN == pytest.approx(100)


BOX = kit.unit("box", mass="5 lb")
HEAVY = kit.unit("heavy", mass="8 lb")


def option(*items: object, found: tuple[object, ...] = (), **fields: object) -> object:
    plain = {"weight": sheet(**fields)}
    project = kit.project(BOX, HEAVY, items=tuple(items), as_found_items=found, planning=plain)
    return equipment(project, project.option("new"))


def test_an_option_states_what_comes_out_and_what_goes_in() -> None:
    change = weight_change(option(kit.fit("heavy", arm=inch(30)), found=(kit.fit("box", arm=inch(-20)),)))
    assert [(line.what, line.item) for line in change.lines] == [("removed", "box"), ("installed", "heavy")]
    assert change.new is not None
    is_loading(change.new, 1172, 1169 * 10.6 + 100 + 240, (1169 * 10.6 + 340) / 1172)
    assert change.useful_load == pytest.approx(lb(2100 - 1172))


def test_useful_load_of_the_circulars_aircraft() -> None:
    """AC 43.13-1B paragraph 10-2d: 2,100 less 1,169 is 931 lb."""
    assert weight_change(option()).useful_load == pytest.approx(lb(931))


def test_a_moved_item_is_taken_out_and_put_back() -> None:
    change = weight_change(option(kit.fit("box", arm=inch(120)), found=(kit.fit("box", arm=inch(20)),)))
    assert [line.what for line in change.lines] == ["moved from", "moved to"]
    assert change.known_difference.kg == 0
    assert change.known_difference.moment / LB_IN == pytest.approx(500)


def test_an_arm_nobody_entered_is_not_zero() -> None:
    change = weight_change(option(kit.fit("box")))
    assert change.unknown == ("box",)
    assert change.new is None
    assert change.known_mass_difference == pytest.approx(lb(5))


def test_the_panels_arm_stands_for_what_is_behind_it() -> None:
    change = weight_change(option(kit.fit("box", place="behind the panel"), panel_arm=inch(17)))
    assert change.lines[0].arm == pytest.approx(inch(17))


def test_what_is_not_known_is_said() -> None:
    assert {f.rule for f in judge_balance(option(kit.fit("box")))} == {"weight-unknown"}
    assert {f.rule for f in judge_balance(kit.fitted(BOX))} == {"weight-unknown", "empty-weight-unknown"}
    assert {f.rule for f in judge_balance(option(envelope=()))} == {"envelope-unknown"}


def test_a_loading_behind_the_aft_limit_is_an_error_with_its_arm() -> None:
    tail = kit.fit("heavy", arm=inch(260))
    found = {f.features[0]: f for f in judge_balance(option(tail))}
    assert set(found) == {"most rearward", "heaviest"}
    assert found["most rearward"].required == pytest.approx(inch(21.9))
    assert (found["most rearward"].measured or 0) > inch(21.9)


def test_the_envelopes_slope_is_followed() -> None:
    slope = sheet(
        envelope=tuple(
            {"arm": inch(a), "mass": lb(m)}
            for a, m in ((8.0, 1000), (8.0, 1600), (12.0, 2100), (20.0, 2100), (20.0, 1000))
        )
    ).envelope
    limits = limits_at(slope, lb(1850))
    assert limits is not None
    assert limits[0] / MM_PER_INCH == pytest.approx(10.0)
    assert limits_at(slope, lb(2200)) is None


ARMS = st.floats(-2000, 6000)
KILOGRAMS = st.floats(0, 50)


@given(st.lists(st.tuples(KILOGRAMS, ARMS), max_size=8), st.floats(300, 2000), ARMS)
def test_moments_add_up_and_removing_and_re_adding_changes_nothing(
    boxes: list[tuple[float, float]], kg: float, arm: float
) -> None:
    empty = Loading(kg, kg * arm)
    installed = [Mass(m, a) for m, a in boxes]
    full = empty.plus(installed)
    assert full.moment == pytest.approx(empty.moment + sum(m * a for m, a in boxes), abs=1e-6)
    back = full.plus(Mass(-m.kg, m.arm) for m in installed)
    assert back.kg == pytest.approx(empty.kg, abs=1e-9)
    assert back.moment == pytest.approx(empty.moment, abs=1e-6)


@given(st.lists(st.sampled_from(["box", "heavy"]), max_size=4))
def test_an_option_equal_to_the_aircraft_as_found_changes_nothing(units: list[str]) -> None:
    items = tuple(kit.fit(name, f"i{i}", arm=float(100 * i)) for i, name in enumerate(units))
    figures = balance(option(*items, found=items))
    assert figures.change.lines == ()
    assert figures.change.new == figures.change.old
