"""Web rules. Closed form between circles: distance of centres less both radii."""

import pytest

from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle, Rectangle, Slot
from tests.builders import cut, opening, project, round_cutout, sheet
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import four_screws, holes, nutplate_form, own_cut, panel

OLD = CutState.EXISTING


def circles(web, **states):
    return panel(
        cuts=(own_cut("a", 0, 0, Circle(diameter=50), **states), own_cut("b", 40 + web, 0, Circle(diameter=30)))
    )


def slots_at_an_angle(web):
    """Two slots 8 mm wide, parallel at 37°, `web` apart."""
    from math import cos, radians, sin

    along = radians(37 + 90)
    x, y = (8 + web) * cos(along), (8 + web) * sin(along)
    slot = Slot(length=60, width=8)
    return panel(cuts=(own_cut("a", 0, 0, slot, rotation=37), own_cut("b", x, y, slot, rotation=37)))


def rounded_corners(web):
    """Corner against corner of two 40 x 20 rectangles of corner radius 5, along the diagonal (closed form)."""
    from math import sqrt

    reach = (2 * 5 + web) / sqrt(2)
    box = Rectangle(width=40, height=20, corner_radius=5)
    return panel(cuts=(own_cut("a", 0, 0, box), own_cut("b", 30 + reach, 10 + reach, box)))


CASES = [
    Case("web", circles, 6.35, 6.34, required=6.35, severity=Severity.WARNING),
    Case("web", circles, 6.35, 3.99, required=4.0),
    Case("web", slots_at_an_angle, 6.3500001, 6.3, severity=Severity.WARNING),
    Case("web", rounded_corners, 6.3500001, 6.3, severity=Severity.WARNING),
]


def its_own_screw_holes(own_web=2.6):
    """A standard round instrument: 1.750 - 1.5625 - 0.085 in = 2.6035 mm between its opening and its screw holes."""
    cutouts = (round_cutout(holes=(four_screws(),), own_web=own_web),)
    return panel(cuts=(cut("a", 0, 0),), cutouts=cutouts)


CASES += [Case("own-web", its_own_screw_holes, 2.6035, 2.61, measured=lambda _: 2.6035)]
IGNORED = [
    Ignored("web", "a cutout's own screw holes", its_own_screw_holes),
    Ignored(
        "own-web",
        "the rivets of a nutplate",
        lambda: panel(
            cuts=(cut("a", 0, 0),),
            cutouts=(round_cutout(openings=(), holes=(holes((0, 0), form=nutplate_form()),), own_web=50.0),),
        ),
    ),
]


def test_old_cuts_among_themselves_are_advice():
    made = panel(
        cuts=(own_cut("a", 0, 0, Circle(diameter=50), state=OLD), own_cut("b", 43, 0, Circle(diameter=30), state=OLD))
    )
    assert [f.severity for f in found(made, "web")] == [Severity.ADVICE]


def test_a_cutouts_own_screw_holes_are_not_neighbours():
    """A standard round instrument leaves 2.60 mm between its opening and its screw holes."""
    cutouts = (round_cutout(holes=(four_screws(),)),)
    assert found(panel(cuts=(cut("a", 0, 0),), cutouts=cutouts), "web") == []


@pytest.mark.parametrize(("own", "count"), [(2.60, 0), (2.61, 1)])
def test_own_web_is_judged_by_the_cutouts_own_limit(own, count):
    """1.750 - 1.5625 - 0.085 in = 0.1025 in = 2.6035 mm."""
    cutouts = (round_cutout(holes=(four_screws(),), own_web=own),)
    findings = found(panel(cuts=(cut("a", 0, 0),), cutouts=cutouts), "own-web")
    assert len(findings) == count
    assert all(abs(f.measured - 2.6035) < 1e-6 for f in findings)


def test_the_cure_is_the_smallest_move():
    """6.35 mm less what is there are 1.524 mm, told in tenths."""
    (finding,) = found(circles(4.826), "web")
    assert (finding.cure.item, finding.cure.dx, finding.cure.dy) == ("b", pytest.approx(1.6), 0)
    assert found(circles(4.826 + finding.cure.dx), "web") == []


def test_a_cure_never_moves_an_old_cut():
    old_first = project(
        sheet(cuts=(cut("a", 0, 0), cut("b", 84, 0, state=OLD))),
        cutouts=(round_cutout(openings=(opening(Circle(diameter=79.375)),)),),
    )
    """84 - 79.375 mm are there, 1.725 mm are missing; told in tenths."""
    (finding,) = found(old_first, "web")
    assert (finding.cure.item, finding.cure.dx) == ("a", pytest.approx(-1.8))
