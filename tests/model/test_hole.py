import math

import pytest
from pydantic import ValidationError

from panelcad.model.hole import Countersink, HoleForm, HoleKind, Nutplate


def test_a_flatted_hole_measures_its_flat() -> None:
    """Area of the circle less the segment r²(θ - sin θ)/2, θ = 2 acos((r - h)/r)."""
    form = HoleForm(diameter=12.0, fastener=12.0, kind=HoleKind.FLATTED, key_depth=1.0, key_angle=0.0)
    contour = form.contour()
    theta = 2 * math.acos(5 / 6)
    assert contour.area == pytest.approx(math.pi * 36 - 18 * (theta - math.sin(theta)))
    assert contour.bounds[2] == pytest.approx(5.0)


def test_a_keyed_hole_reaches_its_key() -> None:
    form = HoleForm(diameter=22.3, fastener=22.3, kind=HoleKind.KEYED, key_depth=1.8, key_width=3.2, key_angle=90.0)
    assert form.contour().bounds[3] == pytest.approx(22.3 / 2 + 1.8)
    assert form.contour().area > math.pi * 22.3**2 / 4


@pytest.mark.parametrize(
    "fields",
    [
        {"kind": HoleKind.COUNTERSUNK},
        {"kind": HoleKind.PLAIN, "countersink": Countersink(diameter=7)},
        {"kind": HoleKind.NUTPLATE},
        {"kind": HoleKind.TAPPED},
        {"kind": HoleKind.FLATTED},
        {"kind": HoleKind.KEYED, "key_depth": 1.0},
        {"nutplate": Nutplate(rivet_diameter=2.4, rivet_spacing=17, flange_length=25, flange_width=9)},
    ],
)
def test_a_hole_without_its_hardware_is_refused(fields: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        HoleForm.model_validate({"diameter": 4.3, "fastener": 3.5} | fields)
