"""Rounded corners are found again in lines and arcs, and stay rounded whatever is moved."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.outline import bow_by, edges, outline_of
from panelcad.editing.sharp_outline import SharpOutline, redrawn, sharpened
from panelcad.errors import EditRefused
from panelcad.geometry.corner import is_smooth
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc
from panelcad.model.shape import Circle, Corner, Outline, Rectangle, Slot

SHEET = outline_of(Rectangle(width=400.0, height=200.0))
"""Corners 0 to 3 from the lower left, counter-clockwise."""
ROUNDED = outline_of(Rectangle(width=400.0, height=200.0, corner_radius=20.0))


def area(outline: Outline) -> float:
    return outline.contour().area


def is_smooth_all_round(outline: Outline) -> bool:
    around = edges(outline)
    return all(is_smooth(around[i - 1], edge) for i, edge in enumerate(around))


def moved(corner: int, x: float, y: float):
    return lambda whole: whole.moved(corner, Point(x, y))


def nearest_corner(whole: SharpOutline, x: float, y: float) -> int:
    return min(range(len(whole.radii)), key=lambda i: distance(whole.at(i), Point(x, y)))


def test_rounded_corners_take_away_four_minus_pi_over_four_of_the_square() -> None:
    """Area of a fillet at a right angle: (1 - pi / 4) r^2."""
    one = redrawn(SHEET, lambda whole: whole.rounded_by(0, 20.0))
    assert area(SHEET) - area(one) == pytest.approx((1 - math.pi / 4) * 400.0, abs=1e-6)
    assert area(redrawn(SHEET, lambda whole: whole.all_rounded_by(20.0))) == pytest.approx(area(ROUNDED), abs=1e-6)


def test_rounded_corners_are_found_again() -> None:
    whole = sharpened(ROUNDED)
    assert whole.radii == pytest.approx((20.0,) * 4, abs=1e-6)
    assert {(c.x, c.y) for c in whole.sharp.corners} == {(x, y) for x in (-200.0, 200.0) for y in (-100.0, 100.0)}


def test_arcs_that_round_no_corner_stay_edges() -> None:
    arched = redrawn(bow_by(SHEET, 2, 60.0), lambda whole: whole.all_rounded_by(15.0))
    assert sharpened(arched).radii == pytest.approx((15.0,) * 4, abs=1e-6)
    assert isinstance(sharpened(arched).edges[2], Arc)
    for shape in (Circle(diameter=50.0), Slot(length=80.0, width=30.0)):
        assert sharpened(outline_of(shape)) == SharpOutline.of(outline_of(shape))


def test_a_radius_is_changed_and_taken_away() -> None:
    corner = nearest_corner(sharpened(ROUNDED), 200.0, 100.0)
    wider = redrawn(ROUNDED, lambda whole: whole.rounded_by(corner, 45.0))
    assert sorted(sharpened(wider).radii) == pytest.approx([20.0, 20.0, 20.0, 45.0], abs=1e-6)
    sharp = redrawn(ROUNDED, lambda whole: whole.all_rounded_by(0.0))
    assert area(sharp) == 80_000.0


def test_what_does_not_move_stays_to_the_nanometre() -> None:
    corner = nearest_corner(sharpened(ROUNDED), 200.0, 100.0)
    changed = redrawn(ROUNDED, lambda whole: whole.rounded_by(corner, 45.0))
    assert len(set(changed.corners) & set(ROUNDED.corners)) == 6
    assert set(redrawn(ROUNDED, lambda whole: whole).corners) == set(ROUNDED.corners)


@given(st.floats(-60, 60), st.floats(-40, 40), st.floats(1, 30), st.integers(0, 3), st.floats(0, 30))
def test_a_moved_corner_and_its_neighbours_stay_smoothly_rounded(
    dx: float, dy: float, radius: float, corner: int, rise: float
) -> None:
    start = redrawn(bow_by(SHEET, 2, rise), lambda whole: whole.all_rounded_by(radius))
    at = sharpened(start).at(corner)
    there = redrawn(start, moved(corner, at.x + dx, at.y + dy))
    assert is_smooth_all_round(there)
    assert sharpened(there).radii == pytest.approx((radius,) * 4, abs=1e-4)


def test_corners_are_added_cut_off_and_taken_away() -> None:
    more = redrawn(ROUNDED, lambda whole: whole.with_corner(0, Point(0.0, -500.0)))
    assert len(more.corners) == 9
    assert sharpened(more).radii.count(0.0) == 1
    cut = redrawn(ROUNDED, lambda whole: whole.cut_off(0, 30.0))
    assert len(sharpened(cut).radii) == 5
    fewer = redrawn(ROUNDED, lambda whole: whole.without(0))
    assert sharpened(fewer).radii == pytest.approx((20.0,) * 3, abs=1e-6)


@pytest.mark.parametrize("radius", [4.0, 20.0, 60.0])
def test_the_radius_through_the_middle_of_an_arc_is_its_own(radius: float) -> None:
    skew = Outline(corners=(Corner(x=0, y=0), Corner(x=400, y=-30), Corner(x=360, y=220), Corner(x=-40, y=190)))
    whole = SharpOutline.of(skew).all_rounded_by(radius)
    for corner in range(4):
        arc = whole.rounding(corner)
        assert arc is not None
        assert whole.radius_through(corner, arc.at(0.5)) == pytest.approx(radius, abs=1e-4)
    assert whole.radius_through(0, Point(-5.0, -5.0)) == 0.0


def test_radii_that_cannot_be_are_refused() -> None:
    with pytest.raises(EditRefused, match="At corner 2 the edges are too short for that radius"):
        redrawn(SHEET, lambda whole: whole.rounded_by(1, 201.0))
    with pytest.raises(EditRefused, match="the edges are too short for that radius"):
        redrawn(SHEET, lambda whole: whole.all_rounded_by(101.0))
    with pytest.raises(EditRefused, match="not negative"):
        redrawn(SHEET, lambda whole: whole.rounded_by(1, -1.0))
