"""The smallest move along the axes: against closed forms and against trying every step."""

from math import hypot, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.cures import FARTHEST, moves
from panelcad.geometry.contour import circle, rectangle
from panelcad.geometry.gap import gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle
from tests.checks.cases import found
from tests.checks.made import attach, own_cut, panel

HERE = Point(0.0, 0.0)


def room(mover, stays):
    return lambda dx, dy: gap(Placement(dx, dy).contour(mover), stays).distance


def test_head_on_it_is_just_what_is_missing():
    cure, *_ = moves("a", room(circle(Point(12.0, 0.0), 10), circle(HERE, 10)), 5.0)
    assert (cure.dx, cure.dy) == (pytest.approx(3.0), 0.0)


@settings(max_examples=40, deadline=None)
@given(st.floats(-12, 12), st.floats(-12, 12))
def test_past_a_circle(x, y):
    """Two circles of 10 mm that need 5 mm: along x the centres come to sqrt(15² - y²)."""
    if hypot(x, y) >= 15:
        return
    cure, *_ = moves("a", room(circle(Point(x, y), 10), circle(HERE, 10)), 5.0)
    across = min(abs(sign * sqrt(15**2 - y**2) - x) for sign in (-1, 1))
    along = min(abs(sign * sqrt(15**2 - x**2) - y) for sign in (-1, 1))
    assert abs(cure.dx) + abs(cure.dy) == pytest.approx(min(across, along), abs=2e-3)
    assert gap(circle(Point(x + cure.dx, y + cure.dy), 10), circle(HERE, 10)).distance >= 5.0 - 1e-4


def test_past_the_bulge_of_a_circle_that_hardly_gives_way():
    """One of 30 mm that stands 5 mm beside one of 150 mm and needs 6.35: straight up, y = sqrt(96.35² - 95²)."""
    ways = moves("a", room(circle(Point(95.0, 0.0), 30), circle(HERE, 150)), 6.35)
    up = [abs(way.dy) for way in ways if way.dx == 0.0]
    assert up == [pytest.approx(sqrt(96.35**2 - 95**2), abs=2e-3)] * 2


def test_the_shorter_way_out_of_a_rectangle():
    cure, *_ = moves("a", room(circle(Point(8.0, 2.0), 6), rectangle(HERE, 60, 20)), 0.0)
    assert (cure.dx, cure.dy) == (0.0, pytest.approx(11.0))


def test_nothing_is_offered_that_is_a_new_layout():
    assert moves("a", room(circle(HERE, 10), rectangle(HERE, 3 * FARTHEST, 3 * FARTHEST)), 0.0) == []


def test_what_is_old_or_fixed_stays_and_the_other_moves():
    big, small = Circle(diameter=50), Circle(diameter=30)
    old = panel(cuts=(own_cut("a", 0, 0, big), own_cut("b", 43, 0, small, state=CutState.EXISTING)))
    assert found(old, "web")[0].cure.item == "a"
    both = panel(
        cuts=(
            own_cut("a", 0, 0, big, state=CutState.EXISTING),
            own_cut("b", 43, 0, small, state=CutState.EXISTING),
        )
    )
    assert found(both, "web")[0].cure is None
    screw = panel(cuts=(own_cut("a", 0, 0, big),), attach_screws=(attach("s1", 29, 0),))
    assert found(screw, "edge-distance")[0].cure.item == "a"
