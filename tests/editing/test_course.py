import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.course import (
    Course,
    begun,
    closed,
    drawn,
    foreseen,
    go_on,
    taken_back,
    with_radius,
)
from panelcad.editing.outline import bulge_of_radius, bulge_of_rise, edges
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point, polar
from panelcad.geometry.segment import Arc, segment_between

SQUARE = (Point(0.0, 0.0), Point(100.0, 0.0), Point(100.0, 60.0), Point(0.0, 60.0))


def course(*points: Point) -> Course:
    made = begun(points[0])
    for point in points[1:]:
        made = go_on(made, point)
    return made


def test_four_points_close_to_a_rectangle() -> None:
    outline = closed(course(*SQUARE))
    assert [(c.x, c.y) for c in outline.corners] == list(SQUARE)
    assert outline.contour().area == 6000.0


def test_points_drawn_clockwise_give_the_same_outline() -> None:
    assert closed(course(*reversed(SQUARE))).contour().area == 6000.0


@given(st.lists(st.floats(20.0, 400.0), min_size=3, max_size=12))
def test_any_star_closes_to_the_area_of_its_triangles(reaches) -> None:
    """Each triangle from the middle has half the product of its sides and the sine of their angle (Euclid I.47)."""
    step = 360.0 / len(reaches)
    outline = closed(course(*(polar(Point(0.0, 0.0), reach, i * step) for i, reach in enumerate(reaches))))
    pairs = zip(reaches, reaches[1:] + reaches[:1], strict=True)
    assert outline.contour().area == pytest.approx(sum(a * b for a, b in pairs) * math.sin(math.radians(step)) / 2)


def test_an_edge_that_crosses_an_earlier_one_is_refused_by_its_points() -> None:
    with pytest.raises(EditRefused, match="would cross the one from point 1 to point 2"):
        go_on(course(*SQUARE[:3]), Point(50.0, -20.0))


def test_an_edge_that_touches_an_earlier_point_is_refused() -> None:
    with pytest.raises(EditRefused, match="would cross"):
        go_on(course(*SQUARE), SQUARE[1])


def test_an_edge_that_runs_back_over_the_last_is_refused() -> None:
    with pytest.raises(EditRefused, match="would cross the one from point 1 to point 2"):
        go_on(course(*SQUARE[:2]), Point(40.0, 0.0))
    assert go_on(course(*SQUARE[:2]), Point(140.0, 0.0)).last.at == (140.0, 0.0)


def test_an_arc_that_meets_the_edge_before_it_again_is_refused() -> None:
    """The arc leaves (100, 0) upwards and comes down through the level edge."""
    start, end = SQUARE[1], Point(60.0, -30.0)
    with pytest.raises(EditRefused, match="would cross"):
        go_on(course(*SQUARE[:2]), end, bulge_of_rise(start, end, -60.0))


def test_the_closing_edge_may_not_cross_either() -> None:
    ends = ((0.0, 0.0), (0.0, 50.0), (50.0, 50.0), (50.0, 20.0), (80.0, 20.0), (80.0, 80.0), (20.0, 80.0))
    hooked = course(*(Point(*end) for end in ends))
    with pytest.raises(EditRefused, match="would cross the one from point 2 to point 3"):
        closed(hooked)


def test_the_same_point_twice_is_refused() -> None:
    with pytest.raises(EditRefused, match="where the last one is"):
        go_on(begun(SQUARE[0]), SQUARE[0])


def test_two_points_need_an_arc_to_close() -> None:
    two = course(*SQUARE[:2])
    with pytest.raises(EditRefused, match="three points"):
        closed(two)
    half_disc = closed(two, bulge_of_rise(SQUARE[1], SQUARE[0], -50.0))
    assert half_disc.contour().area == pytest.approx(math.pi * 50.0**2 / 2)


def test_a_single_point_does_not_close() -> None:
    with pytest.raises(EditRefused, match="three points"):
        closed(begun(SQUARE[0]))


def test_a_rise_above_zero_bows_to_the_left_of_the_way() -> None:
    start, end = Point(0.0, 0.0), Point(100.0, 0.0)
    arc = segment_between(start, end, bulge_of_rise(start, end, 10.0))
    assert arc.at(0.5) == pytest.approx((50.0, 10.0))


def test_an_arc_of_a_radius_has_that_radius_and_its_side() -> None:
    start, end = Point(0.0, 0.0), Point(100.0, 0.0)
    for radius, side in ((60.0, 1.0), (-60.0, -1.0), (50.0, 1.0)):
        arc = segment_between(start, end, bulge_of_radius(start, end, radius))
        assert isinstance(arc, Arc)
        assert arc.radius == pytest.approx(abs(radius))
        assert math.copysign(1.0, arc.at(0.5).y) == side
    with pytest.raises(EditRefused, match="at least half"):
        bulge_of_radius(start, end, 49.0)


def test_rounded_corners_leave_a_square_less_its_four_tips() -> None:
    """A corner rounded by r loses r² - πr²/4."""
    made = with_radius(begun(SQUARE[0]), 10.0)
    for point in SQUARE[1:]:
        made = with_radius(go_on(made, point), 10.0)
    outline = closed(made)
    assert outline.contour().area == pytest.approx(6000.0 - 4 * (100.0 - math.pi * 25.0))
    assert sum(isinstance(edge, Arc) for edge in edges(outline)) == 4


def test_radii_may_use_up_the_whole_edge() -> None:
    made = with_radius(begun(SQUARE[0]), 30.0)
    for point in SQUARE[1:]:
        made = with_radius(go_on(made, point), 30.0)
    outline = closed(made)
    assert outline.contour().area == pytest.approx(40.0 * 60.0 + math.pi * 900.0)
    assert len(outline.corners) == 6


def test_a_corner_is_rounded_as_soon_as_its_second_edge_is_there() -> None:
    made = with_radius(course(*SQUARE[:2]), 10.0)
    assert len(drawn(made)) == 1
    assert [type(segment).__name__ for segment in drawn(go_on(made, SQUARE[2]))] == ["Line", "Arc", "Line"]


def test_a_radius_that_does_not_fit_is_refused_where_it_is() -> None:
    made = with_radius(course(*SQUARE[:2]), 80.0)
    with pytest.raises(EditRefused, match="At point 2 the edges are too short for that radius"):
        go_on(made, SQUARE[2])
    with pytest.raises(EditRefused, match="not negative"):
        with_radius(made, -1.0)


def test_points_are_taken_back_one_by_one() -> None:
    three = course(*SQUARE[:3])
    assert taken_back(three) == course(*SQUARE[:2])
    assert taken_back(begun(SQUARE[0])) is None


def test_another_edge_is_foreseen_as_it_will_be_drawn() -> None:
    rounded = with_radius(course(*SQUARE[:2]), 10.0)
    found = foreseen(rounded, SQUARE[2])
    assert (*found.standing, *found.coming) == drawn(go_on(rounded, SQUARE[2]))
    assert [type(segment).__name__ for segment in found.coming] == ["Arc", "Line"]
    assert found.standing[-1].end == found.coming[0].start == Point(90.0, 0.0)


def test_the_closing_edge_brings_the_arcs_at_both_its_ends() -> None:
    begun_round = with_radius(begun(SQUARE[0]), 10.0)
    for point in SQUARE[1:]:
        begun_round = go_on(begun_round, point)
    found = foreseen(with_radius(begun_round, 5.0), SQUARE[0])
    assert [getattr(segment, "radius", 0.0) for segment in found.coming] == pytest.approx([5.0, 0.0, 10.0])
    assert found.standing[0].start == found.coming[-1].end == Point(10.0, 0.0)
