import math

import pytest

from panelcad.geometry.across import Across
from panelcad.geometry.chord import Interval, chords, without
from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point


@pytest.mark.parametrize("across", Across)
def test_a_chord_of_a_circle_is_as_long_as_pythagoras_says(across):
    (chord,) = chords(circle(Point(10.0, 10.0), 50.0), across, 17.0)
    assert chord == pytest.approx((10 - 24.0, 10 + 24.0))  # 7, 24, 25


def test_a_line_beside_or_touching_a_contour_has_no_chord():
    assert chords(circle(Point(0.0, 0.0), 10.0), Across.VERTICAL, 5.0) == []
    assert chords(rectangle(Point(0.0, 0.0), 10.0, 4.0), Across.HORIZONTAL, -3.0) == []


def test_a_line_along_an_edge_inside_the_box_is_whole():
    step = closed_chain((Vertex(0, 0), Vertex(10, 0), Vertex(10, 10), Vertex(5, 10), Vertex(5, 5), Vertex(0, 5)))
    (chord,) = chords(step, Across.VERTICAL, 5.0)
    assert chord.low == 0.0
    assert chord.high in {5.0, 10.0}


def test_a_concave_contour_has_two_chords():
    bay = closed_chain(
        (Vertex(0, 0), Vertex(30, 0), Vertex(30, 20), Vertex(20, 20, -1.0), Vertex(10, 20), Vertex(0, 20))
    )
    low, high = chords(bay, Across.HORIZONTAL, 18.0)
    half = math.sqrt(5**2 - 2**2)
    assert low == pytest.approx((0, 15 - half))
    assert high == pytest.approx((15 + half, 30))


def test_holes_are_taken_out_of_a_stretch():
    left = without([Interval(0.0, 100.0)], [Interval(-5.0, 10.0), Interval(40.0, 60.0), Interval(60.0, 70.0)])
    assert left == [(10.0, 40.0), (70.0, 100.0)]
