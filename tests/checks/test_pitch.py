"""The least pitch of a row, held against sums by hand."""

import math

import pytest

from panelcad.checks.pitch import least_pitch
from panelcad.units import LengthUnit
from tests.builders import project, round_cutout, sheet
from tests.checks.made import bezel, holes


def _in_steps(mm: float, step: float) -> float:
    return math.ceil(mm / step - 1e-9) * step


@pytest.mark.parametrize("diameter", [12.0, 20.3, 57.15])
@pytest.mark.parametrize(("unit", "step"), [(LengthUnit.MM, 0.5), (LengthUnit.INCH, 25.4 / 16)])
def test_two_plain_holes_stand_a_web_apart(diameter: float, unit: LengthUnit, step: float) -> None:
    hole = round_cutout(diameter=diameter)
    plain = project().revised(unit=unit)
    web = max(plain.profile.web_advised, plain.profile.web_least_thicknesses * 2.0)
    assert least_pitch(plain, sheet(), hole) == pytest.approx(_in_steps(diameter + web, step))


def test_bezels_wider_than_the_holes_decide() -> None:
    plain = project()
    wide = round_cutout(diameter=20.0, bezel=bezel(100.0, 40.0))
    assert least_pitch(plain, sheet(), wide) == pytest.approx(_in_steps(100.0 + plain.profile.bezel_gap, 0.5))


def test_the_shop_s_own_limit_counts() -> None:
    plain = project()
    strict = plain.revised(profile=plain.profile.revised(web_advised=30.0))
    assert least_pitch(strict, sheet(), round_cutout(diameter=20.0)) == pytest.approx(50.0)


def test_what_reaches_too_far_is_told_no_pitch() -> None:
    far = round_cutout(diameter=20.0, holes=(holes((-200.0, 0.0), (200.0, 0.0)),))
    assert least_pitch(project(), sheet(), far) is None
