"""Closed forms of circular arcs: any textbook of plane geometry; bulge after the DXF Reference, LWPOLYLINE group 42."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc, Line, segment_between

coordinates = st.floats(-500, 500)
points = st.builds(Point, coordinates, coordinates)
bulges = st.floats(0.01, 5) | st.floats(-5, -0.01)


def test_a_bulge_of_one_is_a_half_circle() -> None:
    arc = Arc.from_bulge(Point(10, 0), Point(-10, 0), 1.0)
    assert arc.centre == pytest.approx((0, 0))
    assert arc.radius == pytest.approx(10)
    assert arc.length == pytest.approx(math.pi * 10)
    assert arc.bounds == pytest.approx((-10, 0, 10, 10))


def test_a_quarter_turn_bulge_is_a_quarter_circle() -> None:
    arc = Arc.from_bulge(Point(5, 0), Point(0, 5), math.tan(math.radians(90) / 4))
    assert arc.sweep == pytest.approx(math.pi / 2)
    assert arc.radius == pytest.approx(5)


def test_a_negative_bulge_runs_clockwise() -> None:
    arc = Arc.from_bulge(Point(10, 0), Point(-10, 0), -1.0)
    assert arc.sweep == pytest.approx(-math.pi)
    assert arc.bounds == pytest.approx((-10, -10, 10, 0))


def test_an_arc_past_the_half_turn_has_its_centre_on_the_far_side() -> None:
    arc = Arc.from_bulge(Point(1, 0), Point(0, 1), math.tan(math.radians(270) / 4))
    assert math.degrees(arc.sweep) == pytest.approx(270)
    assert arc.centre == pytest.approx((1, 1))


def test_no_bulge_is_a_line() -> None:
    assert isinstance(segment_between(Point(0, 0), Point(1, 0), 0.0), Line)


@given(points, points, bulges)
def test_sagitta_is_bulge_times_half_chord(start: Point, end: Point, bulge: float) -> None:
    chord = distance(start, end)
    if chord < 1e-3:
        return
    arc = Arc.from_bulge(start, end, bulge)
    half_way = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    assert distance(arc.at(0.5), half_way) == pytest.approx(abs(bulge) * chord / 2, rel=1e-6)


@given(points, points, bulges, points, st.floats(0, 1))
def test_no_point_of_an_arc_is_nearer_than_its_nearest(
    start: Point, end: Point, bulge: float, probe: Point, share: float
) -> None:
    if distance(start, end) < 1e-3:
        return
    arc = Arc.from_bulge(start, end, bulge)
    assert distance(arc.nearest(probe), probe) <= distance(arc.at(share), probe) + 1e-6 * (1 + arc.radius)


@given(points, points, points, st.floats(0, 1))
def test_no_point_of_a_line_is_nearer_than_its_nearest(start: Point, end: Point, probe: Point, share: float) -> None:
    line = Line(start, end)
    assert distance(line.nearest(probe), probe) <= distance(line.at(share), probe) + 1e-9
