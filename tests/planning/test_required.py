"""14 CFR 91.205 with AC 91-75 for the rate-of-turn indicator, and the European list."""

from pathlib import Path

import pytest

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.requirements import packaged_requirements, read_requirements
from panelcad.model.planning import Fact, FlightKind
from panelcad.planning.equipment import Equipment
from panelcad.planning.required import AIRCRAFT, State, judge_required, required_equipment
from tests.planning import kit

BASIC = (
    kit.unit("airspeed", provides=("airspeed",), power="none"),
    kit.unit("altimeter", provides=("altitude",), power="none"),
    kit.unit("compass", provides=("magnetic direction",), power="none"),
    kit.unit("tachometer", provides=("tachometer",), power="none"),
    kit.unit("oil", provides=("oil pressure", "oil temperature"), power="none"),
    kit.unit("left-fuel", provides=("fuel quantity",)),
    kit.unit("right-fuel", provides=("fuel quantity",)),
)
SINGLE = {
    "engines": 1,
    "tanks": 2,
    "fitted": ("safety belts", "shoulder harness"),
    "facts": (
        {"fact": "engine with an oil pressure system", "holds": True},
        {"fact": "liquid-cooled engine", "holds": False},
        {"fact": "air-cooled engine", "holds": True},
        {"fact": "altitude engine", "holds": False},
        {"fact": "retractable landing gear", "holds": False},
        {"fact": "certificated under part 23 after 11 March 1996", "holds": False},
        {"fact": "made after 18 July 1978", "holds": True},
        {"fact": "flown for hire", "holds": False},
        {"fact": "flown over water beyond gliding distance", "holds": False},
        {"fact": "ELT required by 14 CFR 91.207", "holds": False},
        {"fact": "flown where a transponder is required", "holds": False},
        {"fact": "flown where ADS-B out is required", "holds": False},
    ),
}


def single(*more: object, without: str = "", **planning: object) -> Equipment:
    units = [one for one in (*BASIC, *more) if one.name != without]
    return kit.fitted(*units, planning={"requirements": ("us-part-91",), **SINGLE, **planning})


def missing(equipment: Equipment) -> set[str]:
    return {f.features[0] for f in judge_required(equipment) if f.rule == "required"}


def results(equipment: Equipment, flight: FlightKind) -> dict[str, State]:
    return {r.requirement.id: r.state for r in required_equipment(equipment, flight)}


def test_day_vfr_of_a_simple_single_is_the_list_of_91_205_b() -> None:
    """Single engine, air-cooled, fixed gear, two tanks: no coolant, manifold pressure or gear indicator."""
    equipment = single(flight="day VFR")
    assert list(judge_required(equipment)) == []
    states = results(equipment, FlightKind.DAY_VFR)
    wanted = {key for key, state in states.items() if state is not State.NOT_REQUIRED}
    assert wanted == {
        "airspeed",
        "altimeter",
        "magnetic-direction",
        "tachometer",
        "oil-pressure",
        "oil-temperature",
        "fuel-quantity",
        "belts",
        "harness",
    }


@pytest.mark.parametrize("gone", ["airspeed", "altimeter", "compass", "tachometer", "right-fuel"])
def test_each_missing_instrument_is_named_with_its_paragraph(gone: str) -> None:
    line = {"altimeter": "altimeter", "compass": "magnetic-direction", "right-fuel": "fuel-quantity"}.get(gone, gone)
    (found,) = judge_required(single(without=gone, flight="day VFR"))
    assert found.features == (line,)
    assert "(paragraph 91.205(b)" in found.problem
    assert "2014 edition" in found.source


IFR = {"turn", "rate-of-turn", "slip", "clock", "attitude", "heading", "radio", "navigation", "generator"} - {"turn"}


def test_ifr_adds_the_list_of_91_205_d() -> None:
    assert missing(single(flight="day IFR")) == IFR
    assert missing(single(flight="night IFR")) == IFR | {
        "position-lights",
        "anticollision-night",
        "electrical-energy",
        "spare-fuses",
    }


INSTRUMENTS = (
    kit.unit("radio", provides=("COM", "NAV")),
    kit.unit("clock", provides=("clock",)),
    kit.unit("heading", provides=("heading",), power="vacuum"),
    kit.unit("attitude", provides=("attitude",), power="vacuum"),
)
ALTERNATOR = {"voltage": 14, "alternators": ({"id": "alternator", "name": "Alternator", "rating": 60.0},)}
SLIP = kit.unit("ball", provides=("slip",), power="none")


@pytest.mark.parametrize(
    ("second", "also", "expected"),
    [
        (kit.unit("second", provides=("attitude",), power="electrical"), (SLIP,), set()),
        (kit.unit("second", provides=("attitude",), power="vacuum"), (SLIP,), {"rate-of-turn"}),
        (kit.unit("second", provides=("attitude",), power="electrical"), (), {"rate-of-turn", "slip"}),
        (kit.unit("second", provides=("rate of turn", "slip")), (), set()),
    ],
)
def test_a_second_attitude_indicator_may_replace_the_turn_indicator(
    second: object, also: tuple[object, ...], expected: set[str]
) -> None:
    """AC 91-75: only on a source of power of its own, and with a slip-skid indicator."""
    equipment = single(*INSTRUMENTS, second, *also, flight="day IFR", electrical=ALTERNATOR)
    assert missing(equipment) == expected


@pytest.mark.parametrize(("pounds", "expected"), [("12500 lb", set()), ("12501 lb", {"rate-of-turn"})])
def test_the_substitute_is_for_airplanes_below_12500_pounds(pounds: str, expected: set[str]) -> None:
    """AC 91-75 paragraph 6."""
    second = kit.unit("second", provides=("attitude",))
    weight = {"datum": "firewall", "most_mass": pounds}
    equipment = single(*INSTRUMENTS, second, SLIP, flight="day IFR", electrical=ALTERNATOR, weight=weight)
    assert missing(equipment) == expected


def test_the_substitute_is_noted_with_its_source() -> None:
    second = kit.unit("second", provides=("attitude",))
    equipment = single(*INSTRUMENTS, second, SLIP, flight="day IFR", electrical=ALTERNATOR)
    (turn,) = (r for r in required_equipment(equipment, FlightKind.DAY_IFR) if r.requirement.id == "rate-of-turn")
    assert turn.state is State.MET
    assert set(turn.met_by) == {"attitude", "second"}
    assert "AC 91-75" in turn.note


@pytest.mark.parametrize(("gone", "line"), [("clock", "clock"), ("heading", "heading"), ("attitude", "attitude")])
def test_ifr_without_clock_direction_or_attitude_is_missing_it(gone: str, line: str) -> None:
    turn = kit.unit("turn", provides=("rate of turn", "slip"))
    assert missing(single(*INSTRUMENTS, turn, without=gone, flight="day IFR", electrical=ALTERNATOR)) == {line}


def test_ifr_without_an_alternator_is_missing_it() -> None:
    turn = kit.unit("turn", provides=("rate of turn", "slip"))
    assert missing(single(*INSTRUMENTS, turn, flight="day IFR")) == {"generator"}


def test_what_is_not_stated_is_not_known_and_never_passed() -> None:
    equipment = single(flight="day VFR", facts=(), tanks=None)
    states = results(equipment, FlightKind.DAY_VFR)
    assert states["gear-position"] is State.UNKNOWN
    assert states["fuel-quantity"] is State.UNKNOWN
    assert {f.rule for f in judge_required(equipment)} == {"required-unknown"}


def test_a_twin_needs_a_tachometer_for_each_engine() -> None:
    assert missing(single(flight="day VFR", engines=2)) == {"tachometer", "oil-pressure", "oil-temperature"}
    dual = kit.unit("dual", provides=("tachometer", "oil pressure", "oil temperature"), engines=2)
    assert missing(single(dual, flight="day VFR", engines=2)) == set()


def test_an_electronic_display_under_ifr_wants_an_independent_second_set() -> None:
    """14 CFR 23.1311(a)(5), text before amendment 23-64."""
    display = kit.unit("display", provides=("attitude", "airspeed", "altitude"))
    alone = kit.fitted(display, planning={"requirements": ("us-part-23-standby",), "flight": "day IFR"})
    assert missing(alone) == {
        "standby-attitude",
        "standby-airspeed",
        "standby-altitude",
        "standby-direction",
        "type-compass",
    }
    second = kit.unit("standby", provides=("attitude", "airspeed", "altitude", "magnetic direction"))
    both = kit.fitted(display, second, planning={"requirements": ("us-part-23-standby",), "flight": "day IFR"})
    assert missing(both) == set()


def test_transponder_and_adsb_are_wanted_where_they_are() -> None:
    facts = tuple(
        {**f, "holds": f["holds"] or "transponder" in f["fact"] or "ADS-B" in f["fact"]} for f in SINGLE["facts"]
    )
    assert missing(single(flight="day VFR", facts=facts)) == {"transponder", "altitude-reporting", "adsb-out"}
    box = kit.unit("box", provides=("transponder", "altitude reporting", "ADS-B out"))
    assert missing(single(box, flight="day VFR", facts=facts)) == set()


def test_the_european_list_wants_vertical_speed_and_outside_air_temperature_under_ifr() -> None:
    """Regulation (EU) No 965/2012, NCO.IDE.A.125; 14 CFR 91.205 asks for neither."""
    equipment = single(*INSTRUMENTS, flight="day IFR", requirements=("eu-part-nco",))
    assert {"vertical-speed", "outside-air-temperature", "pitot-heat"} <= missing(equipment)
    assert results(equipment, FlightKind.DAY_IFR)["gyro-power"] is State.LOOK


def test_what_the_aircraft_has_meets_a_line() -> None:
    (belts,) = (r for r in required_equipment(single(), FlightKind.DAY_VFR) if r.requirement.id == "belts")
    assert belts.met_by == (AIRCRAFT,)


def test_a_list_nobody_has_is_named() -> None:
    with pytest.raises(UnknownName, match="There is no list of required equipment 'mars-part-1'"):
        list(judge_required(single(flight="day VFR", requirements=("mars-part-1",))))


def test_every_packaged_line_has_functions_or_is_to_be_looked_at() -> None:
    for listed in packaged_requirements().values():
        assert all(r.any_of or r.notes for r in listed.required)
        assert {fact for r in listed.required for fact in r.when} <= set(Fact)


def test_an_unknown_function_in_a_list_is_one_sentence(tmp_path: Path) -> None:
    file = tmp_path / "own.toml"
    file.write_text(
        'name = "own"\ntitle = "Own"\nauthority = "Own"\nsource = { standing = "shop setting", text = "ours" }\n'
        '[[required]]\nid = "a"\ntitle = "A"\nparagraph = "1"\nany_of = ["telepathy"]\n'
    )
    with pytest.raises(UnusableInput, match=r"own.toml, required 1, any_of 1: 'telepathy' is not usable; expected"):
        read_requirements(file)
