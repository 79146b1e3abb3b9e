import pytest

from panelcad.model.bending import allowance, deduction, setback
from panelcad.model.plate import Bend
from panelcad.model.profile import Profile

INCH = 25.4


def bend(angle: float, radius_in: float) -> Bend:
    ends = {"x1": 0.0, "y1": 0.0, "x2": 100.0, "y2": 0.0}
    return Bend(**ends, angle=angle, inside_radius=radius_in * INCH, direction="away from the pilot")


@pytest.mark.parametrize(("angle", "inches"), [(45.0, 0.130), (135.0, 0.758)])
def test_the_setback_is_that_of_the_circulars_example(angle, inches):
    """AC 43.13-1B paragraph 4-56b: radius 0.25 in, sheet 0.064 in."""
    assert setback(bend(angle, 0.25), 0.064 * INCH) / INCH == pytest.approx(inches, abs=0.0005)


def test_the_allowance_is_that_of_the_handbooks_formula():
    """FAA-H-8083-31: (0.01743 R + 0.0078 T) for each degree."""
    taken = allowance(bend(90.0, 0.16), 0.040 * INCH, Profile().bend_neutral) / INCH

    assert taken == pytest.approx((0.01743 * 0.16 + 0.0078 * 0.040) * 90.0, rel=2e-3)


def test_a_channel_has_the_handbooks_flats():
    """FAA-H-8083-31, U-channel of 0.040 in sheet, radius 0.16 in, sides 1, 2 and 1 in: flats 0.8, 1.6 and 0.8 in."""
    corner, sheet = bend(90.0, 0.16), 0.040 * INCH
    back = setback(corner, sheet) / INCH

    assert (1.0 - back, 2.0 - 2 * back) == pytest.approx((0.8, 1.6))
    developed = 4.0 - 2 * deduction(corner, sheet, Profile().bend_neutral) / INCH
    assert developed == pytest.approx(0.8 + 0.279 + 1.6 + 0.279 + 0.8, abs=0.001)
