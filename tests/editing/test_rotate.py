import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.extents import middle
from panelcad.editing.groups import group
from panelcad.editing.rotate import can_turn, rotate_about, rotate_by, rotate_to, turn_as_one, turn_each
from panelcad.geometry.point import Point
from panelcad.model.hole import HoleForm
from panelcad.model.plate import AttachScrew
from tests import builders
from tests.editing.scenes import one_instrument, row, stack, where


def test_an_instrument_turns_about_its_own_centre_with_its_cut() -> None:
    turned = rotate_by(one_instrument(), "new", ["gauge"], 90.0)
    assert where(turned) == where(one_instrument())
    assert {turned.option("new").item("gauge").rotation, turned.option("new").plates[0].cuts[0].rotation} == {90.0}


def test_a_stack_turns_as_one_about_its_opening() -> None:
    assert where(rotate_by(stack(), "new", ["bay"], 90.0)) == {
        "upper": (-20.0, 0.0),
        "lower": (20.0, 0.0),
        "bay": (0.0, 0.0),
    }


def test_a_turn_to_an_angle_and_back_is_exact() -> None:
    turned = rotate_to(one_instrument(), "new", "hole", 33.3)
    assert turned.option("new").item("gauge").rotation == 33.3
    assert rotate_to(turned, "new", "gauge", 0.0) == one_instrument()


def test_four_quarter_turns_about_a_point_come_back() -> None:
    turned = one_instrument()
    for _ in range(4):
        turned = rotate_about(turned, "new", ["gauge"], Point(3.0, 4.0), 90.0)
    assert turned == one_instrument()


def test_a_row_turned_as_one_keeps_its_centre() -> None:
    before = row(0.0, 50.0, 100.0)
    assert middle(before, before.option("new"), "abc") == Point(50.0, 0.0)
    assert where(turn_as_one(before, "new", "abc", 90.0)) == {"a": (50.0, -50.0), "b": (50.0, 0.0), "c": (50.0, 50.0)}


def test_each_is_turned_on_its_own_but_a_group_is_one() -> None:
    before = group(row(0.0, 50.0, 200.0), "new", "ab")[0]
    after = turn_each(before, "new", "ac", 90.0)
    assert where(after) == {"a": (25.0, -25.0), "b": (25.0, 25.0), "c": (200.0, 0.0)}
    assert {item.rotation for item in after.option("new").items} == {90.0}


@given(st.floats(-720, 720))
def test_a_turn_as_one_keeps_every_distance(degrees) -> None:
    there = row(0.0, 50.0, 170.0)
    before, after = where(there), where(turn_as_one(there, "new", "abc", degrees))
    for one, other in combinations("abc", 2):
        assert math.dist(after[one], after[other]) == pytest.approx(math.dist(before[one], before[other]), abs=1e-5)


def test_a_screw_alone_cannot_be_turned() -> None:
    form = HoleForm(diameter=4.3, fastener=4.17)
    screws = tuple(AttachScrew(id=name, x=x, y=140.0, form=form) for name, x in (("left", -50.0), ("right", 50.0)))
    project = builders.project(builders.sheet(attach_screws=screws))
    option = project.option("new")
    assert not can_turn(project, option, ["left"])
    assert can_turn(project, option, ["left", "right"])
