import pytest

from panelcad.drawing.clearance import clearances
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.layout import layout
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, MovingPart, Obstacle, ObstacleKind, Surroundings, Travel, Volume
from tests import builders


def found(distance: float, **around: object):
    case = Body(kind=BodyKind.CASE, shape=Circle(diameter=80), far=100.0, source=builders.SOURCE)
    gauge = builders.round_cutout(bodies=(case,))
    items = (builders.item("i1", 0, 0), builders.item("i2", distance, 0))
    project = builders.project(items=items, cutouts=(gauge,), surroundings=Surroundings(**around))
    laid = layout(project, project.options[0])
    return {(each.item, each.neighbour): each for each in clearances(laid, laid.plates[0])}


def volume(shape, x: float, near: float, far: float) -> Volume:
    return Volume(shape=shape, x=x, y=0, near=near, far=far)


def test_two_cases_are_as_far_apart_as_their_circles():
    each = found(90.0)["i1", "i2"]
    assert each.distance == pytest.approx(10.0)
    assert each.required == 3.175
    assert [end.x for end in each.ends] == pytest.approx([40.0, 50.0])


def test_what_is_farther_than_a_hand_needs_is_not_listed():
    assert found(101.0) == {}


def test_an_obstacle_counts_only_where_it_shares_the_depth():
    tube = volume(Rectangle(width=10, height=100), 55.0, 40.0, 60.0)
    beyond = volume(Rectangle(width=10, height=100), 55.0, 100.0, 120.0)
    near = Obstacle(id="tube", name="Tube", kind=ObstacleKind.TUBE, plate="main", volume=tube)
    far = Obstacle(id="beyond", name="Beyond", kind=ObstacleKind.TUBE, plate="main", volume=beyond)
    listed = found(300.0, obstacles=(near, far))
    assert listed["i1", "tube"].distance == pytest.approx(10.0)
    assert ("i1", "beyond") not in listed


def test_a_moving_part_counts_where_its_travel_brings_it():
    shaft = volume(Circle(diameter=20), -65.0, -300.0, -100.0)
    part = MovingPart(id="shaft", name="Shaft", plate="main", volume=shaft, travels=(Travel(dz=150.0),))
    each = found(300.0, moving_parts=(part,))["i1", "shaft"]
    assert each.distance == pytest.approx(65 - 40 - 10)


def test_a_slanting_limit_is_judged_at_the_corner_it_is_nearest_to():
    wall = DepthLimit(
        id="wall", name="Firewall", plate="main", shape=Rectangle(width=600, height=300), x=0, y=0, at_origin=115.0,
        slope_x=0.1,
    )  # fmt: skip
    each = found(300.0, depth_limits=(wall,))["i1", "wall"]
    assert each.distance == pytest.approx(115 - 4 - 100)
    assert each.ends == ()


def test_what_is_as_tight_as_another_comes_by_its_number_and_not_by_how_a_float_ends():
    """Five 80 mm cases a pitch of 90.1 mm apart, the last of the ids first: each gap is 10.1 mm."""
    case = Body(kind=BodyKind.CASE, shape=Circle(diameter=80), far=100.0, source=builders.SOURCE)
    gauge = builders.round_cutout(bodies=(case,))
    ids = ("e", "d", "c", "b", "a")
    items = tuple(builders.item(name, -190.3 + 90.1 * i, 0) for i, name in enumerate(ids))
    project = builders.project(items=items, cutouts=(gauge,))
    laid = layout(project, project.options[0])
    listed = clearances(laid, laid.plates[0])

    assert [each.distance for each in listed] == pytest.approx([10.1] * 4)
    assert [each.item for each in listed] == ["e", "d", "c", "b"]
