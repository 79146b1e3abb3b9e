import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.depths import covered, shape_of
from panelcad.editing.groups import lock
from panelcad.editing.rotate import rotate_by
from panelcad.editing.stretch import CORNERS, SIDES, Pull, pulled_place, pulls, stretch
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point, distance
from panelcad.model.shape import Circle, Corner, Outline, Rectangle, Slot
from tests.editing.test_around import around


def rib(project):
    return project.surroundings.obstacles[0]


def test_a_side_that_is_pulled_leaves_the_opposite_one_and_the_height() -> None:
    made = rib(stretch(around(), "new", "rib", Pull(1, 0), Point(90.0, 17.0)))
    assert covered(made) == pytest.approx((40.0, -100.0, 90.0, 100.0))


def test_a_corner_that_is_pulled_leaves_the_opposite_one() -> None:
    made = rib(stretch(around(), "new", "rib", Pull(-1, -1), Point(10.0, -130.0)))
    assert covered(made) == pytest.approx((10.0, -130.0, 60.0, 100.0))


@given(pull=st.sampled_from((*SIDES, *CORNERS)), degrees=st.floats(-180.0, 180.0), far=st.floats(1.0, 90.0))
def test_what_is_pulled_goes_where_it_is_brought_however_it_lies(pull, degrees, far) -> None:
    project = rotate_by(around(), "new", ["rib"], degrees)
    before = rib(project)
    opposite = Pull(-pull.across, -pull.up)
    start, stays = pulled_place(before, pull), pulled_place(before, opposite)
    to = start.towards(stays, -far)
    made = rib(stretch(project, "new", "rib", pull, to))
    assert distance(pulled_place(made, opposite), stays) < 1e-5
    assert distance(pulled_place(made, pull), to) < 1e-5


def test_a_circle_grows_about_its_middle_and_a_slot_along_itself() -> None:
    project = stretch(around(), "new", "rib-2", Pull(0, -1), Point(0.0, -150.0))
    assert project.surroundings.keep_outs[0].volume.shape == Circle(diameter=300.0)
    volume = rib(project).volume.revised(shape=Slot(length=60.0, width=20.0))
    slotted = project.revised(
        surroundings=project.surroundings.revised(obstacles=(rib(project).revised(volume=volume),))
    )
    assert shape_of(rib(stretch(slotted, "new", "rib", Pull(1, 0), Point(100.0, 0.0)))).length == 80.0
    with pytest.raises(EditRefused, match="at least as long as it is wide"):
        stretch(slotted, "new", "rib", Pull(1, 0), Point(30.0, 0.0))


def test_a_corner_radius_gives_way_to_a_short_side() -> None:
    project = around()
    volume = rib(project).volume.revised(shape=Rectangle(width=20.0, height=200.0, corner_radius=9.0))
    project = project.revised(
        surroundings=project.surroundings.revised(obstacles=(rib(project).revised(volume=volume),))
    )
    made = rib(stretch(project, "new", "rib", Pull(1, 0), Point(50.0, 0.0)))
    assert shape_of(made) == Rectangle(width=10.0, height=200.0, corner_radius=5.0)


def test_nothing_is_pulled_through_its_opposite_side() -> None:
    with pytest.raises(EditRefused, match="larger than 0"):
        stretch(around(), "new", "rib", Pull(1, 0), Point(40.0, 0.0))
    with pytest.raises(EditRefused, match="larger than 0"):
        stretch(around(), "new", "rib-2", Pull(1, 0), Point(-3.0, 0.0))


def test_what_is_locked_is_not_stretched() -> None:
    with pytest.raises(EditRefused, match="locked"):
        stretch(lock(around(), "new", ["firewall"]), "new", "firewall", Pull(1, 0), Point(400.0, 0.0))


def test_a_free_contour_has_nothing_to_pull() -> None:
    corners = tuple(Corner(x=x, y=y) for x, y in ((0.0, 0.0), (10.0, 0.0), (0.0, 10.0)))
    free = rib(around())
    assert pulls(free.revised(volume=free.volume.revised(shape=Outline(corners=corners)))) == ()
