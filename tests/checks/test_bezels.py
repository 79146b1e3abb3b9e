"""Bezels in front. Closed form between squares side by side: pitch less the width."""

import pytest

from panelcad.model.shape import Circle
from tests.builders import cut, item, round_cutout
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import attach, bezel, fitted, four_screws, instrument, panel, screw_form


def side_by_side(gap):
    return panel(fitted("a", 0, 0), fitted("b", 82.55 + gap, 0))


def attach_screw_beside(gap):
    """A screw head 8 mm wide beside a bezel; an eighth of a turn of neither matters."""
    return panel(fitted("a", 0, 0), attach_screws=(attach("s1", 82.55 / 2 + 4 + gap, 3, screw_form(head=8.0)),))


def own_screws_of_a_neighbour(gap):
    """A bare pattern of four screws beside a bezel: 31.431 mm from centre to screw along x, heads 7 mm."""
    screws = round_cutout(name="ring", openings=(), holes=(four_screws(screw_form(head=7.0)),))
    away = 82.55 / 2 + 31.4309 + 3.5 + gap
    return panel(fitted("a", 0, 0), cuts=(cut("r", away, 0, "ring"),), cutouts=(instrument(), screws))


CASES = [
    Case("bezels", side_by_side, 0.0, -0.01, required=0.0),
    Case("bezels", side_by_side, 0.0, -20.0),
    Case("screw-under-bezel", attach_screw_beside, 0.0, -0.01, required=0.0),
    Case("screw-under-bezel", own_screws_of_a_neighbour, 0.001, -0.5, accuracy=1e-3),
]
IGNORED = [
    Ignored(
        "bezels",
        "a bezel behind the sheet",
        lambda: panel(fitted("a", 0, 0), fitted("b", 80, 0, mounting="rear")),
    ),
    Ignored(
        "screw-under-bezel",
        "screws of the bezel's own instrument",
        lambda: panel(fitted("a", 0, 0), cutouts=(instrument(holes=(four_screws(),)),)),
    ),
]


def test_two_bezels_at_45_degrees_touch_corner_to_side():
    """A square turned by 45° reaches 82.55 / sqrt 2 to the side."""
    reach = 82.55 / 2 + 82.55 / 2**0.5
    near = panel(fitted("a", 0, 0), fitted("b", reach - 0.02, 0, rotation=45.0))
    (finding,) = found(near, "bezels")
    assert finding.measured == pytest.approx(-0.02, abs=1e-6)
    assert found(panel(fitted("a", 0, 0), fitted("b", reach + 1e-6, 0, rotation=45.0)), "bezels") == []


def test_own_screws_lie_under_the_own_bezel():
    made = panel(fitted("a", 0, 0), cutouts=(instrument(holes=(four_screws(),)),))
    assert found(made, "screw-under-bezel") == []


def test_a_blank_over_an_old_hole_covers_its_screw_holes():
    old = cut("old", 0, 0, "ring", state="existing")
    ring = round_cutout(name="ring", holes=(four_screws(),))
    blank = round_cutout(name="blank", openings=(), bezel=bezel(100, 100))
    made = panel(cuts=(old,), items=(item("b", 0, 0, "blank"),), cutouts=(ring, blank))
    assert found(made, "screw-under-bezel") == []


def test_a_rear_mounted_bezel_meets_no_other():
    assert found(panel(fitted("a", 0, 0), fitted("b", 80, 0, mounting="rear")), "bezels") == []


def test_the_cure_moves_one_bezel_off_the_other():
    (finding,) = found(side_by_side(-1.5), "bezels")
    assert (finding.cure.item, finding.cure.dx, finding.cure.dy) == ("b", pytest.approx(1.5), 0)


def test_round_bezels_by_their_diameters():
    small = instrument(bezel=None, bodies=(), openings=instrument().openings).revised(
        bezel=bezel().revised(shape=Circle(diameter=60))
    )
    (finding,) = found(panel(fitted("a", 0, 0), fitted("b", 36, 48 - 1), cutouts=(small,)), "bezels")
    assert finding.measured == pytest.approx((36**2 + 47**2) ** 0.5 - 60)
