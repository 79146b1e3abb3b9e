"""Check cases of common practice: a combined GPS/NAV/COM beside a NAV/COM, a navigator that controls two boxes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.model.function import Function, Supply
from panelcad.planning.equipment import Equipment
from panelcad.planning.failures import FailureKind, failures, outcome, outcomes
from panelcad.planning.redundancy import judge_redundancy, matrix
from panelcad.planning.working import working
from tests.planning import kit

NAVIGATOR = kit.unit(
    "navigator", provides=("NAV", "GPS position", "GPS navigation", "COM"), supplies=("position source",)
)
NAVCOM = kit.unit("navcom", provides=("NAV", "COM"))
PUMP = kit.unit("pump", supplies=("vacuum",), power="none")
GYRO = kit.unit("gyro", provides=("attitude",), power="vacuum", needs=({"supply": "vacuum"},))
DISPLAY = kit.unit(
    "display",
    provides=("attitude", "airspeed", "altitude", "slip"),
    needs=(
        {"supply": "attitude source", "for_functions": ("attitude",)},
        {"supply": "air data", "for_functions": ("airspeed", "altitude")},
    ),
)
SENSOR = kit.unit("sensor", supplies=("attitude source", "air data"))
STANDBY = kit.unit("standby", provides=("attitude", "airspeed", "altitude"), power="electrical with its own battery")
SYSTEM = {
    "voltage": 14,
    "alternators": ({"id": "alternator", "name": "Alternator", "rating": 60.0},),
    "battery": {"capacity": 35.0},
    "buses": (
        {"id": "main", "name": "Main bus", "fed_by": ("alternator", "battery")},
        {"id": "avionics", "name": "Avionics bus", "fed_by": ("main",)},
    ),
}


def rows(*units: object, **fields: object) -> dict[Function, tuple[int, int]]:
    found = matrix(kit.fitted(*units, **fields))
    return {row.function: (len(row.providers), row.independent) for row in found}


def test_a_combined_navigator_and_a_navcom_give_two_com_two_nav_one_gps() -> None:
    found = rows(NAVIGATOR, NAVCOM)
    assert (found[Function.COM], found[Function.NAV], found[Function.GPS_POSITION]) == ((2, 2), (2, 2), (1, 1))


def test_two_displays_on_one_sensor_are_one_independent_source() -> None:
    found = rows(DISPLAY, SENSOR, kit.unit("display-2", **_plain_display()))
    assert found[Function.ATTITUDE] == (2, 1)
    assert found[Function.SLIP] == (2, 2)


def _plain_display() -> dict[str, object]:
    return {"provides": DISPLAY.provides, "needs": DISPLAY.needs}


def test_a_display_without_its_sensor_shows_nothing_of_it() -> None:
    assert rows(DISPLAY)[Function.ATTITUDE] == (0, 0)
    assert rows(DISPLAY)[Function.SLIP] == (1, 1)


def test_a_failed_display_takes_all_its_roles() -> None:
    equipment = kit.fitted(DISPLAY, SENSOR, NAVCOM)
    (display,) = (f for f in failures(equipment) if f.id == "display")
    assert display.kind is FailureKind.DISPLAY
    assert set(outcome(equipment, display).gone) == {
        Function.ATTITUDE,
        Function.AIRSPEED,
        Function.ALTITUDE,
        Function.SLIP,
    }


def test_a_failed_pump_takes_what_it_drives() -> None:
    equipment = kit.fitted(PUMP, GYRO, STANDBY)
    (pump,) = (f for f in failures(equipment) if f.kind is FailureKind.VACUUM)
    (loss,) = outcome(equipment, pump).losses
    assert (loss.function, loss.before, loss.after) == (Function.ATTITUDE, ("gyro", "standby"), ("standby",))


def on(unit_name: str, bus: str, **circuit: object) -> object:
    return kit.fit(unit_name, circuit={"bus": bus, **circuit})


def test_a_dead_bus_takes_the_buses_it_feeds() -> None:
    items = (on("navigator", "avionics"), on("navcom", "main"), kit.fit("standby", circuit={"bus": "main"}))
    equipment = kit.fitted(NAVIGATOR, NAVCOM, STANDBY, items=items, planning={"electrical": SYSTEM})
    left = {f.id: outcome(equipment, f).left for f in failures(equipment) if f.kind is FailureKind.BUS}
    assert Function.COM not in left["main"]
    assert Function.ATTITUDE in left["main"]
    assert left["avionics"] >= {Function.COM, Function.NAV}
    assert Function.GPS_POSITION not in left["avionics"]


def test_an_encoding_altimeters_pointer_needs_no_power() -> None:
    unit = kit.unit(
        "alt", provides=("altitude", "altitude reporting"), supplies=("pressure altitude",), unpowered=("altitude",)
    )
    needy = kit.unit("xpdr", provides=("transponder",), power="none", needs=({"supply": "pressure altitude"},))
    equipment = kit.fitted(unit, needy)
    left = working(equipment, dark=frozenset({"alt"}))
    assert left.functions == {"alt": {Function.ALTITUDE}}


def test_after_the_only_alternator_the_battery_keeps_what_is_kept() -> None:
    items = (on("navigator", "avionics"), on("navcom", "main", after_failure="kept"))
    equipment = kit.fitted(NAVIGATOR, NAVCOM, items=items, planning={"electrical": SYSTEM})
    (lost,) = (f for f in failures(equipment) if f.kind is FailureKind.ALTERNATOR)
    assert lost.dark == {"navigator"}


def test_a_second_alternator_carries_its_buses() -> None:
    second = {"id": "standby-alternator", "name": "Standby alternator", "rating": 20.0}
    system = {**SYSTEM, "alternators": (*SYSTEM["alternators"], second)}
    buses = (
        {"id": "main", "name": "Main", "fed_by": ("alternator",)},
        {"id": "avionics", "name": "Essential", "fed_by": ("standby-alternator",)},
    )
    items = (on("navigator", "avionics"), on("navcom", "main"))
    equipment = kit.fitted(NAVIGATOR, NAVCOM, items=items, planning={"electrical": {**system, "buses": buses}})
    dark = {f.id: f.dark for f in failures(equipment) if f.kind is FailureKind.ALTERNATOR}
    assert dark == {"alternator": {"navcom"}, "standby-alternator": {"navigator"}}


@pytest.mark.parametrize(
    ("flight", "expected"),
    [
        ("day VFR", {("display", "airspeed"), ("display", "altitude"), ("sensor", "airspeed"), ("sensor", "altitude")}),
        (
            "day IFR",
            {(u, f) for u in ("display", "sensor") for f in ("airspeed", "altitude", "attitude")}
            | {("navcom", "one COM"), ("navcom", "one NAV")},
        ),
    ],
)
def test_single_failures_are_judged_for_the_intended_flight(flight: str, expected: set[tuple[str, str]]) -> None:
    found = judge_redundancy(kit.fitted(DISPLAY, SENSOR, NAVCOM, planning={"flight": flight}))
    assert {(f.items[0], f.features[0]) for f in found} == expected


def test_a_standby_with_its_own_battery_and_a_second_radio_leave_enough() -> None:
    equipment = kit.fitted(DISPLAY, SENSOR, STANDBY, NAVCOM, NAVIGATOR, planning={"flight": "night IFR"})
    assert list(judge_redundancy(equipment)) == []


def test_without_a_kind_of_flight_nothing_is_judged_and_it_is_said() -> None:
    (found,) = judge_redundancy(kit.fitted(NAVCOM))
    assert found.rule == "flight-unknown"


FUNCTIONS = st.sets(st.sampled_from(list(Function)[:12]), max_size=4)
SUPPLIES = st.sets(st.sampled_from(list(Supply)[:6]), max_size=2)


@st.composite
def any_equipment(draw: st.DrawFn) -> Equipment:
    units = []
    for i in range(draw(st.integers(1, 6))):
        supplies = draw(SUPPLIES)
        needs = tuple({"supply": s} for s in sorted(draw(SUPPLIES) - supplies))
        power = draw(st.sampled_from(["electrical", "vacuum", "none", "electrical with its own battery"]))
        provides = tuple(sorted(draw(FUNCTIONS)))
        units.append(
            kit.unit(
                f"u{i}",
                unpowered=provides[:1],
                provides=provides,
                supplies=tuple(sorted(supplies)),
                needs=needs,
                power=power,
            )
        )
    items = tuple(
        kit.fit(
            u.name,
            circuit={
                "bus": draw(st.sampled_from(["main", "avionics"])),
                "after_failure": draw(st.sampled_from(["shed", "kept", "on again for the landing"])),
            },
        )
        for u in units
    )
    return kit.fitted(*units, items=items, planning={"electrical": SYSTEM})


@settings(max_examples=60, deadline=None)
@given(any_equipment())
def test_a_failure_never_leaves_more_than_before(equipment: Equipment) -> None:
    before = working(equipment)
    for result in outcomes(equipment):
        after = working(equipment, result.failure.failed, result.failure.dark)
        assert after.all_functions <= before.all_functions
        for item, provided in after.functions.items():
            assert provided <= before.functions[item]
