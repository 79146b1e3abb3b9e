"""Rotations against closed forms of a tilted and a canted plane."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.geometry.space import PlateFrame, Spot, angle_between, azimuth, elevation

numbers = st.floats(-1000, 1000)
spots = st.builds(Spot, numbers, numbers, numbers)
frames = st.builds(PlateFrame, spots, st.floats(-90, 90), st.floats(-90, 90))


def test_a_tilted_plate_leans_its_top_forward() -> None:
    spot = PlateFrame(Spot(0, 0, 0), tilt=30).to_aircraft(Spot(5, 100, 0))
    assert spot == pytest.approx((5, 100 * math.cos(math.radians(30)), 50))


def test_a_canted_plate_turns_its_right_side_forward() -> None:
    spot = PlateFrame(Spot(10, 0, 0), cant=30).to_aircraft(Spot(100, 7, 0))
    assert spot == pytest.approx((10 + 100 * math.cos(math.radians(30)), 7, 50))


@given(frames, spots)
def test_there_and_back(frame: PlateFrame, spot: Spot) -> None:
    assert frame.to_plate(frame.to_aircraft(spot)) == pytest.approx(spot, abs=1e-6)


@given(frames)
def test_axes_are_square_and_right_handed_as_the_pilot_sees_them(frame: PlateFrame) -> None:
    x, y, z = frame.axes
    for a, b in ((x, y), (y, z), (z, x)):
        assert a.x * b.x + a.y * b.y + a.z * b.z == pytest.approx(0, abs=1e-9)
    flat = PlateFrame(Spot(0, 0, 0)).axes
    assert flat == (Spot(1, 0, 0), Spot(0, 1, 0), Spot(0, 0, 1))


def test_angles() -> None:
    assert azimuth(Spot(1, 0, 1)) == pytest.approx(45)
    assert elevation(Spot(0, -1, 1)) == pytest.approx(-45)
    assert angle_between(Spot(1, 0, 0), Spot(0, 2, 0)) == pytest.approx(90)
