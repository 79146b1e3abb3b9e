import re

import pytest

from panelcad.checks.run import check
from panelcad.geometry.segment import Arc
from panelcad.library.catalogue import packaged_catalogue
from panelcad.library.samples import sample_file, sample_names
from panelcad.model.finding import Severity
from panelcad.model.layout import layout
from panelcad.model.plate import CutState, PlateRole
from panelcad.model.project import Project
from panelcad.planning.balance import judge_balance
from panelcad.planning.belonging import judge_belonging
from panelcad.planning.cost import judge_cost
from panelcad.planning.electrical.judge import judge_electrical
from panelcad.planning.equipment import equipment
from panelcad.planning.redundancy import judge_redundancy
from panelcad.planning.required import judge_required
from panelcad.store.project_file import load, to_bytes
from panelcad.units import LengthUnit

SAMPLES = {name: load(sample_file(name)) for name in sample_names()}
FAULTS = [
    "bezels|flight-display|standby|flight-display/bezel|standby/bezel",
    "depth|firewall|navigator|navigator/harness bend",
    "obstacles|duct|navigator|navigator/tray",
    "obstacles|navigator|tube-top|navigator/tray",
    "outline|cut-map-box|panel|cut-map-box/map box|panel/edge",
    "stack-height|audio|autopilot|com-nav-2|cut-stack|navigator",
]
PLANNERS = (judge_belonging, judge_redundancy, judge_required, judge_electrical, judge_balance, judge_cost)
every_sample = pytest.mark.parametrize("name", SAMPLES)


def errors(project: Project, option: str) -> list[str]:
    report = check(project, project.option(option))
    assert not report.not_judged
    return sorted(finding.identity for finding in report.findings if finding.severity is Severity.ERROR)


def test_the_samples_are_all_there() -> None:
    assert set(SAMPLES) == {"tourer", "trainer", "twin"}


@every_sample
def test_a_sample_is_what_saving_it_writes(name: str) -> None:
    written = to_bytes(SAMPLES[name])
    assert written == sample_file(name).read_bytes(), f"after a change of format, load and save sample_panels/{name}"


@every_sample
def test_a_sample_carries_the_librarys_cutouts_and_only_those_it_uses(name: str) -> None:
    project = SAMPLES[name]
    used = {cut.cutout for option in project.all_options for plate in option.plates for cut in plate.cuts}
    used |= {item.cutout for option in project.all_options for item in option.items}
    assert {cutout.name for cutout in project.cutouts} == used - {None}
    for cutout in project.cutouts:
        assert cutout == packaged_catalogue().cutout(cutout.name)


@every_sample
def test_a_sample_has_a_panel_of_a_real_shape(name: str) -> None:
    for plate in SAMPLES[name].as_found.plates:
        assert len(plate.outline.contour().segments) > 4
        assert any(isinstance(segment, Arc) for segment in plate.outline.contour().segments)
        assert plate.attach_screws
    assert SAMPLES[name].surroundings.obstacles
    assert SAMPLES[name].surroundings.eye is not None


@every_sample
def test_registrations_cannot_exist(name: str) -> None:
    """No state has the nationality mark ZZ (ICAO Annex 7)."""
    assert SAMPLES[name].aircraft.registration.startswith("ZZ-")


@every_sample
def test_every_hole_of_a_sample_is_used_or_covered(name: str) -> None:
    """A cut without an item is a map box or the like, whose purpose its own opening names."""
    for option in SAMPLES[name].all_options:
        used = {item.cut for item in option.items}
        for plate in option.plates:
            for cut in plate.cuts:
                assert cut.id in used or cut.cutout is None, f"{option.id}: {cut.id}"


@every_sample
def test_a_hole_of_a_sample_is_called_by_what_is_fitted_in_it(name: str) -> None:
    """So that schedule, list and lettering agree; an opening that several share, or none, has a name of its own."""
    for option in SAMPLES[name].all_options:
        for plate in option.plates:
            for cut in plate.cuts:
                fitted = [item.name for item in option.items if item.cut == cut.id]
                assert fitted == [cut.name] or len(fitted) != 1, f"{option.id}: {cut.id}"


def test_a_stack_stays_within_its_opening() -> None:
    for option in SAMPLES["tourer"].all_options:
        for plate in layout(SAMPLES["tourer"], option).plates:
            for placed in plate.items:
                cut = plate.cut_of(placed.item)
                rack = placed.cutout.rack
                if rack is not None and cut is not None and option.id != "ambitious":
                    _, low, _, high = cut.openings[0].contour.bounds
                    assert low < placed.placement.y - rack.height / 2
                    assert placed.placement.y + rack.height / 2 < high


@pytest.mark.parametrize(
    ("name", "option"),
    [
        ("tourer", "as-found"),
        ("tourer", "classic"),
        ("tourer", "glass"),
        ("trainer", "as-found"),
        ("trainer", "day-night"),
        ("twin", "as-found"),
        ("twin", "refit"),
    ],
)
def test_an_option_that_is_meant_to_be_right_has_no_errors(name: str, option: str) -> None:
    assert errors(SAMPLES[name], option) == []


def test_the_ambitious_option_is_wrong_in_the_five_ways_it_describes() -> None:
    """Raising the stack brings one tray to two obstacles."""
    assert errors(SAMPLES["tourer"], "ambitious") == FAULTS
    assert {f"({i})" for i in range(1, 6)} == set(re.findall(r"\(\d\)", SAMPLES["tourer"].option("ambitious").summary))
    assert len({fault.split("|")[0] for fault in FAULTS}) == 5


def test_options_show_every_state_of_a_cut() -> None:
    cuts = [cut for plate in SAMPLES["tourer"].option("classic").plates for cut in plate.cuts]
    assert {cut.state for cut in cuts} == set(CutState)


def test_the_units_of_the_samples() -> None:
    assert SAMPLES["tourer"].unit is LengthUnit.INCH
    assert SAMPLES["trainer"].unit is LengthUnit.MM


def test_the_twin_is_large_and_has_three_kinds_of_plates() -> None:
    for option in SAMPLES["twin"].all_options:
        assert len(option.cut_ids()) >= 60
        assert {plate.role for plate in option.plates} == {
            PlateRole.STRUCTURAL,
            PlateRole.SUB_PANEL,
            PlateRole.PEDESTAL,
        }


def test_the_tourers_options_differ_in_what_they_plan() -> None:
    """One is short of a controller and overloads the alternator; the glass one has no error there either."""
    found = {name: planning_errors(name) for name in ("classic", "glass", "ambitious")}
    assert found["classic"] == found["glass"] == set()
    assert found["ambitious"] == {"no-controller", "overload", "loading"}


def planning_errors(option: str) -> set[str]:
    units = equipment(SAMPLES["tourer"], SAMPLES["tourer"].option(option))
    findings = [finding for judge in PLANNERS for finding in judge(units)]
    return {finding.rule for finding in findings if finding.severity is Severity.ERROR}


@pytest.mark.parametrize(("option", "rule"), [("classic", "web"), ("glass", "finger-room")])
def test_what_the_shop_accepted_stands(option: str, rule: str) -> None:
    report = check(SAMPLES["tourer"], SAMPLES["tourer"].option(option))
    assert {accepted.finding.rule for accepted in report.accepted} == {rule}
    assert len(report.accepted) == len(SAMPLES["tourer"].option(option).acceptances)
