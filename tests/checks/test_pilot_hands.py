"""Fingers (MIL-STD-1472E table VII, NUREG-0700 table 11.5), reach (NUREG-0700 table 11.4), labels, levers, masters."""

import math

import pytest

from panelcad.editing.move import move_by
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.finding import Severity
from panelcad.model.pilot import Purpose
from panelcad.model.plate import Frame, PlateRole
from panelcad.model.project import Project
from panelcad.model.surroundings import Surroundings
from tests.builders import sheet
from tests.checks.pilot_panels import INCH, blamed, eye, fitted, found, panel, words

PAIRS = [
    ("toggle", "push-button", 13.0),
    ("toggle", "continuous-rotary", 19.0),
    ("toggle", "rotary-selector", 19.0),
    ("toggle", "toggle", 19.05),
    ("toggle", "key", 19.05),
    ("push-button", "push-button", 12.7),
    ("push-button", "continuous-rotary", 13.0),
    ("push-button", "rotary-selector", 13.0),
    ("continuous-rotary", "continuous-rotary", 25.0),
    ("continuous-rotary", "rotary-selector", 25.0),
    ("rotary-selector", "rotary-selector", 25.0),
    ("rocker", "rocker", 12.7),
    ("key", "key", 25.4),
]


def two(a: str, b: str, apart: float) -> Project:
    """Two controls with 10 mm square knobs."""
    return panel(fitted("a", 0, 0, a), fitted("b", 10 + apart, 0, b))


@pytest.mark.parametrize(("a", "b", "limit"), PAIRS)
def test_edge_to_edge_by_kind(a: str, b: str, limit: float) -> None:
    assert found(two(a, b, limit), "finger-room") == []
    (finding,) = found(two(a, b, limit - 0.1), "finger-room")
    assert finding.measured == pytest.approx(limit - 0.1)
    assert finding.required == pytest.approx(limit)


def test_kinds_without_a_published_figure_are_not_judged() -> None:
    assert found(two("push-pull", "toggle", 1.0), "finger-room") == []
    assert found(two("push-pull", "push-pull", 1.0), "finger-room") == []


def toggle_at(far: float, **fields: object) -> Project:
    """A toggle so far from the shoulder, which is 215.9 mm below and 101.6 mm behind the eye."""
    across = math.sqrt(far**2 - 500.0**2)
    around = Surroundings(eye=eye(y=215.9, z=-500.0 + 101.6))
    return panel(fitted("a", across, 0, "toggle", **fields), around=around)


@pytest.mark.parametrize(
    ("inches", "severity"),
    [(26.6, None), (26.8, Severity.ADVICE), (34.8, Severity.ADVICE), (35.0, Severity.WARNING)],
)
def test_reach_of_a_small_and_a_large_pilot(inches: float, severity: Severity | None) -> None:
    findings = found(toggle_at(inches * INCH), "reach")
    assert [finding.severity for finding in findings] == ([severity] if severity else [])
    if findings:
        assert findings[0].measured == pytest.approx(inches * INCH)


@pytest.mark.parametrize(("inches", "severity"), [(26.8, Severity.WARNING), (35.0, Severity.ERROR)])
def test_a_breaker_to_be_reset_in_flight_is_graver(inches: float, severity: Severity) -> None:
    (finding,) = found(toggle_at(inches * INCH, reset_in_flight=True), "reach")
    assert finding.severity is severity
    assert "23.1357(d)" in finding.source


def test_a_row_out_of_reach_is_one_finding_measured_at_its_farthest() -> None:
    around = Surroundings(eye=eye(y=215.9, z=-700.0 + 101.6))
    row = [fitted(f"s{i}", 40 * i, 0, "toggle") for i in range(4)]
    (finding,) = found(panel(*row, around=around), "reach")
    assert finding.items == ("s0", "s1", "s2", "s3")
    assert finding.measured == pytest.approx(math.hypot(700, 120))


@pytest.mark.parametrize(("breaker", "is_said"), [(900.0, True), (0.0, False)], ids=["out of reach too", "in reach"])
def test_what_is_out_of_reach_says_that_breakers_as_far_are_left_out(breaker: float, is_said: bool) -> None:
    toggle = toggle_at(35.0 * INCH)
    option = toggle.option("new")
    both = option.revised(items=(*option.items, fitted("b", breaker, 100, "breaker")))
    (finding,) = found(toggle.with_option(both), "reach")
    assert len(finding.items) == 1
    assert ("breakers that need not be reset in flight are left out" in finding.problem) is is_said


@pytest.mark.parametrize(("inches", "limit"), [(35.0, 34.9), (26.8, 26.7)])
def test_one_control_out_of_reach_is_moved_towards_the_pilot_and_is_within_it(inches: float, limit: float) -> None:
    project = toggle_at(inches * INCH)
    (finding,) = found(project, "reach")
    cure = finding.cure
    assert cure is not None
    assert (cure.item, cure.dy, cure.advice) == ("a", 0.0, "")
    here, there = math.sqrt((inches * INCH) ** 2 - 500.0**2), math.sqrt((limit * INCH) ** 2 - 500.0**2)
    assert here - there <= -cure.dx < here - there + 0.1
    after = found(move_by(project, "new", ("a",), cure.dx, cure.dy), "reach")
    assert finding.severity not in {each.severity for each in after}


def test_a_control_that_is_locked_or_has_something_in_its_way_is_offered_no_move() -> None:
    project = toggle_at(35.0 * INCH)
    option = project.option("new")
    (finding,) = found(project.with_option(option.revised(locked=("a",))), "reach")
    assert finding.cure is None
    (toggle,) = option.items
    beside = fitted("b", toggle.x - 10.0 - 19.06, 0, "toggle")
    findings = found(project.with_option(option.revised(items=(toggle, beside))), "reach")
    (finding,) = (each for each in findings if each.severity is Severity.WARNING)
    assert finding.items == ("a",)
    assert finding.cure is None


def test_of_several_out_of_reach_the_move_of_the_farthest_is_told() -> None:
    around = Surroundings(eye=eye(y=215.9, z=-500.0 + 101.6))
    row = [fitted(f"s{i}", 40 * (i + 12), 0, "toggle") for i in range(4)]
    (finding,) = found(panel(*row, around=around), "reach")
    assert finding.cure is not None
    assert finding.cure.item == "s3"
    assert "left or more, and the others as far as they need" in finding.cure.advice
    assert finding.cure.value == pytest.approx(600.0 - math.sqrt((26.7 * INCH) ** 2 - 500.0**2), abs=0.1)


def test_an_instrument_need_not_be_reached() -> None:
    assert found(panel(fitted("attitude", 900, 0)), "reach") == []


@pytest.mark.parametrize(("below", "labelled"), [(30, True), (60, False)])
def test_each_control_has_a_label_near_it(below: float, labelled: bool) -> None:
    project = panel(fitted("a", 0, 0, "toggle"), plate={"engravings": (words("PITOT HEAT", 0, -below),)})
    assert bool(found(project, "label")) != labelled


def test_a_placard_labels_too_and_an_instrument_needs_none() -> None:
    assert found(panel(fitted("a", 0, 0, "toggle"), fitted("p", 0, -30, "plate")), "label") == []
    assert found(panel(fitted("attitude", 0, 0)), "label") == []
    assert blamed(found(panel(fitted("a", 0, 0, "toggle")), "label")) == {("a",)}


@pytest.mark.parametrize("turn", [0.0, 30.0])
def test_a_label_stands_for_the_control_it_is_centred_on_however_its_ends_lie(turn: float) -> None:
    """The ends of the middle knob's label lie across the lower knobs beside it, which have no label of their own."""
    spots = {"left": (-25.0, -10.0), "middle": (0.0, 0.0), "right": (25.0, -10.0)}
    line = words("MIXTURE CONTROL", 0.0, -10.0).revised(id="line")
    to = Placement(rotation=turn)
    placed = {name: to.point(Point(*spot)) for name, spot in spots.items()}
    at = to.point(Point(line.x, line.y))
    lines = {"engravings": (line.revised(x=at.x, y=at.y, rotation=turn),)}
    knobs = (fitted(name, *at, "toggle", rotation=turn) for name, at in placed.items())
    assert blamed(found(panel(*knobs, plate=lines), "label")) == {("left",), ("right",)}


@pytest.mark.parametrize(("apart", "found_apart"), [(19.0, False), (19.1, True)])
def test_halves_of_a_split_master_stand_together(apart: float, found_apart: bool) -> None:
    project = panel(
        fitted("bat", 0, 0, "toggle", purpose=Purpose.BATTERY_MASTER),
        fitted("alt", 10 + apart, 0, "toggle", purpose=Purpose.ALTERNATOR_MASTER),
    )
    assert bool(found(project, "split-master")) == found_apart


def test_halves_of_a_split_master_on_two_plates_are_apart() -> None:
    pedestal = sheet(id="pedestal", name="Pedestal", role=PlateRole.PEDESTAL, frame=Frame(y=-300, z=-120, tilt=60))
    battery = fitted("bat", 0, 0, "toggle", purpose=Purpose.BATTERY_MASTER)
    alternator = fitted("alt", 0, 0, "toggle", purpose=Purpose.ALTERNATOR_MASTER, plate="pedestal")
    (finding,) = found(panel(battery, alternator, more=(pedestal,)), "split-master")
    assert finding.measured == pytest.approx(math.hypot(300, 120))
    assert finding.items == ("alt", "bat")


def test_a_twin_may_have_an_alternator_half_on_each_side_of_the_battery() -> None:
    items = [
        fitted("left", -25, 0, "toggle", purpose=Purpose.ALTERNATOR_MASTER),
        fitted("bat", 0, 0, "toggle", purpose=Purpose.BATTERY_MASTER),
        fitted("right", 25, 0, "toggle", purpose=Purpose.ALTERNATOR_MASTER),
    ]
    assert found(panel(*items), "split-master") == []


def test_levers_stand_power_propeller_mixture() -> None:
    def levers(*order: Purpose) -> Project:
        items = [fitted(f"l{i}", 40 * i, 0, "push-pull", purpose=purpose) for i, purpose in enumerate(order)]
        return panel(*items)

    assert found(levers(Purpose.POWER, Purpose.PROPELLER, Purpose.MIXTURE), "lever-order") == []
    assert found(levers(Purpose.POWER, Purpose.MIXTURE), "lever-order") == []
    assert blamed(found(levers(Purpose.POWER, Purpose.MIXTURE, Purpose.PROPELLER), "lever-order")) == {("l1", "l2")}
    assert blamed(found(levers(Purpose.MIXTURE, Purpose.POWER), "lever-order")) == {("l0", "l1")}


@pytest.mark.parametrize(
    ("x", "role", "wrong"),
    [
        (50 + 7.9 * INCH, PlateRole.STRUCTURAL, True),
        (50 + 8.0 * INCH, PlateRole.STRUCTURAL, False),
        (-2 * INCH, PlateRole.STRUCTURAL, False),
        (50 + 2 * INCH, PlateRole.PEDESTAL, False),
    ],
)
def test_carburettor_heat_left_of_the_throttle_or_eight_inches_from_the_mixture(
    x: float, role: PlateRole, wrong: bool
) -> None:
    project = panel(
        fitted("throttle", 0, 0, "push-pull", purpose=Purpose.POWER),
        fitted("mixture", 50, 0, "push-pull", purpose=Purpose.MIXTURE),
        fitted("heat", x, 0, "push-pull", purpose=Purpose.CARBURETTOR_HEAT),
        plate={"role": role},
    )
    assert bool(found(project, "carburettor-heat")) == wrong
