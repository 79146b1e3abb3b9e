"""Sagitta R(1 - cos(pi/n)) and its circumscribed counterpart bound the error of every polygon."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import CHORD_ERROR, Side, polygon

NOTCHED = closed_chain(
    (Vertex(0, 0), Vertex(40, 0), Vertex(40, 30), Vertex(25, 30, -1.0), Vertex(15, 30), Vertex(0, 30))
)


@given(st.floats(0.05, 500), st.floats(0.001, 0.1))
def test_circles_are_held_between_their_two_polygons(radius: float, error: float) -> None:
    contour = circle(Point(3, 4), 2 * radius)
    inner = polygon(contour, Side.INSCRIBED, error)
    outer = polygon(contour, Side.CIRCUMSCRIBED, error)
    assert inner.area < math.pi * radius**2 < outer.area
    reach = [distance(Point(*corner), Point(3, 4)) for corner in outer.exterior.coords]
    assert max(reach) - radius <= error * 1.2 + 1e-9


@pytest.mark.parametrize("side", list(Side))
def test_a_concave_notch_is_on_the_safe_side(side: Side) -> None:
    true_area = 40 * 30 - math.pi * 25 / 2
    drawn = polygon(NOTCHED, side)
    assert (drawn.area < true_area) == (side is Side.INSCRIBED)
    assert drawn.area == pytest.approx(true_area, abs=CHORD_ERROR * 20)
