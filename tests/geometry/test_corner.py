"""Rounded and cut-off corners against closed forms."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Vertex
from panelcad.geometry.corner import bulge_through, cut_off, is_smooth, rounded, trimmed
from panelcad.geometry.point import Point, distance, polar
from panelcad.geometry.segment import Arc, Line, Segment, segment_between

ORIGIN = Point(0.0, 0.0)


def line(start: tuple[float, float], end: tuple[float, float]) -> Line:
    return Line(Point(*start), Point(*end))


@given(st.floats(5, 175), st.floats(0.1, 3), st.sampled_from([1, -1]))
def test_between_lines_the_arc_leaves_at_radius_over_tan_of_half_the_angle(
    degrees: float, radius: float, side: int
) -> None:
    """Elementary geometry: tangent length = r / tan(angle / 2)."""
    after = Line(ORIGIN, polar(ORIGIN, 1000.0, 180.0 - side * degrees))
    found = rounded(line((-1000.0, 0.0), (0.0, 0.0)), after, radius)
    reach = radius / math.tan(math.radians(degrees) / 2)
    assert found.leaves.x == pytest.approx(-reach, abs=1e-6)
    assert distance(ORIGIN, found.joins) == pytest.approx(reach, abs=1e-6)
    arc = Arc.from_bulge(found.leaves, found.joins, found.bulge)
    assert arc.radius == pytest.approx(radius, rel=1e-6)
    assert math.copysign(1, found.bulge) == side


def test_between_a_line_and_an_arc_both_ends_are_tangent() -> None:
    top = segment_between(Point(100.0, 50.0), Point(-100.0, 50.0), 0.2)
    side = line((100.0, 0.0), (100.0, 50.0))
    found = rounded(side, top, 8.0)
    arc = Arc.from_bulge(found.leaves, found.joins, found.bulge)
    assert arc.radius == pytest.approx(8.0, abs=1e-9)
    assert arc.centre.x == pytest.approx(92.0, abs=1e-9)
    assert isinstance(top, Arc)
    assert distance(arc.centre, top.centre) == pytest.approx(top.radius - 8.0, abs=1e-9)


def test_a_chamfer_takes_the_leg_off_both_edges() -> None:
    found = cut_off(line((-10.0, 0.0), (0.0, 0.0)), line((0.0, 0.0), (0.0, 10.0)), 3.0)
    assert found == (Point(-3.0, 0.0), Point(0.0, 3.0), 0.0)


@pytest.mark.parametrize("shape", [rounded, cut_off])
def test_edges_too_short_or_without_a_corner_are_told(shape: object) -> None:
    assert callable(shape)
    with pytest.raises(ValueError, match="too short"):
        shape(line((-10.0, 0.0), (0.0, 0.0)), line((0.0, 0.0), (0.0, 10.0)), 10.5)
    with pytest.raises(ValueError, match="without a corner"):
        shape(line((-10.0, 0.0), (0.0, 0.0)), line((0.0, 0.0), (10.0, 0.0)), 1.0)


def test_smooth_is_where_an_arc_runs_on_from_its_tangent() -> None:
    quarter = math.tan(math.pi / 8)
    assert is_smooth(line((-5.0, 0.0), (0.0, 0.0)), segment_between(ORIGIN, Point(5.0, 5.0), quarter))
    assert not is_smooth(line((-5.0, 0.0), (0.0, 0.0)), segment_between(ORIGIN, Point(5.0, 5.0), -quarter))


@given(st.floats(-2, 2).filter(lambda b: abs(b) > 0.01), st.floats(0.1, 0.9))
def test_the_arc_through_one_of_its_points_is_the_arc(bulge: float, share: float) -> None:
    arc = Arc.from_bulge(ORIGIN, Point(30.0, 40.0), bulge)
    assert bulge_through(arc.start, arc.at(share), arc.end) == pytest.approx(bulge, rel=1e-6)
    assert bulge_through(ORIGIN, Point(3.0, 4.0), Point(30.0, 40.0)) == 0.0


@given(st.floats(-3, 3).filter(lambda b: abs(b) > 0.01), st.floats(0.05, 0.95))
def test_two_pieces_of_an_arc_make_up_its_length(bulge: float, share: float) -> None:
    arc = Arc.from_bulge(ORIGIN, Point(30.0, 40.0), bulge)
    middle = arc.at(share)
    pieces: list[Segment] = [
        segment_between(start, end, trimmed(arc, start, end)) for start, end in ((arc.start, middle), (middle, arc.end))
    ]
    assert sum(piece.length for piece in pieces) == pytest.approx(arc.length, rel=1e-9)
    assert Vertex(1.0, 2.0).bulge == trimmed(line((0.0, 0.0), (1.0, 0.0)), ORIGIN, Point(0.5, 0.0))
