import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.outline_edges import arcs, edges
from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point, distance

BUMP = closed_chain((Vertex(0, 0), Vertex(40, 0, -1.0), Vertex(60, 0), Vertex(100, 0), Vertex(100, 50), Vertex(0, 50)))


def test_vertices_count_counter_clockwise_from_the_lower_left_corner():
    found = edges(BUMP)
    assert [(edge.number, tuple(edge.start)) for edge in found] == [
        (1, (0, 0)), (2, (40, 0)), (3, (60, 0)), (4, (100, 0)), (5, (100, 50)), (6, (0, 50)),
    ]  # fmt: skip
    assert [edge.following for edge in found] == [2, 3, 4, 5, 6, 1]


def test_an_arc_has_its_radius_and_centre_and_says_whether_it_bows_into_the_metal():
    arc = edges(BUMP)[1]
    assert (arc.arc.radius, tuple(arc.arc.centre)) == (10, pytest.approx((50, 0)))
    assert arc.is_concave
    corner = edges(rectangle(Point(0, 0), 100, 50, 5))[0]
    assert not corner.is_concave


def test_edges_along_the_axes_are_told_from_oblique_ones():
    found = edges(closed_chain((Vertex(0, 0), Vertex(100, 0), Vertex(100, 30), Vertex(80, 50), Vertex(0, 50))))
    assert [edge.level_at for edge in found] == [0, None, None, 50, None]
    assert [edge.upright_at for edge in found] == [None, 100, None, None, 0]


def test_a_smooth_passage_is_no_corner():
    assert [edge.is_corner for edge in edges(rectangle(Point(0, 0), 100, 50, 5))] == [False] * 8
    assert all(edge.is_corner for edge in edges(BUMP))


def test_a_circle_has_no_vertices():
    assert edges(circle(Point(0, 0), 50)) == ()


def test_arcs_about_one_centre_are_told_once():
    split = closed_chain((Vertex(-10, 0, 0.5), Vertex(10, 0), Vertex(10, 10, math.tan(math.pi / 8)), Vertex(0, 20)))
    assert len(list(arcs(edges(split)))) == 2
    full = closed_chain((Vertex(10, 0, 1.0), Vertex(-10, 0, 1.0)))
    assert len(list(arcs(edges(full)))) == 1


@given(st.floats(20, 900), st.floats(20, 900), st.floats(0.5, 9))
def test_edges_go_once_around(width, height, radius):
    found = edges(rectangle(Point(3, 4), width, height, radius))
    ends = zip(found, (*found[1:], found[0]), strict=True)
    assert all(distance(a.segment.end, b.start) < 1e-9 for a, b in ends)
