"""Bodies behind. Closed forms: round cases by their centres, boxes by their sides, depth by the ranges."""

import pytest

from panelcad.geometry.sweep import swept
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.plate import Sway
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import ObstacleKind
from panelcad.model.travel import Travel, Turn
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import CASE, body, fitted, instrument, panel, rack_unit, rib, shaft

SQUARE = Rectangle(width=20, height=20)


def case_to_case(gap):
    return panel(fitted("a", 0, 0), fitted("b", CASE + gap, 0))


def one_above_the_other_in_depth(gap):
    """A long and a short case overlap in plan; the short one of the second item starts behind the first."""
    short = instrument("short", bodies=(body(far=100.0),))
    deep = instrument("deep", bodies=(body(near=100.0 + gap, far=200.0),))
    return panel(fitted("a", 0, 0, "short"), fitted("b", 30, 0, "deep"), cutouts=(short, deep))


def case_to_rib(gap):
    return panel(fitted("a", 0, 0), around=rib(SQUARE, CASE / 2 + 10 + gap, 0))


def connector_to_rib(gap):
    plug = body(BodyKind.CONNECTOR, Circle(diameter=30), near=100.0, far=140.0)
    made = instrument(bodies=(body(), plug))
    return panel(fitted("a", 0, 0), cutouts=(made,), around=rib(SQUARE, 15 + 10 + gap, 0, (110.0, 130.0)))


def swaying_case_to_rib(gap):
    sway = Sway(x=3.0, y=0.0, z=0.0)
    return panel(fitted("a", 0, 0), around=rib(SQUARE, CASE / 2 + 10 + 3.0 + gap, 0), sway=sway)


def case_to_shaft(gap):
    """A shaft 20 mm thick that goes 30 mm up from its place, beside the case at its middle height."""
    around = shaft(Circle(diameter=20), CASE / 2 + 10 + gap, -15, travels=(Travel(dy=30.0),))
    return panel(fitted("a", 0, 0), around=around)


def case_to_arm(gap):
    """An arm that reaches 95 mm from its pivot to its round end that turns 90°: its end comes nearest at 45°."""
    arm = Rectangle(width=100, height=10, corner_radius=5)
    reach = (95 + CASE / 2 + gap) / 2**0.5
    around = shaft(arm, 45 - reach, -reach, turn=Turn(x=-reach, y=-reach, least=0.0, most=90.0))
    return panel(fitted("a", 0, 0), around=around)


def wires_to(kind):
    plug = body(BodyKind.CONNECTOR, Circle(diameter=30), near=100.0, far=140.0)

    def make(gap):
        around = rib(SQUARE, 15 + 10 + gap, 0, (100.0, 140.0), kind)
        return panel(fitted("a", 0, 0), cutouts=(instrument(bodies=(plug,)),), around=around)

    return make


CASES = [
    Case("bodies", case_to_case, 3.175, 3.174, required=3.175),
    Case("bodies", one_above_the_other_in_depth, 3.175, 3.17),
    Case("obstacles", case_to_rib, 6.35, 6.34, required=6.35),
    Case("obstacles", connector_to_rib, 6.35, 6.34),
    Case("moving-behind", case_to_shaft, 12.7, 12.69, required=12.7),
    Case("wire-separation", wires_to(ObstacleKind.CABLE), 76.2, 76.1, required=76.2, severity=Severity.WARNING),
    Case("wire-separation", wires_to(ObstacleKind.CABLE), 76.2, 12.6, required=12.7),
    Case("wire-separation", wires_to(ObstacleKind.FLUID_LINE), 152.4, 152.3, required=152.4, severity=Severity.WARNING),
    Case("wire-separation", wires_to(ObstacleKind.FLUID_LINE), 152.4, 50.7, required=50.8),
]


def two_of_one_stack():
    units = (rack_unit("low", 33.0), rack_unit("high", 50.0))
    first, radio = fitted("a", 0, 0, "low")
    return panel((first, radio), items=(radio.revised(id="b", cutout="high", y=41.5),), cutouts=units)


def tray_on_its_support():
    support = rib(Rectangle(width=20, height=40), 158.75 / 2 + 10, 0, (100.0, 200.0), ObstacleKind.SUPPORT)
    return panel(fitted("a", 0, 0, "unit"), cutouts=(rack_unit("unit", 40.0),), around=support)


IGNORED = [
    Ignored("bodies", "neighbours in one stack", two_of_one_stack),
    Ignored("obstacles", "a support that a tray lies on", tray_on_its_support),
    Ignored(
        "moving-behind",
        "what moves in front",
        lambda: panel(fitted("a", 0, 0), around=shaft(Circle(diameter=20), 0, 0, (-200.0, -30.0))),
    ),
    Ignored("wire-separation", "a rib", lambda: wires_to(ObstacleKind.RIB)(10.0)),
]


@pytest.mark.parametrize(("gap", "count"), [(12.7001, 0), (12.6, 1)])
def test_a_turning_part_where_it_comes_nearest(gap, count):
    findings = found(case_to_arm(gap), "moving-behind")
    assert [f.measured for f in findings] == [pytest.approx(gap, abs=0.001)] * count


@pytest.mark.parametrize(("gap", "count"), [(6.35, 0), (6.34, 1)])
def test_sway_adds_to_the_clearance_from_what_is_fixed(gap, count):
    findings = found(swaying_case_to_rib(gap), "obstacles")
    assert [f.measured for f in findings] == [pytest.approx(gap)] * count


def test_bodies_of_one_item_and_of_one_stack_are_exempt():
    units = (rack_unit("low", 33.0), rack_unit("high", 50.0))
    first, radio = fitted("a", 0, 0, "low")
    other = radio.revised(id="b", cutout="high", y=41.5)
    made = panel((first, radio), items=(other,), cutouts=units)
    assert found(made, "bodies") == []


def test_two_bodies_in_one_place_can_never_be_accepted():
    (finding,) = found(case_to_case(-0.5), "bodies")
    assert not finding.acceptable
    (finding,) = found(case_to_case(0.5), "bodies")
    assert finding.acceptable


def test_wires_near_a_rib_or_a_case_near_a_cable_are_no_matter_of_separation():
    assert found(wires_to(ObstacleKind.RIB)(10.0), "wire-separation") == []
    cable = rib(SQUARE, 60, 0, kind=ObstacleKind.CABLE)
    assert found(panel(fitted("a", 0, 0), around=cable), "wire-separation") == []


def test_a_swept_slot_is_the_hull_of_both_ends():
    """A 10 x 20 slot-ended shape moved by its own length: area of the hull by Steiner's formula."""
    shape = Circle(diameter=10).contour()
    over = swept(shape, 30.0, 40.0)
    assert over.area == pytest.approx(50 * 10 + 3.141592653589793 * 25)
