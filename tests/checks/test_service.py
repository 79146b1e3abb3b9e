"""Rack units come out, and hands reach connectors."""

import pytest

from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, ObstacleKind, Surroundings
from tests.builders import round_cutout
from tests.checks.cases import COPIES, Case, Ignored, found, moved
from tests.checks.made import bezel, body, fitted, instrument, keep_out, panel, rack_unit, rib, shaft
from tests.checks.test_bodies import two_of_one_stack

UNIT = rack_unit("unit", 40.0)
FLAT = round_cutout(10.0, "flat", bezel=bezel(40, 40, 3.0))
KNOB = round_cutout(10.0, "knob", bodies=(body(BodyKind.KNOB, Circle(diameter=20), far=15.0),))
ALL = (UNIT, FLAT, KNOB)


def unit_to_bezel(gap):
    return panel(fitted("u", 0, 0, "unit"), fitted("b", 0, 20 + 20 + gap, "flat"), cutouts=ALL)


def unit_to_knob(gap):
    return panel(fitted("u", 0, 0, "unit"), fitted("b", 0, 20 + 10 + gap, "knob"), cutouts=ALL)


def unit_to_shade(gap):
    around = keep_out(Rectangle(width=900, height=40), 0, 20 + 20 + gap, (-300.0, -100.0))
    return panel(fitted("u", 0, 0, "unit"), cutouts=ALL, around=around)


def unit_to_yoke(gap):
    around = shaft(Circle(diameter=30), 0, 20 + 15 + gap, (-200.0, -100.0))
    return panel(fitted("u", 0, 0, "unit"), cutouts=ALL, around=around)


def connector_in_a_well(room):
    """A connector 30 mm wide in a square well of ribs `room` away on every side, a rib close behind it."""
    plug = body(BodyKind.CONNECTOR, Rectangle(width=30, height=30), near=100.0, far=130.0)
    made = instrument(bodies=(body(), plug))
    away = 15 + room + 100
    side = Rectangle(width=200, height=1000)
    top = Rectangle(width=1000, height=200)
    walls = [
        rib(shape, x, y, (100.0, 140.0)).obstacles[0].revised(id=f"rib-{i}")
        for i, (shape, x, y) in enumerate(((side, away, 0), (side, -away, 0), (top, 0, away), (top, 0, -away)))
    ]
    floor = rib(Rectangle(width=900, height=900), 0, 0, (135.0, 150.0)).obstacles[0]
    around = Surroundings(obstacles=(*walls, floor))
    return panel(fitted("a", 0, 0), cutouts=(made,), around=around)


def beside_a_knob(name):
    return panel(fitted("a", 0, 0, name), fitted("b", 0, 22, "knob"), cutouts=ALL)


CASES = [
    Case("slide-out", unit_to_bezel, 0.0, -0.01, required=0.0),
    Case("slide-out-knob", unit_to_knob, 0.0, -0.01, severity=Severity.WARNING),
    Case("slide-out-keep-out", unit_to_shade, 0.0, -0.01, severity=Severity.WARNING),
    Case("slide-out-moving", unit_to_yoke, 0.0, -0.01, severity=Severity.ADVICE),
    Case("hand-space", connector_in_a_well, 63.5, 63.4, required=63.5, severity=Severity.WARNING, accuracy=0.002),
]


def deep_tray(x):
    """A tray 250 mm deep with a support `x` beside it that reaches 200 mm back."""
    support = rib(Rectangle(width=20, height=40), 158.75 / 2 + 10 + x, 0, (100.0, 200.0), ObstacleKind.SUPPORT)
    return panel(fitted("u", 0, 0, "unit"), cutouts=ALL, around=support)


def plain_unit_under(around):
    return panel(fitted("a", 0, 0), around=around)


def in_a_well_without_connector():
    made = connector_in_a_well(10.0)
    return made.revised(cutouts=(made.cutouts[0].revised(bodies=made.cutouts[0].bodies[:1]),))


CASES += [Case("tray-support", deep_tray, 6.35, 6.36, measured=None, severity=None)]
IGNORED = [
    Ignored("slide-out", "a bezel of its own stack", two_of_one_stack),
    Ignored("slide-out-knob", "a plain instrument beside a knob", lambda: beside_a_knob("flat")),
    Ignored(
        "slide-out-keep-out",
        "a plain instrument, which is not pulled out",
        lambda: plain_unit_under(keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, -50.0))),
    ),
    Ignored(
        "slide-out-moving",
        "what moves behind",
        lambda: panel(fitted("u", 0, 0, "unit"), cutouts=ALL, around=shaft(Circle(diameter=30), 0, 0, (10.0, 200.0))),
    ),
    Ignored(
        "tray-support",
        "a case as deep",
        lambda: panel(fitted("a", 0, 0), cutouts=(instrument(bodies=(body(far=250.0),)),)),
    ),
    Ignored("hand-space", "a case without a connector", in_a_well_without_connector),
]


def test_a_unit_is_pulled_no_farther_than_it_says():
    """The glareshield begins 100 mm in front of the panel; the unit comes free after 90."""
    short = UNIT.revised(rack=UNIT.rack.revised(slide_out=90.0))
    around = keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, -100.0))
    assert found(panel(fitted("u", 0, 0, "unit"), cutouts=(short,), around=around), "slide-out-keep-out") == []


def test_a_plain_instrument_is_not_pulled_out():
    around = keep_out(Rectangle(width=900, height=40), 0, 0, (-300.0, -50.0))
    assert found(panel(fitted("a", 0, 0), around=around), "slide-out-keep-out") == []


@pytest.mark.parametrize(("depth", "count"), [(130 + 63.5, 0), (130 + 63.4, 1)])
def test_a_connector_is_reached_from_behind_when_there_is_depth(depth, count):
    in_well = connector_in_a_well(10.0)
    walls = in_well.surroundings.obstacles[:4]
    wall = DepthLimit(
        id="wall", name="Firewall", plate="main", shape=Rectangle(width=900, height=900), x=0, y=0, at_origin=depth
    )
    made = in_well.revised(surroundings=Surroundings(obstacles=walls, depth_limits=(wall,)))
    assert [f.measured for f in found(made, "hand-space")] == [pytest.approx(63.4)] * count
    assert len(found(moved(made, COPIES[1]), "hand-space")) == count


@pytest.mark.parametrize(
    ("deep", "x", "far", "count"),
    [(152.4, None, 0, 0), (250.0, None, 0, 1), (250.0, 0.0, 200.0, 0), (250.0, 7.0, 200.0, 1), (250.0, 0.0, 120.0, 1)],
)
def test_a_deep_tray_is_held_at_its_back_or_nobody_knows(deep, x, far, count):
    """A support beside the tray, touching it or 7 mm away, at its back half or only at its front."""
    tray = UNIT.revised(bodies=(body(BodyKind.TRAY, Rectangle(width=158.75, height=40.0), far=deep),))
    support = Rectangle(width=20, height=40)
    around = None if x is None else rib(support, 158.75 / 2 + 10 + x, 0, (100.0, far), ObstacleKind.SUPPORT)
    made = panel(fitted("u", 0, 0, "unit"), cutouts=(tray,), around=around)
    report = check(made, made.option("new"))
    assert sum(unknown.rule == "tray-support" for unknown in report.unknown) == count
    assert found(made, "obstacles") == []
