import pytest

from panelcad.editing.extents import Axis, bodies
from panelcad.editing.rotate import rotate_by
from panelcad.editing.snapping.on_plate import field_around, standings
from panelcad.editing.stack import place_stack
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import Bezel
from panelcad.model.layout import layout
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import Eye, Surroundings
from tests import builders


def laid(project):
    return layout(project, project.option("new"))


def test_a_thing_takes_up_what_is_seen_of_it_as_when_things_are_aligned() -> None:
    bezel = Bezel(shape=Rectangle(width=60.0, height=40.0), source=builders.SOURCE)
    cutout = builders.round_cutout(diameter=30.0, bezel=bezel)
    plate = builders.sheet(cuts=(builders.cut("hole", 10.0, 20.0), builders.cut("bare", 200.0, 20.0)))
    project = builders.project(plate, items=(builders.item("gauge", 10.0, 20.0, cut="hole"),), cutouts=(cutout,))
    known = standings(laid(project), "main")
    assert set(known) == {"gauge", "bare"}
    assert known["gauge"].box == (-20.0, 0.0, 40.0, 40.0)
    assert known["bare"].box == (185.0, 5.0, 215.0, 35.0)
    (body,) = bodies(project, project.option("new"), ["gauge"])
    assert known["gauge"].box == (body.box.left, body.box.bottom, body.box.right, body.box.top)


def radios(turn: float = 0.0):
    """Two rack units with the stack's middle at x = 10 and its upper edge at y = 100; rails 6.30 in apart."""
    units = [packaged_catalogue().cutouts[name] for name in ("rack-1-30", "rack-1-65")]
    made = place_stack(builders.project(), "new", "main", units, 10.0, 100.0)
    return rotate_by(made.project, "new", [made.ids[0]], turn) if turn else made.project


def test_a_rack_offers_its_rails_and_edges() -> None:
    project = radios()
    profile = project.profile
    height = (1.30 + 1.65) * 25.4 + profile.stack_joint + profile.stack_clearance
    half = 6.30 * 25.4 / 2
    lines = standings(laid(project), "main")["stack"].lines
    assert {(line.words.format("it"), line.axis): line.at for line in lines} == {
        ("left rack rail of it", Axis.ACROSS): pytest.approx(10.0 - half),
        ("right rack rail of it", Axis.ACROSS): pytest.approx(10.0 + half),
        ("lower rack edge of it", Axis.UP): pytest.approx(100.0 - height),
        ("upper rack edge of it", Axis.UP): pytest.approx(100.0),
    }


def test_a_rack_that_lies_has_its_rails_below_and_above() -> None:
    words = [line.words.format("it") for line in standings(laid(radios(90.0)), "main")["stack"].lines]
    assert words == ["left rack edge of it", "right rack edge of it", "lower rack rail of it", "upper rack rail of it"]


def test_a_rack_at_an_angle_has_no_line_to_meet() -> None:
    assert standings(laid(radios(20.0)), "main")["stack"].lines == ()


def test_the_field_leaves_out_what_moves_and_holds_the_panel_s_own_lines() -> None:
    eye = Eye(x=0.0, y=0.0, z=-600.0, centre_line=-150.0, source=builders.SOURCE)
    spots = (("one", -100.0), ("two", 100.0))
    plate = builders.sheet(cuts=tuple(builders.cut(name, x, 0.0) for name, x in spots))
    project = builders.project(plate, surroundings=Surroundings(eye=eye))
    field = field_around(laid(project), "main", {"two"}, 5.0, standings(laid(project), "main"))
    assert [other.name for other in field.others] == ["one"]
    assert field.grid == 5.0
    assert ("pilot's centre line", -150.0) in {(line.label, line.at) for line in field.lines}
