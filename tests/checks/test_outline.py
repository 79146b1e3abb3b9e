"""Rules about the sheet's edge. Closed form at a straight side: distance of the centre less the radius."""

import pytest

from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle, Corner, Outline
from tests.builders import cut, item, project, round_cutout, sheet
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import fitted, own_cut, panel


def near_the_side(left, **states):
    return panel(cuts=(own_cut("a", 450 - 25 - left, 0, Circle(diameter=50), **states),))


def bezel_near_the_side(left):
    """A square bezel of 82.55 mm."""
    return panel(fitted("g", 450 - 82.55 / 2 - left, 0))


def near_an_arc(left):
    """A half disc of radius 300 on a flat bottom: 300 - 25 - distance from its centre is left."""
    outline = Outline(corners=(Corner(x=-300, y=0), Corner(x=300, y=0, bulge=1.0)))
    hole = own_cut("a", 0, 300 - 25 - left, Circle(diameter=50))
    return project(sheet(outline=outline, cuts=(hole,)), cutouts=(round_cutout(),))


CASES = [
    Case("outline", near_the_side, 6.35, 6.34, required=6.35, severity=Severity.WARNING),
    Case("outline", near_the_side, 6.35, 0.0, required=4.0),
    Case("outline", near_an_arc, 6.3500001, 6.34, severity=Severity.WARNING),
    Case("outside", near_the_side, 0.0, -0.01, required=0.0, accuracy=0.001),
    Case("outside", near_the_side, 0.0, -60.0, accuracy=0.001),
    Case("bezel-over-edge", bezel_near_the_side, 0.0, -0.01),
]
IGNORED = [
    Ignored("outline", "a bezel near the edge", lambda: panel(items=(item("g", 405, 0, "gauge"),))),
    Ignored("outside", "a bezel that hangs over", lambda: panel(items=(item("g", 440, 0, "gauge"),))),
    Ignored("bezel-over-edge", "a bezel behind the sheet", lambda: panel(fitted("g", 430, 0, mounting="rear"))),
]


def test_a_cut_outside_can_never_be_accepted():
    (finding,) = found(near_the_side(-5.0), "outside")
    assert not finding.acceptable


def test_an_old_cut_near_the_edge_is_advice():
    (finding,) = found(near_the_side(3.0, state=CutState.EXISTING), "outline")
    assert finding.severity is Severity.ADVICE


def test_a_rear_mounted_bezel_does_not_show():
    assert found(panel(fitted("g", 430, 0, mounting="rear")), "bezel-over-edge") == []


def test_the_cure_leads_back_onto_the_sheet():
    """Back over the edge by 5 mm, and as far again as leaves 6.35 mm of metal; told in tenths."""
    (finding,) = found(near_the_side(-5.0), "outside")
    assert (finding.cure.dx, finding.cure.dy) == (pytest.approx(-11.4), 0)


def test_an_enlarged_cut_is_new_work():
    assert [f.severity for f in found(near_the_side(3.0, state=CutState.ENLARGED), "outline")] == [Severity.ERROR]


def test_a_cut_in_the_middle_is_ignored():
    assert found(project(sheet(cuts=(cut("a", 0, 0),))), "outline") == []
