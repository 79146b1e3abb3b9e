import math

import pytest

from panelcad.model.cutout import Bezel, Body, BodyKind, Mounting
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, HoleKind, Nutplate
from panelcad.model.layout import FeatureKind, layout
from panelcad.model.plate import AttachScrew
from panelcad.model.shape import Circle, Rectangle
from tests import builders

SCREWS = HoleGroup(
    form=HoleForm(diameter=4.318, fastener=3.5052),
    bolt_circle=BoltCircle(diameter=88.9, count=4, first_angle=45),
    source=builders.SOURCE,
)
INSTRUMENT = builders.round_cutout(
    holes=(SCREWS,),
    bezel=Bezel(shape=Rectangle(width=82.55, height=82.55), source=builders.SOURCE),
    bodies=(
        Body(kind=BodyKind.CASE, shape=Circle(diameter=78), far=150, source=builders.SOURCE),
        Body(kind=BodyKind.KNOB, shape=Circle(diameter=12), x=-30, y=-30, far=15, source=builders.SOURCE),
    ),
)


def placed(**where: object) -> builders.Project:
    at = {"x": 100, "y": 50} | where
    return builders.project(
        builders.sheet(cuts=(builders.cut("c", cutout="round", **at),)),
        items=(builders.item("i", cut="c", **at),),
        cutouts=(INSTRUMENT,),
    )


def test_screws_on_a_bolt_circle_stand_on_the_square() -> None:
    """3.500 in circle at 45° is a 2.4749 in square: the published 3-1/8 in hole template."""
    laid = layout(project := placed(), project.option("new")).plates[0]
    holes = [f for f in laid.features if f.kind is FeatureKind.HOLE]
    square = 3.5 / math.sqrt(2) * 25.4
    assert {(round(h.centre.x - 100, 4), round(h.centre.y - 50, 4)) for h in holes} == {
        (round(sx * square / 2, 4), round(sy * square / 2, 4)) for sx in (1, -1) for sy in (1, -1)
    }


def test_bodies_behind_and_knobs_in_front() -> None:
    item = layout(project := placed(), project.option("new")).plates[0].items[0]
    assert [(b.near, b.far) for b in item.behind] == [(0.0, 150.0)]
    assert [(b.near, b.far) for b in item.in_front] == [(-15.0, 0.0)]


def test_a_rear_mounted_item_is_reckoned_from_the_back_face_and_hides_its_bezel() -> None:
    project = placed()
    option = project.option("new")
    rear = option.revised(items=(option.item("i").revised(mounting=Mounting.REAR),))
    item = layout(project.with_option(rear), rear).plates[0].items[0]
    assert item.behind[0].far == 152.0
    assert not item.shows_bezel


def test_rotation_turns_knobs_with_the_item() -> None:
    item = layout(project := placed(rotation=90), project.option("new")).plates[0].items[0]
    assert item.in_front[0].footprint.bounds == pytest.approx((130 - 6, 20 - 6, 130 + 6, 20 + 6))


def test_what_an_edit_did_not_touch_is_not_placed_again() -> None:
    project = placed()
    option = project.option("new")
    plate = option.plates[0]
    longer = option.revised(plates=(plate.revised(cuts=(*plate.cuts, builders.cut("d", 0, 0))),))
    before, after = layout(project, option).plates[0], layout(project.with_option(longer), longer).plates[0]
    assert after.cuts[0] is before.cuts[0]
    assert after.items[0] is before.items[0]


def test_a_nutplate_brings_its_two_rivets() -> None:
    nutplate = Nutplate(rivet_diameter=2.4, rivet_spacing=17.5, flange_length=25, flange_width=9, angle=90)
    form = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.NUTPLATE, nutplate=nutplate)
    plate = builders.sheet(attach_screws=(AttachScrew(id="s1", x=-280, y=0, form=form),))
    laid = layout(project := builders.project(plate), project.option("new")).plates[0]
    rivets = [f.centre for f in laid.attach if f.kind is FeatureKind.RIVET]
    assert rivets == [pytest.approx((-280, 8.75)), pytest.approx((-280, -8.75))]
