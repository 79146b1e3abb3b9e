"""Old cutouts. Closed form: the share of a circle beyond a straight edge, (θ - sin θ) / 2π."""

from math import acos, pi, sin

import pytest

from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle
from tests.builders import cut, item, opening, round_cutout
from tests.checks.cases import COPIES, Case, Ignored, found, moved
from tests.checks.made import bezel, fitted, four_screws, instrument, own_cut, panel, shaft

OLD = CutState.EXISTING
BLANK = round_cutout(name="blank", openings=(), bezel=bezel(90, 90))


def covered(*items, shape=None, around=None, **cut_fields):
    hole = own_cut("old", 0, 0, shape or Circle(diameter=60), **{"state": OLD} | cut_fields)
    return panel(cuts=(hole,), items=items, cutouts=(BLANK, instrument()), around=around)


def blank(name, x, y=0.0):
    return item(name, x, y, "blank")


def test_an_old_hole_that_nothing_uses_or_covers():
    for copy in COPIES:
        (finding,) = found(moved(covered(), copy), "open-cutout")
        assert (finding.measured, finding.severity) == (1.0, Severity.WARNING)
        assert finding.problem == "Old cutout is neither used nor covered"
        assert finding.cure.advice == "fit a blank over it"


@pytest.mark.parametrize(("x", "edge"), [(0.0, 45.0), (15.0, 30.0)])
def test_a_blank_that_covers_it_even_to_a_tie(x, edge):
    assert found(covered(blank("b", -x)), "open-cutout") == []
    assert edge >= 30


def test_a_blank_that_covers_it_partly():
    """The blank's edge runs 10 mm beside the centre of a circle of radius 30."""
    theta = 2 * acos(10 / 30)
    for copy in COPIES:
        (finding,) = found(moved(covered(blank("b", -35)), copy), "open-cutout")
        assert finding.measured == pytest.approx((theta - sin(theta)) / (2 * pi), abs=0.0005)
        assert finding.problem == "Old cutout is only partly covered"


def test_two_blanks_cover_it_together():
    assert found(covered(blank("b", -44), blank("c", 44)), "open-cutout") == []


def test_screw_holes_beside_a_blank_show():
    made = round_cutout(name="ring", holes=(four_screws(),), openings=(opening(Circle(diameter=60)),))
    small = round_cutout(name="blank", openings=(), bezel=bezel(64, 64))
    old = panel(cuts=(cut("old", 0, 0, "ring", state=OLD),), items=(blank("b", 0),), cutouts=(made, small))
    (finding,) = found(old, "open-cutout")
    holes = 4 * 4.318**2 / (4 * 4.318**2 + 60**2)
    assert finding.measured == pytest.approx(holes / 2, rel=0.9)


def test_what_is_used_is_ignored():
    used = fitted("g", 0, 0)[1].revised(cut="old")
    assert found(covered(used), "open-cutout") == []
    assert found(covered(around=shaft(Circle(diameter=30), 0, 0)), "open-cutout") == []
    assert found(covered(state=CutState.NEW), "open-cutout") == []


def test_an_opening_that_says_what_it_is_for_is_used():
    hole = own_cut("old", 0, 0, Circle(diameter=60), state=OLD)
    named = hole.revised(openings=(hole.openings[0].revised(purpose="map box"),))
    assert found(panel(cuts=(named,)), "open-cutout") == []


def test_on_a_kept_plate_it_is_advice():
    hole = own_cut("old", 0, 0, Circle(diameter=60), state=OLD)
    (finding,) = found(panel(cuts=(hole,), state="kept"), "open-cutout")
    assert finding.severity is Severity.ADVICE


def blanked(shift):
    """A blank whose edge is 45 mm from its middle over a hole of radius 30."""
    return covered(blank("b", -15.0 - shift))


def segment_share(shift):
    """The share of a circle beyond a chord `shift` inside its rim."""
    theta = 2 * acos((30 - shift) / 30)
    return (theta - sin(theta)) / (2 * pi)


CASES = [
    Case("open-cutout", blanked, 0.0, 10.0, segment_share, severity=Severity.WARNING, accuracy=0.0005),
]
IGNORED = [
    Ignored("open-cutout", "a hole that an item uses", lambda: covered(fitted("g", 0, 0)[1].revised(cut="old"))),
]
