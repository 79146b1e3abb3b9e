"""Depth limits: a plane z = a + bx + cy, judged at the worst corner of a body."""

import pytest

from panelcad.model.cutout import BodyKind
from panelcad.model.plate import Sway
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, Surroundings
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import body, fitted, instrument, panel


def firewall(at_origin, slope_x=0.0, slope_y=0.0, shape=None, x=0.0):
    limit = DepthLimit(
        id="wall",
        name="Firewall",
        plate="main",
        shape=shape or Rectangle(width=900, height=600),
        x=x,
        y=0,
        at_origin=at_origin,
        slope_x=slope_x,
        slope_y=slope_y,
    )
    return Surroundings(depth_limits=(limit,))


def flat(left):
    return panel(fitted("a", 0, 0), around=firewall(100 + left))


def sloping_over_a_round_case(left):
    """Slopes (0.3, -0.4): the plane is 35 x 0.5 nearer at the worst point of a 70 mm case's rim."""
    return panel(fitted("a", 0, 0), around=firewall(100 + 17.5 + left, 0.3, -0.4))


def sloping_over_a_box(left):
    """A box 60 x 40: the worst corner is at (-30, 20): 0.3 x 30 + 0.4 x 20 = 17 nearer."""
    box = instrument(bodies=(body(BodyKind.CASE, Rectangle(width=60, height=40)),))
    return panel(fitted("a", 0, 0), cutouts=(box,), around=firewall(100 + 17 + left, 0.3, -0.4))


CASES = [
    Case("depth", flat, 6.35, 6.34, required=6.35),
    Case("depth", sloping_over_a_round_case, 6.3500001, 6.34),
    Case("depth", sloping_over_a_box, 6.35, -12.0),
]
IGNORED = [
    Ignored(
        "depth",
        "a case beside the limit's footprint",
        lambda: panel(fitted("a", 0, 0), around=firewall(50.0, shape=Circle(diameter=100), x=35 + 50 + 0.1)),
    ),
]


def test_only_what_lies_over_the_footprint_counts():
    beside = firewall(50.0, shape=Circle(diameter=100), x=35 + 50 + 0.1)
    assert found(panel(fitted("a", 0, 0), around=beside), "depth") == []
    partly = firewall(50.0, slope_x=0.1, shape=Rectangle(width=100, height=100), x=70.0)
    (finding,) = found(panel(fitted("a", 0, 0), around=partly), "depth")
    assert finding.measured == pytest.approx(50 + 0.1 * 20 - 100, abs=0.001)


def test_sway_brings_the_body_nearer():
    made = panel(fitted("a", 0, 0), around=firewall(108.0), sway=Sway(z=2.0))
    (finding,) = found(made, "depth")
    assert finding.measured == pytest.approx(6.0)
    assert found(panel(fitted("a", 0, 0), around=firewall(108.35), sway=Sway(z=2.0)), "depth") == []
