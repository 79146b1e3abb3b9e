"""Swept contours. Steiner's formula gives the area of a grown hull; sampled places lie in it."""

from math import hypot, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.gap import gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.sweep import least_width, swayed, swept

HERE = Point(0.0, 0.0)
lengths = st.floats(-50, 50)


@given(dx=lengths, dy=lengths, diameter=st.floats(1, 40))
def test_a_swept_circle_is_a_slot(dx, dy, diameter):
    way = hypot(dx, dy)
    assert swept(circle(HERE, diameter), dx, dy).area == pytest.approx(way * diameter + pi * diameter**2 / 4)


def test_not_moving_changes_nothing():
    there = rectangle(HERE, 30, 20, 3)
    assert swept(there, 0.0, 0.0) is there


@given(dx=lengths, dy=lengths, share=st.floats(0, 1))
def test_each_place_on_the_way_lies_within(dx, dy, share):
    shape = rectangle(HERE, 30, 20, 3)
    over = swept(shape, dx, dy)
    place = Placement(share * dx, share * dy).contour(shape)
    for x, y in (place.bounds[:2], place.bounds[2:]):
        assert over.bounds[0] - 1e-9 <= x <= over.bounds[2] + 1e-9
        assert over.bounds[1] - 1e-9 <= y <= over.bounds[3] + 1e-9
    assert gap(circle(Point(share * dx, share * dy), 0.0), over).distance <= 0.0


def test_a_chain_is_held_by_its_hull():
    notched = closed_chain((Vertex(0, 0), Vertex(40, 0), Vertex(40, 30), Vertex(20, 10), Vertex(0, 30)))
    assert swept(notched, 10.0, 0.0).area == pytest.approx(50 * 30)


def test_sway_goes_each_way():
    grown = swayed(rectangle(HERE, 30, 20), 3.0, 1.0)
    assert grown.bounds == pytest.approx((-18, -11, 18, 11))
    assert grown.area == pytest.approx(36 * 22)


@pytest.mark.parametrize(
    ("shape", "width"),
    [
        (circle(HERE, 8), 8),
        (rectangle(HERE, 30, 20, 3), 20),
        (Placement(rotation=33).contour(rectangle(HERE, 30, 7)), 7),
        (rectangle(HERE, 30, 6, 3), 6),
        (closed_chain((Vertex(0, 0), Vertex(10, 0), Vertex(5, 5 * sqrt(3)))), 5 * sqrt(3)),
    ],
)
def test_the_narrowest_slit_it_goes_through(shape, width):
    assert least_width(shape) == pytest.approx(width)
