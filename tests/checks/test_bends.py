"""Bends. AC 43.13-1B table 4-6: in 0.064 in sheet 0.192 to 0.320 in for 2024-T3, 0.064 to 0.128 in for 6061-T6."""

import pytest

from panelcad.checks.bends import least_radii
from panelcad.model.finding import Severity
from panelcad.model.plate import Bend, CutState
from panelcad.model.shape import Circle
from tests.checks.cases import Case, Ignored, found, unknown
from tests.checks.made import fitted, own_cut, panel

INCH = 25.4


def bend(radius, angle=90.0):
    return Bend(x1=-400, y1=0, x2=400, y2=0, angle=angle, inside_radius=radius, direction="away from the pilot")


def sheet_bent(radius):
    return panel(bends=(bend(radius),), state="new", thickness=0.064 * INCH)


def hole_near(distance):
    """2 mm sheet bent over 10 mm: 2 t and the radius are 14 mm."""
    return panel(bends=(bend(10.0),), cuts=(own_cut("a", 0, 20 + distance, Circle(diameter=40)),))


CASES = [
    Case("bend-radius", sheet_bent, 0.320 * INCH, 0.319 * INCH, required=0.320 * INCH, severity=Severity.WARNING),
    Case("bend-radius", sheet_bent, 0.320 * INCH, 0.191 * INCH, required=0.192 * INCH),
    Case("hole-to-bend", hole_near, 14.0, 13.99, required=14.0),
    Case("hole-to-bend", hole_near, 14.0, -3.0),
]
IGNORED = [
    Ignored("bend-radius", "a bend that is there already", lambda: panel(bends=(bend(0.5),), thickness=0.064 * INCH)),
    Ignored(
        "hole-to-bend",
        "what lies over the bend and is not cut",
        lambda: panel(bends=(bend(10.0),), items=(fitted("a", 0, 3)[1].revised(cut=None),)),
    ),
]


@pytest.mark.parametrize(
    ("alloy", "thickness", "least", "most"),
    [
        ("2024-T3", 0.064, 0.192, 0.320),
        ("6061-T6", 0.064, 0.064, 0.128),
        ("2024-T3 clad", 0.128, 0.512, 0.768),
        ("5052-H32", 0.064, 0.032, 0.064),
    ],
)
def test_the_tables_figures(alloy, thickness, least, most):
    assert least_radii(alloy, thickness * INCH) == pytest.approx((least * INCH, most * INCH))


def test_between_two_thicknesses_the_thicker_row_counts():
    assert least_radii("6061-T6", 2.0) == pytest.approx((3.0, 6.0))


def test_what_the_table_does_not_say_is_unknown():
    assert least_radii("7075-T6", 1.6) is None
    made = panel(bends=(bend(3.0),), state="new", alloy="7075-T6")
    assert unknown(made, "bend-radius") == [(("main",), "the least bend radius of 7075-T6 in this thickness")]


def test_old_bends_and_old_holes():
    old = panel(bends=(bend(0.5),), cuts=(own_cut("a", 0, 21, Circle(diameter=40), state=CutState.EXISTING),))
    assert found(old, "bend-radius") == []
    assert [f.severity for f in found(old, "hole-to-bend")] == [Severity.ADVICE]
