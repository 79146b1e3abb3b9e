import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.geometry.contour import Chain, Rounded, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.gap import point_edge_gap
from panelcad.geometry.offset import offset
from panelcad.geometry.point import Point
from panelcad.model.hole import HoleForm, HoleKind

HERE = Point(0.0, 0.0)


def test_a_circle_and_a_rounded_rectangle_grow_by_their_radius():
    assert offset(circle(HERE, 10.0), 0.5) == circle(HERE, 11.0)
    assert offset(rectangle(HERE, 40.0, 20.0, 3.0), -0.5) == rectangle(HERE, 39.0, 19.0, 2.5)


def test_a_sharp_corner_stays_sharp():
    grown = offset(rectangle(HERE, 40.0, 20.0), 0.5)

    assert grown.bounds == (-20.5, -10.5, 20.5, 10.5)
    assert grown.area == pytest.approx(41.0 * 21.0)


def test_a_corner_smaller_than_the_way_inward_becomes_sharp():
    assert offset(rectangle(HERE, 40.0, 20.0, 0.3), -0.5).area == pytest.approx(39.0 * 19.0)


def test_a_small_circle_cannot_move_in_by_more_than_its_radius():
    with pytest.raises(ValueError, match="nothing is left"):
        offset(circle(HERE, 1.0), -0.5)


def test_a_notch_narrower_than_the_way_is_refused():
    notched = closed_chain(
        tuple(Vertex(*p) for p in [(0, 0), (10, 0), (10, 10), (5.2, 10), (5.2, 5), (5, 5), (5, 10), (0, 10)])
    )

    with pytest.raises(ValueError, match="shorter than it would be moved"):
        offset(notched, 0.2)


@pytest.mark.parametrize("outward", [0.2, -0.2])
def test_every_point_of_a_keyed_hole_is_as_far_from_the_old_contour(outward):
    form = HoleForm(diameter=12.0, fastener=6.0, kind=HoleKind.KEYED, key_depth=1.0, key_width=2.5)
    old = form.contour()
    moved = offset(old, outward)

    for segment in moved.segments:
        assert abs(point_edge_gap(segment.at(0.5), old).distance) == pytest.approx(0.2, abs=1e-9)


@st.composite
def lens(draw) -> Chain:
    """A quadrangle with bowed sides, mild enough never to cross itself."""
    reach = st.floats(20.0, 60.0)
    corners = [(draw(reach), 0.0), (0.0, draw(reach)), (-draw(reach), 0.0), (0.0, -draw(reach))]
    return closed_chain(tuple(Vertex(*corner, draw(st.sampled_from([0.0, 0.1, -0.05, 0.3]))) for corner in corners))


@settings(max_examples=60, deadline=None)
@given(lens(), st.floats(0.01, 0.5))
def test_there_and_back_again(contour, outward):
    back = offset(offset(contour, outward), -outward)

    assert isinstance(back, Chain)
    for was, now in zip(contour.vertices, back.vertices, strict=True):
        assert now == pytest.approx(was, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(lens(), st.floats(-0.5, 0.5).filter(lambda outward: abs(outward) > 0.01))
def test_the_middle_of_every_piece_is_as_far_from_the_old_contour(contour, outward):
    for segment in offset(contour, outward).segments:
        assert -point_edge_gap(segment.at(0.5), contour).distance == pytest.approx(outward, abs=1e-9)


def test_a_slot_is_moved_about_its_core():
    slot = rectangle(HERE, 30.0, 6.0, 3.0)
    grown = offset(slot, 1.0)

    assert isinstance(grown, Rounded)
    assert grown.area == pytest.approx(24.0 * 8.0 + math.pi * 16.0)
