"""Equipment that is named as no unit is reported as not known; switches, breakers, blanks and the like are not."""

import pytest

from panelcad.library.catalogue import packaged_catalogue
from panelcad.library.samples import sample_file, sample_names
from panelcad.model.function import Function
from panelcad.model.planning import Circuit
from panelcad.model.project import Project
from panelcad.planning.compare import compare
from panelcad.planning.judge import Judgement, Topic, judge
from panelcad.planning.nameless import is_equipment, nameless
from panelcad.planning.owner import gained, lost, sentences
from panelcad.store.project_file import load
from tests import builders
from tests.planning import kit

RACK = packaged_catalogue().cutout("rack-1-30")
BEACON = kit.unit("beacon", provides=("marker beacon",))


@pytest.mark.parametrize(
    "name", ["rack-1-30", "rail-panel-3-00", "airspeed-3-1-8", "flight-display-9", "outlet-usb", "clock-2-1-4"]
)
def test_what_has_a_tray_a_case_or_a_face_to_read_is_equipment(name: str) -> None:
    assert is_equipment(builders.item("one", 0, 0, name), packaged_catalogue().cutout(name))


@pytest.mark.parametrize(
    "family",
    [
        *("blanks", "breakers", "coaxial-connectors", "d-subminiature", "engine-controls", "jacks", "key-switches"),
        *("lamps", "placards", "push-buttons", "rocker-switches", "rotary-controls", "toggle-switches", "vents"),
    ],
)
def test_small_parts_of_the_library_are_not(family: str) -> None:
    of_family = [cutout for cutout in packaged_catalogue().cutouts.values() if cutout.family == family]
    assert of_family
    assert not any(is_equipment(builders.item("one", 0, 0, cutout.name), cutout) for cutout in of_family)


def test_what_stands_on_no_panel_is_equipment_by_its_circuit() -> None:
    remote = builders.item("remote", 0, 0, None)
    assert not is_equipment(remote, None)
    assert is_equipment(remote.revised(circuit=Circuit(breaker=5.0)), None)


def with_a_box_out(*, stays: bool) -> Project:
    """As found a box in a rack of which nobody has said what it is; the option keeps it or not."""
    box = builders.item("box", 0, 0, RACK.name, name="Old box")
    items = (kit.fit("beacon"), *((box,) if stays else ()))
    return kit.project(BEACON, items=items, as_found_items=(box,), cutouts=(RACK,))


def judged(project: Project) -> tuple[Judgement, Judgement]:
    return judge(project, project.option("new")), judge(project, project.as_found)


def test_it_is_one_warning_in_the_judgement_of_functions() -> None:
    option, found = judged(with_a_box_out(stays=True))
    for judgement in (option, found):
        told = [f for f in judgement.findings[Topic.REDUNDANCY] if f.rule == "functions-unknown"]
        assert [finding.items for finding in told] == [("box",)]
    gone, _ = judged(with_a_box_out(stays=False))
    assert not [f for f in gone.all_findings if f.rule == "functions-unknown"]


def test_a_function_that_nothing_named_gives_is_not_said_to_be_none() -> None:
    rows = {row.title: [cell.text for cell in row.cells] for row in compare(with_a_box_out(stays=False)).rows}
    assert rows["Functions not known of"] == ["Old box", "nothing"]
    assert rows["Marker beacon"] == ["none known", "1"]


def test_the_owner_is_told_of_what_stays_and_of_what_goes() -> None:
    assert "Functions not known of Old box; what they give is not counted." in sentences(
        *judged(with_a_box_out(stays=True))
    )
    assert "Functions not known of Old box in the panel as found; what goes with them is not known." in sentences(
        *judged(with_a_box_out(stays=False))
    )


@pytest.mark.parametrize("name", sample_names())
def test_the_samples_name_all_their_equipment(name: str) -> None:
    project = load(sample_file(name))
    assert not any(nameless(project, option) for option in project.all_options)


def test_the_twins_refit_takes_out_what_the_old_radios_gave_and_adds_no_second_autopilot() -> None:
    project = load(sample_file("twin"))
    refit, found = judge(project, project.option("refit")), judge(project, project.as_found)
    assert set(lost(refit, found)) == {Function.ADF, Function.DME}
    assert not {Function.AUTOPILOT_ROLL, Function.AUTOPILOT_PITCH, Function.FLIGHT_DIRECTOR} & set(gained(refit, found))
