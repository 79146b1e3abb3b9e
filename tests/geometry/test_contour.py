"""Areas and lengths against closed forms."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Chain, Rounded, Vertex, circle, closed_chain, rectangle, reversed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.segment import FLAT

sizes = st.floats(0.5, 400)
here = Point(12.5, -3.0)


@given(sizes)
def test_circle(diameter: float) -> None:
    contour = circle(here, diameter)
    assert contour.area == pytest.approx(math.pi * diameter**2 / 4)
    assert contour.length == pytest.approx(math.pi * diameter)
    assert contour.chain.area == pytest.approx(contour.area)
    assert contour.chain.length == pytest.approx(contour.length)


@given(sizes, sizes, st.floats(0, 1))
def test_rounded_rectangle(width: float, height: float, share: float) -> None:
    radius = share * min(width, height) / 2
    contour = rectangle(here, width, height, radius)
    area = width * height - (4 - math.pi) * radius**2
    length = 2 * (width + height) - (8 - 2 * math.pi) * radius
    # a corner or a side shorter than FLAT is left out
    assert contour.area == pytest.approx(area, rel=1e-9, abs=4 * FLAT * max(width, height))
    assert contour.length == pytest.approx(length, rel=1e-9, abs=8 * FLAT)
    assert contour.chain.area == pytest.approx(contour.area, rel=1e-9)
    assert contour.bounds == pytest.approx(
        (here.x - width / 2, here.y - height / 2, here.x + width / 2, here.y + height / 2)
    )
    assert contour.chain.bounds == pytest.approx(contour.bounds)


def test_a_rectangle_rounded_all_the_way_is_a_slot_and_a_square_one_a_circle() -> None:
    slot = rectangle(here, 30, 10, 5)
    assert len(slot.core) == 2
    assert slot.area == pytest.approx(20 * 10 + math.pi * 25)
    assert rectangle(here, 10, 10, 5) == circle(here, 10)


def test_a_rounded_rectangle_becomes_eight_vertices_with_four_quarter_turns() -> None:
    vertices = rectangle(here, 40, 20, 3).chain.vertices
    bulges = [vertex.bulge for vertex in vertices]
    assert len(vertices) == 8
    assert sorted(bulges) == pytest.approx([0] * 4 + [0.41421356] * 4)


def test_a_grown_octagon_keeps_tangent_arcs() -> None:
    corners = tuple(Point(10 * math.cos(math.pi * i / 4), 10 * math.sin(math.pi * i / 4)) for i in range(8))
    grown = Rounded(corners, 2.0)
    assert grown.chain.area == pytest.approx(grown.area)
    assert grown.chain.length == pytest.approx(grown.length)


def test_a_clockwise_chain_is_turned() -> None:
    clockwise = (Vertex(0, 0), Vertex(0, 10, 0.3), Vertex(10, 10), Vertex(10, 0))
    turned = closed_chain(clockwise)
    assert turned.area > 0
    assert turned.area == pytest.approx(-Chain(clockwise).area)


@given(
    st.lists(st.tuples(st.floats(-50, 50), st.floats(-50, 50), st.floats(-1, 1)), min_size=3, max_size=8, unique=True)
)
def test_running_a_chain_backwards_negates_its_area_and_keeps_its_length(corners: list[tuple[float, ...]]) -> None:
    chain = Chain(tuple(Vertex(*corner) for corner in corners))
    if any(s.length < 1e-3 for s in Chain(tuple(Vertex(v.x, v.y) for v in chain.vertices)).segments):
        return
    backwards = reversed_chain(chain)
    assert backwards.area == pytest.approx(-chain.area, abs=1e-6)
    assert backwards.length == pytest.approx(chain.length)
