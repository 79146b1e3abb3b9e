import pytest

from panelcad.editing.around import add_standing
from panelcad.editing.marks import add_dimension
from panelcad.editing.split_plates import join_plates, split_plate
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.markup import Along, Hold, Hook
from panelcad.model.plate import PlateRole
from panelcad.model.project import Project
from panelcad.model.shape import Circle
from panelcad.model.surroundings import Obstacle, ObstacleKind, Volume
from tests import builders
from tests.editing.scenes import where

UP = Point(0.0, 0.0), Point(0.0, 1.0)
"""Upwards through the datum: its left is the pilot's left."""


def two_gauges() -> Project:
    plate = builders.sheet(cuts=(builders.cut("left-hole", -100.0, 0.0), builders.cut("right-hole", 100.0, 0.0)))
    items = (
        builders.item("left", -100.0, 0.0, cut="left-hole"),
        builders.item("right", 100.0, 0.0, cut="right-hole"),
    )
    return builders.project(plate, items=items)


def test_what_is_on_the_plate_goes_to_its_side() -> None:
    made = split_plate(two_gauges(), "new", "main", *UP)
    option = made.project.option("new")
    assert made.ids == ("main-2",)
    assert [(plate.id, [cut.id for cut in plate.cuts]) for plate in option.plates] == [
        ("main", ["left-hole"]),
        ("main-2", ["right-hole"]),
    ]
    assert [item.plate for item in option.items] == ["main", "main-2"]
    assert option.plate("main").outline.contour().bounds == (-300.0, -150.0, 0.0, 150.0)
    assert where(made.project) == where(two_gauges())


def test_joined_again_it_is_as_it_was_but_for_the_outlines_spelling() -> None:
    whole = join_plates(split_plate(two_gauges(), "new", "main", *UP).project, "new", "main", "main-2")
    option = whole.project.option("new")
    assert option.items == two_gauges().option("new").items
    assert option.plates[0].cuts == two_gauges().option("new").plates[0].cuts
    assert option.plates[0].outline.contour().area == 600.0 * 300.0


def test_dimensions_go_with_their_parts_and_one_across_the_line_is_left_out() -> None:
    project, _ = add_dimension(two_gauges(), "new", "main", Hook(), Hook(part="right"), Along.ACROSS, 5.0)
    project, _ = add_dimension(project, "new", "main", Hook(part="left"), Hook(part="right"), Along.ACROSS, 5.0)
    option = split_plate(project, "new", "main", *UP).project.option("new")
    assert [(mark.id, mark.plate) for mark in option.dimensions] == [("dimension-1", "main-2")]


def test_a_line_through_a_cut_or_past_the_plate_is_refused() -> None:
    with pytest.raises(EditRefused, match="runs through 'left-hole'"):
        split_plate(two_gauges(), "new", "main", Point(-90.0, 0.0), Point(-90.0, 1.0))
    with pytest.raises(EditRefused, match=r"^The line must cross the outline exactly twice\.$"):
        split_plate(two_gauges(), "new", "main", Point(900.0, 0.0), Point(900.0, 1.0))


def test_any_straight_line_parts_the_plate_and_joins_again() -> None:
    """A trapezium's area is its height times the mean of its parallel sides (Euclid I.41)."""
    slanted = Point(-50.0, -150.0), Point(50.0, 150.0)
    made = split_plate(two_gauges(), "new", "main", *slanted).project
    left, right = made.option("new").plates
    assert left.outline.contour().area == pytest.approx(300.0 * (250.0 + 350.0) / 2)
    assert [[cut.id for cut in plate.cuts] for plate in (left, right)] == [["left-hole"], ["right-hole"]]
    whole = join_plates(made, "new", "main", "main-2").project.option("new")
    assert whole.plates[0].outline.contour().area == pytest.approx(600.0 * 300.0)


def test_the_refusal_names_all_that_the_line_runs_through() -> None:
    with pytest.raises(EditRefused, match="runs through 'left-hole', 'right-hole'; it may not run through a cut"):
        split_plate(two_gauges(), "new", "main", Point(-300.0, -30.0), Point(300.0, 30.0))


def test_an_item_goes_with_its_cut() -> None:
    """Two units of one opening stand either side of the line; both go where the opening goes."""
    plate = builders.sheet(cuts=(builders.cut("hole", -100.0, 0.0),))
    items = (builders.item("upper", -100.0, 20.0, cut="hole"), builders.item("lower", -100.0, -60.0, cut="hole"))
    line = Point(-300.0, -55.0), Point(300.0, -55.0)
    option = split_plate(builders.project(plate, items=items), "new", "main", *line).project.option("new")
    assert {item.plate for item in option.items} == {plate.id for plate in option.plates if plate.cuts}


@pytest.mark.parametrize(("shown", "other"), [("main", "main-2"), ("main-2", "main")])
def test_what_stands_around_either_plate_stands_around_the_whole(shown: str, other: str) -> None:
    """The panel as found knows 'main' only, so that name stays whichever of the two is looked at."""
    project = split_plate(two_gauges(), "new", "main", *UP).project
    for plate in ("main", "main-2"):
        volume = Volume(shape=Circle(diameter=20.0), x=100.0, y=0.0, near=5.0, far=50.0)
        rib = Obstacle(id=f"rib-{plate}", name="Rib", kind=ObstacleKind.RIB, plate=plate, volume=volume)
        project = add_standing(project, rib).project
    name = project.option("new").plate(shown).name
    made = join_plates(project, "new", shown, other)
    assert made.ids == ("main",)
    assert made.project.option("new").plates[0].name == name
    assert {item.plate for item in made.project.option("new").items} == {"main"}
    assert {rib.plate for rib in made.project.surroundings.obstacles} == {"main"}


def test_an_overlay_and_dimensions_of_the_joined_plate_find_it() -> None:
    project = split_plate(two_gauges(), "new", "main", *UP).project
    option = project.option("new")
    veneer = option.plate("main-2").revised(id="veneer", name="Veneer", role=PlateRole.OVERLAY, over="main-2", cuts=())
    project = project.with_option(option.revised(plates=(*option.plates, veneer)))
    edge = Hook(part="main-2", hold=Hold.LEFT)
    project, _ = add_dimension(project, "new", "main-2", edge, Hook(part="right"), Along.ACROSS, 5.0)
    project, _ = add_dimension(project, "new", "main-2", Hook(), Hook(part="right"), Along.ACROSS, 9.0)
    option = join_plates(project, "new", "main", "main-2").project.option("new")
    assert [(plate.id, plate.over) for plate in option.plates] == [("main", None), ("veneer", "main")]
    assert [(mark.plate, mark.offset) for mark in option.dimensions] == [("main", 9.0)]


def test_plates_that_differ_are_not_joined() -> None:
    side = builders.sheet(id="side", name="Side", thickness=3.0)
    with pytest.raises(EditRefused, match="differ in their thickness"):
        join_plates(builders.project(builders.sheet(), side), "new", "main", "side")
    with pytest.raises(EditRefused, match="share no straight edge"):
        join_plates(builders.project(builders.sheet(), builders.sheet(id="side")), "new", "main", "side")
