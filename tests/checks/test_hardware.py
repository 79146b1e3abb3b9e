"""Countersinks, nutplates, mounts and tools."""

from math import radians, tan

import pytest

from panelcad.checks.hardware import countersink_depth
from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.plate import Backing
from panelcad.model.shape import Circle, Rectangle
from tests.builders import round_cutout
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import (
    attach,
    body,
    countersunk,
    drilled,
    fitted,
    four_screws,
    instrument,
    nutplate_form,
    own_cut,
    panel,
    rib,
)


def countersunk_in(thickness):
    """(7.0 - 4.318) / 2 / tan 50° = 1.1252 mm deep."""
    return panel(cuts=(drilled("screw", 0, 0, countersunk()),), thickness=thickness)


DEPTH = (7.0 - 4.318) / 2 / tan(radians(50))


def flange_to_cut(gap):
    """A flange 25 x 9.5 along x: its side is 4.75 mm from the screw."""
    hole = own_cut("b", 0, 4.75 + 10 + gap, Rectangle(width=200, height=20))
    return panel(attach_screws=(attach("s1", 0, 0, nutplate_form()),), cuts=(hole,), state="new")


def flange_to_edge(gap):
    return panel(attach_screws=(attach("s1", 0, 300 - 4.75 - gap, nutplate_form()),), state="new")


def mount_to_mount(gap):
    """Two shock mounts of 30 mm."""
    mount = Backing(diameter=30.0, depth=20.0)
    return panel(attach_screws=(attach("s1", 0, 0, backing=mount), attach("s2", 30 + gap, 0, backing=mount)))


def flange_to_rib(gap):
    made = round_cutout(name="ring", openings=(), holes=(drilled("x", 0, 0, nutplate_form()).holes[0],))
    around = rib(Rectangle(width=20, height=100), 12.5 + 10 + gap, 0, (2.0, 50.0))
    return panel(fitted("a", 0, 0, "ring"), cutouts=(made,), around=around)


def knob_to_screw(gap):
    """Room of 9.525 mm across over an attach screw, beside a knob of 20 mm."""
    knob = instrument(bodies=(body(BodyKind.KNOB, Circle(diameter=20), far=15.0),), bezel=None)
    return panel(
        fitted("a", 0, 0), cutouts=(knob,), attach_screws=(attach("s1", 10 + 9.525 / 2 + gap, 0),), state="new"
    )


def case_to_mount(gap):
    mount = Backing(diameter=30.0, depth=20.0)
    return panel(fitted("a", 0, 0), attach_screws=(attach("s1", 35 + 15 + gap, 0, backing=mount),))


SIDE_BY_SIDE = (attach("s1", 0, 0), attach("s2", 3, 0))
CASES = [
    Case(
        "countersink",
        countersunk_in,
        1.5 * DEPTH,
        1.5 * DEPTH - 0.01,
        measured=lambda t: t - DEPTH,
        severity=Severity.WARNING,
    ),
    Case("countersink", countersunk_in, 1.5 * DEPTH, DEPTH - 0.01, measured=lambda t: t - DEPTH),
    Case("hardware-metal", flange_to_cut, 0.0, -0.01, required=0.0),
    Case("hardware-edge", flange_to_edge, 0.0, -0.01, severity=Severity.WARNING, accuracy=0.001),
    Case("hardware-meets", mount_to_mount, 0.0, -0.01),
    Case("hardware-obstacle", flange_to_rib, 0.0, -0.01),
    Case("tool-access", knob_to_screw, 0.0, -0.01, severity=Severity.WARNING),
    Case("hardware-behind", case_to_mount, 3.175, 3.17, required=3.175),
]


def ring_clamped(has_screws):
    """A clamp ring whose tension screw is reached through one of its holes, or nobody knows where."""
    ring = instrument(holes=(four_screws(),) if has_screws else ())
    return panel(fitted("a", 0, 0, mounting="clamp ring"), cutouts=(ring,))


CASES += [Case("clamp-adjuster", ring_clamped, passes=True, fails=False, measured=None, severity=None)]
IGNORED = [
    Ignored("clamp-adjuster", "what is screwed on", lambda: panel(fitted("a", 0, 0))),
    Ignored("countersink", "a plain hole", lambda: panel(cuts=(drilled("screw", 0, 0),), thickness=0.5)),
    Ignored(
        "hardware-metal",
        "a nutplate's own holes",
        lambda: panel(attach_screws=(attach("s1", 0, 0, nutplate_form()),)),
    ),
    Ignored(
        "hardware-edge",
        "a bracket that holds the sheet at its edge",
        lambda: panel(attach_screws=(attach("s1", 0, 290, backing=Backing(diameter=30.0, depth=20.0)),)),
    ),
    Ignored("hardware-meets", "screws without anything behind", lambda: panel(attach_screws=SIDE_BY_SIDE)),
    Ignored(
        "hardware-obstacle",
        "the rib that an attach screw is fixed to",
        lambda: panel(
            attach_screws=(attach("s1", 0, 0, nutplate_form()),), around=rib(Circle(diameter=30), 0, 0, (2.0, 9.0))
        ),
    ),
    Ignored(
        "tool-access",
        "a case behind the sheet",
        lambda: panel(fitted("a", 0, 0), attach_screws=(attach("s1", 30, 0),), state="new"),
    ),
    Ignored(
        "hardware-behind",
        "a knob in front of a mount",
        lambda: panel(
            fitted("a", 0, 0),
            cutouts=(instrument(bodies=(body(BodyKind.KNOB, Circle(diameter=20), far=15.0),)),),
            attach_screws=(attach("s1", 5, 0, backing=Backing(diameter=30.0, depth=20.0)),),
        ),
    ),
]


def test_depth_of_a_countersink():
    """A 100° cone from 4.318 to 7 mm: half the difference over tan 50°."""
    assert countersink_depth(countersunk()) == pytest.approx(DEPTH)
    assert countersink_depth(nutplate_form()) == 0.0


def test_a_nutplates_own_holes_are_no_matter():
    assert found(panel(attach_screws=(attach("s1", 0, 0, nutplate_form()),)), "hardware-metal") == []


def test_a_rib_that_an_attach_screw_is_fixed_to_is_no_matter():
    made = panel(
        attach_screws=(attach("s1", 0, 0, nutplate_form()),), around=rib(Circle(diameter=30), 0, 0, (2.0, 9.0))
    )
    assert found(made, "hardware-obstacle") == []


def test_the_adjuster_of_a_clamp_ring_is_unknown_without_holes():
    made = panel(fitted("a", 0, 0, mounting="clamp ring"))
    unknown = [u for u in check(made, made.option("new")).unknown if u.rule == "clamp-adjuster"]
    assert [u.items for u in unknown] == [("a",)]
