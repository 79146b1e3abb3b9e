"""A row of toggle switches is lettered, each below its bezel."""

import pytest

from panelcad.editing.label_row import LABEL_GAP, Side, controls, crowded, label_row, labels, short_name
from panelcad.editing.move import move_by
from panelcad.editing.place import place
from panelcad.editing.plates import add_engraving, revise_part
from panelcad.editing.row import Row, place_row
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.engraved import engraving_box
from panelcad.model.layout import layout
from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from tests import builders

PITCH = 25.4
REACH = 25.4 / 2
"""From the middle of the packaged toggle switch to the end of its lever, which reaches past the dress nut."""
BEZEL = 15.748 / 2
"""Half across the dress nut of the packaged breaker, which is wider than its button."""


def toggles(count: int = 3, y: float = 0.0, cutout_name: str = "toggle-plain") -> Project:
    cutout = packaged_catalogue().cutout(cutout_name)
    project = builders.project(builders.sheet())
    return place_row(project, "new", "main", cutout, Row(Point(0.0, y), count, PITCH)).project


def names(project: Project, *texts: str) -> dict[str, str]:
    return dict(zip((item.id for item in project.option("new").items), texts, strict=True))


@pytest.mark.parametrize(("side", "towards"), [(Side.BELOW, -1), (Side.ABOVE, 1)])
@pytest.mark.parametrize(("control", "reach"), [("breaker", BEZEL), ("toggle-plain", REACH)])
def test_each_is_centred_and_the_gap_clear_of_bezel_and_lever(
    control: str, reach: float, side: Side, towards: int
) -> None:
    project = toggles(cutout_name=control)
    made = label_row(project, "new", names(project, "NAV", "LDG", "TAXI"), 3.0, side)
    after = made.project.option("new")
    lines = after.plate("main").engravings
    assert [line.id for line in lines] == list(made.ids)
    assert [(line.text, line.x, line.height) for line in lines] == [
        ("NAV", 0.0, 3.0),
        ("LDG", PITCH, 3.0),
        ("TAXI", 2 * PITCH, 3.0),
    ]
    for line in lines:
        _, low, _, high = engraving_box(line).bounds
        assert (low if towards > 0 else -high) == pytest.approx(reach + LABEL_GAP)
    assert crowded(made.project, "new", made.ids) == ()


def test_the_anti_turn_hole_beside_the_nut_is_kept_clear_of() -> None:
    project = toggles(cutout_name="toggle")
    made = label_row(project, "new", names(project, "NAV", "LDG", "TAXI"), 3.0, Side.ABOVE)
    after = made.project.option("new")
    (plate,) = layout(made.project, after).plates
    for cut, line in zip(plate.cuts, after.plate("main").engravings, strict=True):
        hole = max(cut.features, key=lambda feature: feature.contour.bounds[3])
        assert hole.contour.bounds[3] > REACH
        assert engraving_box(line).bounds[1] == pytest.approx(hole.contour.bounds[3] + LABEL_GAP)
    assert crowded(made.project, "new", made.ids) == ()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("LANDING LIGHT", "LANDING LIGHT"),
        ("Landing light switch", "LANDING LIGHT"),
        ("COM radio breaker, 7.5 A", "COM RADIO"),
        ("Breaker", "BREAKER"),
        ("Toggle switch", "TOGGLE"),
        ("Toggle switch 2", "TOGGLE 2"),
        ("Pump breaker, 5 A 2", "PUMP 2"),
        ("Headphone jack, left", "HEADPHONE JACK, LEFT"),
    ],
)
def test_the_short_name_leaves_out_what_kind_it_is(name: str, text: str) -> None:
    assert short_name(name) == text


def test_a_text_left_empty_engraves_nothing() -> None:
    project = toggles()
    made = label_row(project, "new", names(project, "NAV", "  ", " TAXI "), 3.0, Side.BELOW)
    assert [line.text for line in made.project.option("new").plate("main").engravings] == ["NAV", "TAXI"]


@pytest.mark.parametrize(
    ("texts", "height", "told"),
    [
        (("", " ", ""), 3.0, "no words"),
        (("A", "B", "C"), 0.0, "larger than 0"),
        (("A" * 201, "B", "C"), 3.0, "200 characters"),
    ],
)
def test_what_cannot_be_lettered_is_refused(texts: tuple[str, ...], height: float, told: str) -> None:
    project = toggles()
    with pytest.raises(EditRefused, match=told):
        label_row(project, "new", names(project, *texts), height, Side.BELOW)


def test_a_plate_that_is_kept_takes_no_lettering() -> None:
    project = toggles()
    option = project.option("new")
    kept = project.with_option(option.revised(plates=(option.plates[0].revised(state="kept"),)))
    with pytest.raises(EditRefused, match="kept as it is"):
        label_row(kept, "new", names(kept, "A", "B", "C"), 3.0, Side.BELOW)


def test_words_that_meet_their_neighbours_are_said_to_be_crowded() -> None:
    project = toggles()
    made = label_row(project, "new", names(project, "LANDING LIGHT", "TAXI LIGHT", "A"), 3.0, Side.BELOW)
    assert crowded(made.project, "new", made.ids) == ("LANDING LIGHT", "TAXI LIGHT")


@pytest.mark.parametrize(("spare", "is_crowded"), [(0.01, False), (-0.01, True)])
def test_the_row_below_is_kept_clear_of(spare: float, is_crowded: bool) -> None:
    room = 2 * REACH + 2 * LABEL_GAP + 3.0 * (1 + 1 / 7)  # lever, gap, letters with their stroke, gap, lever
    project = toggles(1)
    below = place(project, "new", "main", packaged_catalogue().cutout("toggle-plain"), 0.0, -room - spare).project
    first = below.option("new").items[0].id
    made = label_row(below, "new", {first: "I"}, 3.0, Side.BELOW)
    assert bool(crowded(made.project, "new", made.ids)) == is_crowded


@pytest.mark.parametrize(("spare", "is_crowded"), [(0.01, False), (-0.01, True)])
def test_the_edge_is_kept_clear_of(spare: float, is_crowded: bool) -> None:
    reach = REACH + 2 * LABEL_GAP + 3.0 * (1 + 1 / 7)
    project = toggles(1, y=-150.0 + reach + spare)
    made = label_row(project, "new", names(project, "NAV"), 3.0, Side.BELOW)
    assert bool(crowded(made.project, "new", made.ids)) == is_crowded


def test_only_controls_take_labels_row_by_row_from_the_left() -> None:
    project = builders.project(builders.sheet())
    spots = (("toggle", 50.0, 0.0), ("jack-headphone", 0.0, 0.0), ("outlet-usb", -50.0, 0.0), ("breaker", 0.0, 80.0))
    for name, x, y in (*spots, ("altimeter-knob-3-1-8", 150.0, 80.0)):
        project = place(project, "new", "main", packaged_catalogue().cutout(name), x, y).project
    option = project.option("new")
    by_cut = [item.cut for item in option.items if item.cut]
    found = controls(project, option, by_cut)
    assert [item.cutout for item in found] == ["breaker", "outlet-usb", "jack-headphone", "toggle"]
    assert controls(project, option, [item.id for item in option.items]) == found
    assert controls(project, option, [option.items[-1].id]) == ()


def lines(project: Project) -> dict[str, tuple[str, float, float]]:
    return {line.id: (line.text, line.x, line.y) for line in project.option("new").plate("main").engravings}


@pytest.fixture
def labelled() -> Project:
    """Three switches with labels below them, and a heading over the middle one."""
    project = toggles()
    project = label_row(project, "new", names(project, "NAV", "LDG", "TAXI"), 3.0, Side.BELOW).project
    heading = Engraving(id="heading", text="LIGHTS", x=PITCH, y=REACH + 12.0, height=3.0)
    return add_engraving(project, "new", "main", heading).project


def test_labelling_again_changes_the_labels_that_stand(labelled: Project) -> None:
    old = labels(labelled, labelled.option("new"))
    assert [label.words.text for label in old.values()] == ["NAV", "LDG", "TAXI"]
    assert {label.side for label in old.values()} == {Side.BELOW}
    made = label_row(labelled, "new", names(labelled, "NAV", "LAND", "TAXI"), 4.0, Side.ABOVE)
    assert made.ids == tuple(label.words.id for label in old.values())
    after = made.project.option("new").plate("main").engravings
    assert [line.text for line in after] == ["NAV", "LAND", "TAXI", "LIGHTS"]
    assert after[3] == labelled.option("new").plate("main").engravings[3]
    for line in after[:3]:
        assert (line.height, engraving_box(line).bounds[1]) == (4.0, pytest.approx(REACH + LABEL_GAP))


def test_an_emptied_label_goes_a_missing_one_comes_and_the_rest_of_the_row_stays(labelled: Project) -> None:
    first, second, third = (item.id for item in labelled.option("new").items)
    without = label_row(labelled, "new", {second: "LDG", third: ""}, 3.0, Side.BELOW).project
    assert [text for text, _, _ in lines(without).values()] == ["NAV", "LDG", "LIGHTS"]
    again = label_row(without, "new", {third: "TAXI"}, 3.0, Side.BELOW)
    assert lines(again.project)[again.ids[0]] == lines(labelled)["lettering-3"]
    assert {text for text, _, _ in lines(again.project).values()} == {"NAV", "LDG", "TAXI", "LIGHTS"}
    assert label_row(labelled, "new", {first: " "}, 3.0, Side.BELOW).ids == ()


def test_labels_moved_by_hand_and_turned_are_put_back(labelled: Project) -> None:
    moved = revise_part(labelled, "new", "lettering-2", x=PITCH + 4.0, y=-REACH - 12.0, rotation=90.0)
    again = label_row(moved, "new", names(moved, "NAV", "LDG", "TAXI"), 3.0, Side.BELOW)
    assert again.project == labelled


def test_the_labels_of_the_row_below_are_left_alone() -> None:
    project = toggles()
    below = place_row(project, "new", "main", packaged_catalogue().cutout("breaker"), Row(Point(0.0, -60.0), 3, PITCH))
    upper, lower = (
        tuple(item.id for item in below.project.option("new").items)[part] for part in (slice(3), slice(3, 6))
    )
    project = label_row(below.project, "new", dict(zip(lower, "DEF", strict=True)), 3.0, Side.ABOVE).project
    project = label_row(project, "new", dict(zip(upper, "ABC", strict=True)), 3.0, Side.BELOW).project
    stood = lines(project)
    project = label_row(project, "new", dict(zip(upper, "UVW", strict=True)), 3.0, Side.BELOW).project
    assert [text for text, _, _ in lines(project).values()] == [*"DEF", *"UVW"]
    assert [place for _, *place in lines(project).values()] == [place for _, *place in stood.values()]


def test_lettering_farther_off_than_a_label_may_stand_or_off_the_corner_is_none(labelled: Project) -> None:
    option = labelled.option("new")
    far = revise_part(labelled, "new", "lettering-1", y=-60.0)
    assert option.items[0].id not in labels(far, far.option("new"))
    corner = revise_part(labelled, "new", "lettering-1", x=-20.0, y=-20.0)
    assert option.items[0].id not in labels(corner, corner.option("new"))


def test_a_locked_label_is_not_changed(labelled: Project) -> None:
    option = labelled.option("new")
    locked = labelled.with_option(option.revised(locked=("lettering-2",)))
    with pytest.raises(EditRefused, match="locked"):
        label_row(locked, "new", names(locked, "A", "B", "C"), 3.0, Side.BELOW)


def test_a_label_that_lies_across_the_neighbours_is_still_that_of_its_control() -> None:
    """The neighbours stand as low as the middle switch's label, which is wider than their pitch."""
    project = toggles()
    left, middle, right = (item.id for item in project.option("new").items)
    project = label_row(project, "new", {middle: "MIXTURE CONTROL LEVER"}, 6.0, Side.BELOW).project
    project = move_by(project, "new", (left, right), 0.0, -16.0)
    assert crowded(project, "new", ("lettering-1",)) != ()
    assert [*labels(project, project.option("new"))] == [middle]
    again = label_row(project, "new", {middle: "MIX"}, 6.0, Side.BELOW).project
    assert [line.text for line in again.option("new").plate("main").engravings] == ["MIX"]


def test_a_label_off_the_middle_is_that_of_the_control_it_does_not_lie_across() -> None:
    project = toggles()
    left, middle, right = (item.id for item in project.option("new").items)
    project = label_row(project, "new", {middle: "MIXTURE CONTROL LEVER"}, 6.0, Side.BELOW).project
    project = move_by(project, "new", (left, right), 0.0, -16.0)
    aside = revise_part(project, "new", "lettering-1", x=PITCH + 1.0)
    assert [*labels(aside, aside.option("new"))] == [middle]
