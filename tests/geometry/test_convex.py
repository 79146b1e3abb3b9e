import math

import pytest

from panelcad.geometry.contour import rectangle
from panelcad.geometry.convex import chamfered, chamfered_fits, trapezoid, trapezoid_fits
from panelcad.geometry.gap import gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point


def test_a_chamfered_square_lacks_four_corner_triangles() -> None:
    assert chamfered(10, 6, 2).area == pytest.approx(10 * 6 - 4 * 2 * 2 / 2)


def test_a_chamfered_square_measures_across_corners_as_arinc_408a_lists_it() -> None:
    """ARINC 408A, 3 ATI: a 3.260 in square with 0.453 in chamfers measures 3.970 in across corners, to 0.010 in."""
    turned = Placement(rotation=45.0).contour(chamfered(3.260, 3.260, 0.453))
    x1, _, x2, _ = turned.bounds
    assert x2 - x1 == pytest.approx(3.970, abs=0.002)


def test_rounding_a_chamfered_square_keeps_its_sides_and_loses_little_at_eight_corners() -> None:
    """A corner of 135° loses r²·(1 / tan 67.5° - 45° / 2 in radians) by a radius r."""
    rounded, sharp = chamfered(20, 16, 5, 1), chamfered(20, 16, 5)
    loss = 8 * (1 / math.tan(math.radians(67.5)) - math.radians(22.5))
    assert rounded.bounds == pytest.approx(sharp.bounds)
    assert sharp.area - rounded.area == pytest.approx(loss)


def test_chamfers_that_leave_no_side_do_not_fit() -> None:
    assert chamfered_fits(10, 6, 2.7, 0.5)
    assert not chamfered_fits(10, 6, 3.0, 0.0)
    assert not chamfered_fits(10, 6, 0.5, 1.0)


def test_a_trapezoid_without_radius_has_the_area_of_the_closed_form() -> None:
    slope = math.tan(math.radians(10))
    assert trapezoid(22, 13, 10, 0).area == pytest.approx((22 - 13 * slope) * 13)


def test_a_rounded_trapezoid_lies_inside_the_sharp_one_and_touches_its_sides() -> None:
    rounded, sharp = trapezoid(22, 13, 10, 2), trapezoid(22, 13, 10, 0)
    assert rounded.bounds[1::2] == sharp.bounds[1::2] == (-6.5, 6.5)
    corner_loss = sum(4 * (1 / math.tan(a / 2) - (math.pi - a) / 2) for a in map(math.radians, (80, 80, 100, 100)))
    assert sharp.area - rounded.area == pytest.approx(corner_loss)


def test_a_leaning_side_measures_its_distance_at_right_angles() -> None:
    wall = rectangle(Point(30.0, 0.0), 20.0, 100.0)
    x_of_the_top_corner = 11.0
    assert gap(trapezoid(22, 13, 10, 0), wall).distance == pytest.approx(20.0 - x_of_the_top_corner)


def test_corners_too_large_for_the_trapezoid_do_not_fit() -> None:
    assert trapezoid_fits(22, 13, 10, 6.4)
    assert not trapezoid_fits(22, 13, 10, 6.5)
    assert not trapezoid_fits(5, 13, 10, 2)
