"""Areas of the parts against the area of the whole; arcs keep their radius."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point, polar
from panelcad.geometry.segment import Arc
from panelcad.geometry.split import joined, split

SHEET = closed_chain((Vertex(0.0, 0.0), Vertex(400.0, 0.0), Vertex(400.0, 150.0, 0.3), Vertex(0.0, 150.0)))


def test_a_rectangle_is_split_left_and_right_of_the_line() -> None:
    halves = split(rectangle(Point(0.0, 0.0), 100.0, 40.0), Point(-10.0, -99.0), Point(-10.0, 99.0))
    assert (halves.left.bounds, halves.right.bounds) == ((-50.0, -20.0, -10.0, 20.0), (-10.0, -20.0, 50.0, 20.0))
    assert {halves.seam.start, halves.seam.end} == {Point(-10.0, -20.0), Point(-10.0, 20.0)}


@given(st.floats(20, 380), st.floats(40, 140))
def test_the_parts_of_any_cut_make_up_the_whole_and_the_arc_stays_one(x: float, angle: float) -> None:
    foot = Point(x, 60.0)
    halves = split(SHEET, foot, polar(foot, 10.0, angle))
    assert halves.left.area + halves.right.area == pytest.approx(SHEET.area, rel=1e-9)
    (top,) = (s for s in SHEET.segments if isinstance(s, Arc))
    arcs = [s for part in halves[:2] for s in part.segments if isinstance(s, Arc)]
    assert arcs
    assert {round(arc.radius, 6) for arc in arcs} == {round(top.radius, 6)}


@given(st.floats(20, 380), st.floats(40, 140))
def test_what_was_split_is_joined_again(x: float, angle: float) -> None:
    foot = Point(x, 60.0)
    halves = split(SHEET, foot, polar(foot, 10.0, angle))
    whole = joined(halves.left, halves.right)
    assert whole.area == pytest.approx(SHEET.area, rel=1e-9)
    assert whole.length == pytest.approx(SHEET.length, rel=1e-9)


def test_a_circle_is_halved() -> None:
    halves = split(circle(Point(0.0, 0.0), 10.0), Point(0.0, 0.0), Point(1.0, 0.0))
    assert halves.left.area == pytest.approx(halves.right.area, rel=1e-12)
    assert halves.left.bounds[1] == pytest.approx(0.0, abs=1e-9)


def test_a_line_may_cross_one_arc_twice() -> None:
    halves = split(SHEET, Point(0.0, 170.0), Point(1.0, 170.0))
    assert halves.left.bounds[1] == pytest.approx(170.0)
    assert halves.right.bounds[3] == pytest.approx(170.0)
    assert halves.left.area + halves.right.area == pytest.approx(SHEET.area)
    assert joined(halves.left, halves.right).area == pytest.approx(SHEET.area)


def test_a_line_through_corners_counts_each_once() -> None:
    halves = split(rectangle(Point(0.0, 0.0), 40.0, 40.0), Point(-20.0, -20.0), Point(20.0, 20.0))
    assert halves.left.area == halves.right.area == pytest.approx(800.0)


def test_plates_of_different_heights_are_joined_along_what_they_share() -> None:
    whole = joined(rectangle(Point(0.0, 0.0), 100.0, 40.0), rectangle(Point(80.0, 10.0), 60.0, 30.0))
    assert whole.area == pytest.approx(4000.0 + 1800.0)
    assert len(whole.vertices) == 8


@pytest.mark.parametrize(
    ("start", "end", "told"),
    [
        (Point(0.0, 200.0), Point(1.0, 200.0), "exactly twice"),
        (Point(0.0, 40.0), Point(1.0, 40.0), "exactly twice"),
        (Point(1.0, 1.0), Point(1.0, 1.0), "two different points"),
    ],
)
def test_a_line_that_does_not_split_is_told(start: Point, end: Point, told: str) -> None:
    notched = closed_chain(
        tuple(Vertex(x, y) for x, y in ((0, 0), (100, 0), (100, 50), (60, 50), (60, 20), (40, 20), (40, 50), (0, 50)))
    )
    with pytest.raises(ValueError, match=told):
        split(notched, start, end)


def test_contours_apart_are_not_joined() -> None:
    with pytest.raises(ValueError, match="share no straight edge"):
        joined(rectangle(Point(0.0, 0.0), 10.0, 10.0), rectangle(Point(20.0, 0.0), 10.0, 10.0))
