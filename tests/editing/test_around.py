import pytest

from panelcad.editing.around import add_standing, revise_standing, set_eye
from panelcad.editing.move import move_by
from panelcad.editing.remove import remove
from panelcad.editing.rotate import rotate_by
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.source import Source, Standing
from panelcad.model.surroundings import DepthLimit, Eye, KeepOut, Obstacle, ObstacleKind, Volume
from tests import builders

RIB = Obstacle(
    id="rib",
    name="Rib",
    kind=ObstacleKind.RIB,
    plate="main",
    volume=Volume(shape=Rectangle(width=20.0, height=200.0), x=50.0, y=0.0, near=10.0, far=80.0),
)
FIREWALL = DepthLimit(
    id="firewall",
    name="Firewall",
    plate="main",
    shape=Rectangle(width=600.0, height=300.0),
    x=0.0,
    y=0.0,
    at_origin=350.0,
)
YOKE = KeepOut(
    id="rib",
    name="Yoke",
    plate="main",
    volume=Volume(shape=Circle(diameter=250.0), x=0.0, y=0.0, near=-200.0, far=-60.0),
)


def around() -> Project:
    project = builders.project()
    for thing in (RIB, FIREWALL, YOKE):
        project = add_standing(project, thing).project
    return project


def test_things_around_are_added_under_free_ids_and_edited_like_parts() -> None:
    project = around()
    assert [thing.id for thing in project.surroundings.keep_outs] == ["rib-2"]
    moved = rotate_by(move_by(project, "new", ["rib", "firewall"], 5.0, 6.0), "new", ["rib"], 45.0)
    rib = moved.surroundings.obstacles[0].volume
    assert (rib.x, rib.y, rib.rotation) == (55.0, 6.0, 45.0)
    assert moved.surroundings.depth_limits[0].x == 5.0
    assert moved.option("new") is project.option("new")
    assert remove(moved, "new", ["rib"]).surroundings.obstacles == ()


def test_fields_of_a_thing_and_of_its_volume_are_revised() -> None:
    project = revise_standing(around(), "rib", name="Main rib", far=95.0)
    rib = project.surroundings.obstacles[0]
    assert (rib.name, rib.volume.far, rib.volume.near) == ("Main rib", 95.0, 10.0)
    assert revise_standing(project, "firewall", slope_y=0.2).surroundings.depth_limits[0].slope_y == 0.2


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(EditRefused, match="far end lies beyond its near end"):
        revise_standing(around(), "rib", far=5.0)
    with pytest.raises(UnknownName, match="'tube'; there is 'rib'"):
        revise_standing(around(), "tube", far=5.0)
    with pytest.raises(UnknownName, match="no plate 'side'"):
        add_standing(builders.project(), RIB.revised(plate="side"))


def test_the_eye_is_set_and_taken_away() -> None:
    eye = Eye(x=-200.0, y=400.0, z=-700.0, centre_line=-200.0, source=Source(standing=Standing.USER, text="measured"))
    seen = set_eye(builders.project(), eye)
    assert seen.surroundings.eye == eye
    assert set_eye(seen, None) == builders.project()
