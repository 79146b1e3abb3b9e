"""Convex boxes in space: separating axes against closed forms."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.box_clearance import Box, clearance
from panelcad.geometry.space import PlateFrame, Spot


def cube(x, y, z, side=10.0, **turns):
    half = side / 2
    return Box(PlateFrame(Spot(x, y, z), **turns), Spot(-half, -half, -half), Spot(half, half, half))


@given(gap=st.floats(-6, 50))
def test_side_by_side(gap):
    assert clearance(cube(0, 0, 0), cube(10 + gap, 3, -2)) == pytest.approx(gap)


def test_a_cube_canted_45_degrees_reaches_half_its_diagonal():
    reach = 5 + 5 * 2**0.5
    assert clearance(cube(0, 0, 0), cube(reach + 2, 0, 0, cant=45.0)) == pytest.approx(2)


def test_edge_against_edge_is_found_by_the_crossed_edges():
    """One cube leans about x, the other about the vertical; their edges cross at right angles along z."""
    reach = 2 * 5 * 2**0.5
    assert clearance(cube(0, 0, 0, tilt=45.0), cube(0, 0, reach + 1, cant=45.0)) == pytest.approx(1)


def test_never_more_than_the_truth_at_a_corner():
    """Corner to corner along a diagonal the truth is 4 x sqrt 3, an upright axis says 4."""
    assert clearance(cube(0, 0, 0), cube(14, 14, 14)) == pytest.approx(4)
