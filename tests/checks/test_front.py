"""In front: knobs, levers over their travel, plugs, bezels, keep-outs, what moves."""

import pytest

from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.travel import Travel
from tests.builders import round_cutout
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import bezel, body, fitted, keep_out, panel, shaft

KNOB = round_cutout(10.0, "knob", bodies=(body(BodyKind.KNOB, Circle(diameter=20), far=15.0),))
PLUG = round_cutout(10.0, "plug", bodies=(body(BodyKind.PLUG, Circle(diameter=20), far=60.0),))
TOGGLE = round_cutout(
    10.0, "toggle", bodies=(body(BodyKind.LEVER, Circle(diameter=6), far=20.0, travels=(Travel(dy=8), Travel(dy=-8))),)
)
FLAT = round_cutout(10.0, "flat", bezel=bezel(40, 40, 3.0))
ALL = (KNOB, PLUG, TOGGLE, FLAT)


def knob_to_plug(gap):
    return panel(fitted("a", 0, 0, "knob"), fitted("b", 20 + gap, 0, "plug"), cutouts=ALL)


def knob_to_thrown_lever(gap):
    """The lever's tip of radius 3 is thrown 8 mm toward the knob above it."""
    return panel(fitted("a", 0, 0, "toggle"), fitted("b", 0, 8 + 3 + 10 + gap, "knob"), cutouts=ALL)


def knob_to_bezel(gap):
    return panel(fitted("a", 0, 0, "knob"), fitted("b", 10 + 20 + gap, 0, "flat"), cutouts=ALL)


def knob_to_shade(gap):
    """A glareshield 20 mm in front and nearer; the knob stands 15 mm out, the plug 60."""
    around = keep_out(Rectangle(width=900, height=40), 0, 10 + 20 + gap, (-300.0, -20.0))
    return panel(fitted("a", 0, 0, "plug"), cutouts=ALL, around=around)


def bezel_to_shade(gap):
    around = keep_out(Rectangle(width=900, height=40), 0, 20 + 20 + gap, (-300.0, 0.0))
    return panel(fitted("a", 0, 0, "flat"), cutouts=ALL, around=around)


def knob_to_yoke(gap):
    """A yoke that comes 100 mm toward the pilot and back to 9 mm before the knob's end, in plan over it."""
    around = shaft(Circle(diameter=60), 0, 0, (-160.0, -130.0), travels=(Travel(dz=115.0 - gap),))
    return panel(fitted("a", 0, 0, "knob"), cutouts=ALL, around=around)


def bezel_to_yoke(gap):
    around = shaft(Circle(diameter=30), 20 + 15 + gap, 0, (-160.0, -1.0))
    return panel(fitted("a", 0, 0, "flat"), cutouts=ALL, around=around)


CASES = [
    Case("knobs", knob_to_plug, 3.175, 3.17, required=3.175, severity=Severity.WARNING),
    Case("knobs", knob_to_plug, 3.175, -0.01),
    Case("knobs", knob_to_thrown_lever, 3.175, 3.17, severity=Severity.WARNING),
    Case("knob-over-bezel", knob_to_bezel, 3.175, 3.17, severity=Severity.WARNING),
    Case("knob-over-bezel", knob_to_bezel, 3.175, -1.0),
    Case("front-keep-out", knob_to_shade, 6.35, 6.34, required=6.35),
    Case("bezel-keep-out", bezel_to_shade, 6.35, 6.34),
    Case("front-moving", knob_to_yoke, 6.35, 6.34, measured=lambda gap: gap - 6.35 + 6.35),
    Case("bezel-moving", bezel_to_yoke, 6.35, 6.34),
]
IGNORED = [
    Ignored(
        "knobs",
        "two knobs of one item",
        lambda: panel(
            fitted("a", 0, 0, "knob"),
            cutouts=(KNOB.revised(bodies=(*KNOB.bodies, KNOB.bodies[0].revised(x=12.0))),),
        ),
    ),
    Ignored(
        "knob-over-bezel",
        "a knob on its own bezel",
        lambda: panel(fitted("a", 0, 0, "knob"), cutouts=(KNOB.revised(bezel=bezel(40, 40, 3.0)),)),
    ),
    Ignored(
        "front-keep-out",
        "a case behind the sheet",
        lambda: panel(fitted("a", 0, 0), around=keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, -1.0))),
    ),
    Ignored(
        "bezel-keep-out",
        "what hangs far in front of a flat bezel",
        lambda: panel(
            fitted("a", 0, 0, "flat"), cutouts=ALL, around=keep_out(Circle(diameter=90), 0, 0, (-300.0, -20.0))
        ),
    ),
    Ignored(
        "front-moving",
        "what moves behind the sheet",
        lambda: panel(fitted("a", 0, 0, "knob"), cutouts=ALL, around=shaft(Circle(diameter=60), 0, 0, (30.0, 200.0))),
    ),
    Ignored(
        "bezel-moving",
        "a bezel behind the sheet",
        lambda: panel(
            fitted("a", 0, 0, "flat", mounting="rear"),
            cutouts=ALL,
            around=shaft(Circle(diameter=60), 0, 0, (-160.0, -1.0)),
        ),
    ),
]


def test_a_lever_at_rest_would_have_had_room():
    still = TOGGLE.revised(bodies=(TOGGLE.bodies[0].revised(travels=()),))
    made = panel(fitted("a", 0, 0, "toggle"), fitted("b", 0, 21, "knob"), cutouts=(KNOB, still))
    assert found(made, "knobs") == []


def test_one_in_front_of_the_other_is_clear_by_depth():
    """The keep-out begins 20 mm in front: a knob that stands out 10 mm has 10 mm to spare."""
    low = KNOB.revised(bodies=(KNOB.bodies[0].revised(far=10.0),))
    around = keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, -20.0))
    assert found(panel(fitted("a", 0, 0, "knob"), cutouts=(low,), around=around), "front-keep-out") == []


def test_a_lever_that_can_be_thrown_the_other_way_may_be_accepted_two_knobs_may_not():
    (knob,) = found(knob_to_plug(-1.0), "knobs")
    (lever,) = found(knob_to_thrown_lever(-1.0), "knobs")
    assert (knob.acceptable, lever.acceptable) == (False, True)
    assert knob.problem == "Knob and plug are in each other's way"


def test_knobs_of_one_item_are_ignored():
    two = KNOB.revised(bodies=(*KNOB.bodies, KNOB.bodies[0].revised(x=12.0)))
    assert found(panel(fitted("a", 0, 0, "knob"), cutouts=(two,)), "knobs") == []


def test_a_throttle_over_its_travel_toward_the_pilot():
    """The knob stands out 15 mm and is pulled 80 mm; a keep-out begins 100 mm in front."""
    throttle = KNOB.revised(bodies=(KNOB.bodies[0].revised(travels=(Travel(dz=-80.0),)),))
    for begins, count in ((-101.35, 0), (-101.0, 1)):
        around = keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, begins))
        findings = found(panel(fitted("a", 0, 0, "knob"), cutouts=(throttle,), around=around), "front-keep-out")
        assert [f.measured for f in findings] == [pytest.approx(-begins - 95.0)] * count
