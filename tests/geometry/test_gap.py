"""Gaps against closed forms: circle to circle, circle to line, arc to arc, rounded rectangles at any angle."""

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.gap import contains, edge_gap, gap, point_edge_gap, rounded_distances
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import polygon

coordinates = st.floats(-40, 40)
points = st.builds(Point, coordinates, coordinates)
turns = st.floats(0, 359.9)
ORIGIN = Point(0.0, 0.0)


def rounded_rectangles() -> st.SearchStrategy[Rounded]:
    def build(centre: Point, width: float, height: float, share: float, turn: float) -> Rounded:
        made = Placement(centre.x, centre.y, turn).contour(
            rectangle(ORIGIN, width, height, share * min(width, height) / 2)
        )
        assert isinstance(made, Rounded)
        return made

    return st.builds(build, points, st.floats(2, 30), st.floats(2, 30), st.floats(0, 1), turns)


def d_shape(x: float, y: float, turn: float) -> Contour:
    """A flat side at local x = -5 and a half circle of radius 8 about (5, 0)."""
    return Placement(x, y, turn).contour(
        closed_chain((Vertex(-5, -8), Vertex(5, -8, 1.0), Vertex(5, 8), Vertex(-5, 8)))
    )


@given(points, points, st.floats(1, 60), st.floats(1, 60))
def test_two_circles(a: Point, b: Point, diameter_a: float, diameter_b: float) -> None:
    expected = distance(a, b) - (diameter_a + diameter_b) / 2
    assert gap(circle(a, diameter_a), circle(b, diameter_b)).distance == pytest.approx(expected, abs=1e-9)


@given(turns, st.floats(0.1, 60), st.floats(1, 20))
def test_circle_to_the_flat_and_to_the_bow_of_a_d(turn: float, apart: float, diameter: float) -> None:
    shape = d_shape(3, 4, turn)
    place = Placement(3, 4, turn)
    before_flat = place.point(Point(-5 - apart - diameter / 2, 0))
    beyond_bow = place.point(Point(5 + 8 + apart + diameter / 2, 0))
    assert gap(circle(before_flat, diameter), shape).distance == pytest.approx(apart, abs=1e-9)
    assert gap(shape, circle(beyond_bow, diameter)).distance == pytest.approx(apart, abs=1e-9)


@given(turns, st.floats(0.1, 60))
def test_bow_to_bow(turn: float, apart: float) -> None:
    place = Placement(0, 0, turn)
    other = place.point(Point(5 + 8 + apart + 8 + 5, 0))
    assert gap(d_shape(0, 0, turn), d_shape(other.x, other.y, turn + 180)).distance == pytest.approx(apart, abs=1e-9)


@given(rounded_rectangles(), rounded_rectangles())
def test_the_core_formula_and_the_segment_search_agree(a: Rounded, b: Rounded) -> None:
    by_core, by_segments = gap(a, b).distance, gap(a.chain, b.chain).distance
    if by_core > 1e-6:
        assert by_segments == pytest.approx(by_core, abs=1e-6)
    elif by_core < -1e-6:
        assert by_segments == pytest.approx(by_core, abs=0.011)


@given(rounded_rectangles(), rounded_rectangles())
def test_gap_is_symmetric_and_its_points_are_that_far_apart(a: Rounded, b: Rounded) -> None:
    there, back = gap(a, b), gap(b, a)
    assert there.distance == pytest.approx(back.distance, abs=1e-9)
    if there.distance > 0:
        assert distance(there.a, there.b) == pytest.approx(there.distance, abs=1e-6)


@given(rounded_rectangles(), rounded_rectangles())
def test_an_independent_engine_agrees_to_its_chord_error(a: Rounded, b: Rounded) -> None:
    """GEOS on fine polygons, the exact gap within twice the chord error."""
    exact = gap(a, b).distance
    if exact > 0:
        assert polygon(a, error=0.001).distance(polygon(b, error=0.001)) == pytest.approx(exact, abs=0.0021)


@given(rounded_rectangles(), rounded_rectangles())
def test_moving_apart_by_the_penetration_parts_them(a: Rounded, b: Rounded) -> None:
    overlap = -gap(a, b).distance
    if overlap <= 1e-6:
        return
    directions = [Placement(rotation=i * 3.0).point(Point(overlap * 1.02 + 0.02, 0)) for i in range(120)]
    moved = [Placement(d.x, d.y).contour(b) for d in directions]
    assert max(gap(a, m).distance for m in moved) > -0.02 * overlap - 0.02


def test_a_small_hole_inside_a_large_one_penetrates() -> None:
    assert gap(circle(ORIGIN, 50), circle(Point(2, 0), 6)).distance == pytest.approx(-26)
    assert gap(rectangle(ORIGIN, 40, 20), rectangle(Point(1, 0), 6, 4)).distance == pytest.approx(-12)


@pytest.mark.parametrize("turn", [0, 17, 90, 233])
def test_edge_gap_of_a_hole_near_the_edge(turn: float) -> None:
    place = Placement(100, -40, turn)
    outline = place.contour(rectangle(ORIGIN, 200, 100, 10))
    inside = place.contour(circle(Point(90, 0), 10))
    outside = place.contour(circle(Point(98, 0), 10))
    assert edge_gap(inside, outline).distance == pytest.approx(5, abs=1e-9)
    assert edge_gap(outside, outline).distance == pytest.approx(-3, abs=0.001)


def test_a_cut_wholly_off_the_sheet_is_as_bad_as_it_reaches() -> None:
    assert edge_gap(circle(Point(120, 0), 10), rectangle(ORIGIN, 200, 100)).distance == pytest.approx(-25, abs=0.001)


def test_a_mere_point_off_the_sheet_is_as_bad_as_it_is_far_out() -> None:
    assert edge_gap(circle(Point(120, 0), 0), rectangle(ORIGIN, 200, 100)).distance == pytest.approx(-20, abs=1e-9)


def test_a_cut_that_just_touches_the_edge_has_no_gap() -> None:
    assert edge_gap(circle(Point(95, 0), 10), rectangle(ORIGIN, 200, 100)).distance == pytest.approx(0, abs=1e-9)


def test_point_to_edge() -> None:
    outline = rectangle(ORIGIN, 200, 100)
    assert point_edge_gap(Point(93, 0), outline).distance == pytest.approx(7)
    assert point_edge_gap(Point(103, 0), outline).distance == pytest.approx(-3)


@given(points, st.floats(-1.5, 1.5), turns)
def test_containment_agrees_with_fine_polygons(point: Point, bulge: float, turn: float) -> None:
    chain = Placement(0, 0, turn).contour(
        Chain((Vertex(-20, -10), Vertex(20, -10, bulge), Vertex(20, 10), Vertex(-20, 10, bulge / 2)))
    )
    drawn = polygon(chain, error=0.0005)
    if not drawn.is_valid or drawn.exterior.distance(shapely.Point(point)) < 0.001:
        return
    assert contains(chain, point) == drawn.contains(shapely.Point(point))


@given(st.lists(st.tuples(rounded_rectangles(), rounded_rectangles()), min_size=1, max_size=5))
def test_many_at_once_are_the_same_where_they_are_apart(pairs: list[tuple[Rounded, Rounded]]) -> None:
    together = rounded_distances([a for a, _ in pairs], [b for _, b in pairs])
    for (a, b), found in zip(pairs, together, strict=True):
        single = gap(a, b).distance
        assert found == pytest.approx(single, abs=1e-9) or (found <= 0 and single <= 0)


def test_the_metal_between_the_opening_and_the_screws_of_a_standard_round_instrument() -> None:
    """1.750 - 1.5625 - 0.085 in = 0.1025 in: radii of the published 3-1/8 in hole template."""
    inch = 25.4
    square = 3.5 / math.sqrt(2) / 2 * inch
    found = gap(circle(ORIGIN, 3.125 * inch), circle(Point(square, square), 0.170 * inch))
    assert found.distance == pytest.approx(0.1025 * inch, abs=1e-9)


@pytest.mark.parametrize(("x", "depth"), [(0.0, 10.0), (15.0, 5.0), (-19.0, 1.0)])
def test_a_place_inside_a_contour_is_as_deep_as_it_is_far_from_the_nearest_side(x: float, depth: float) -> None:
    plate = closed_chain([Vertex(-20.0, -10.0), Vertex(20.0, -10.0), Vertex(20.0, 10.0), Vertex(-20.0, 10.0)])
    place = Rounded((Point(x, 0.0),), 0.0)
    assert gap(place, plate).distance == pytest.approx(-depth)
    assert gap(plate, place).distance == pytest.approx(-depth)
