import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance

coordinates = st.floats(-500, 500)
points = st.builds(Point, coordinates, coordinates)
placements = st.builds(Placement, coordinates, coordinates, st.floats(0, 359.999), st.booleans())
D_SHAPE = closed_chain((Vertex(-5, -8), Vertex(5, -8, math.tan(math.pi / 4)), Vertex(5, 8), Vertex(-5, 8)))


@pytest.mark.parametrize(
    ("turn", "expected"),
    [(0, (3, 1)), (90, (-1, 3)), (180, (-3, -1)), (270, (1, -3)), (-90, (1, -3)), (450, (-1, 3)), (-1e-20, (3, 1))],
)
def test_quarter_turns_are_exact(turn: float, expected: tuple[float, float]) -> None:
    assert Placement(0, 0, turn).point(Point(3, 1)) == expected


@given(placements, points, points)
def test_lengths_stay(placement: Placement, a: Point, b: Point) -> None:
    assert distance(placement.point(a), placement.point(b)) == pytest.approx(distance(a, b), abs=1e-9)


@given(placements, placements, points)
def test_one_after_another_is_both(outer: Placement, inner: Placement, point: Point) -> None:
    assert outer.after(inner).point(point) == pytest.approx(outer.point(inner.point(point)), abs=1e-6)


@given(placements)
def test_area_and_direction_stay(placement: Placement) -> None:
    for contour in (D_SHAPE, rectangle(Point(3, 4), 20, 10, 2), circle(Point(-2, 0), 7)):
        placed = placement.contour(contour)
        assert placed.area == pytest.approx(contour.area)
        assert placed.length == pytest.approx(contour.length)


def test_a_mirrored_d_has_its_bow_on_the_other_side() -> None:
    x1, _, x2, _ = D_SHAPE.bounds
    mirrored = Placement(mirrored=True).contour(D_SHAPE)
    assert mirrored.bounds[0] == pytest.approx(-x2)
    assert mirrored.bounds[2] == pytest.approx(-x1)


def test_mirroring_keeps_a_rounded_core_counter_clockwise() -> None:
    mirrored = Placement(mirrored=True, rotation=30).contour(rectangle(Point(0, 0), 20, 10, 2))
    assert mirrored.chain.area > 0  # type: ignore[union-attr]
