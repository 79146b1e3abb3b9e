"""What belongs to two plates, compared in the aircraft. Closed forms between boxes by their sides."""

from math import cos, radians, sin, sqrt

import pytest

from panelcad.model.cutout import BodyKind
from panelcad.model.plate import Frame, Sway
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, MovingPart, Surroundings
from panelcad.model.travel import Travel, Turn
from tests.builders import project, round_cutout, sheet
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import body, fitted, instrument, keep_out, panel, rib, shaft, volume

SQUARE = Rectangle(width=20, height=20)
UPRIGHT = "boxes stand upright on their plates; turned, a box only grows"


def two_plates(gap, **frame):
    """Boxes of 20 mm side behind two plates, the second one moved right."""
    box = instrument(bezel=None, bodies=(body(BodyKind.CASE, Rectangle(width=20, height=20), far=50.0),))
    first, a = fitted("a", 0, 0)
    second, b = fitted("b", 0, 0)
    other = sheet(200, 200, id="side", name="Side", frame=Frame(x=20 + gap, **frame), cuts=(second,))
    return project(sheet(cuts=(first,)), other, items=(a, b.revised(plate="side")), cutouts=(box,))


@pytest.mark.parametrize(("gap", "count"), [(3.175, 0), (3.17, 1), (-1.0, 1)])
def test_bodies_of_two_plates(gap, count):
    findings = found(two_plates(gap), "plates-apart")
    assert [f.measured for f in findings] == [pytest.approx(gap)] * count


def test_a_canted_plate():
    """Canted 90°, the second plate's depth runs to the left: its box reaches from 70 - 50 to 70 mm, 10 mm away."""
    assert found(two_plates(50 - 20 + 20, cant=90), "plates-apart") == []
    (finding,) = found(two_plates(50 - 20 + 12, cant=90), "plates-apart")
    assert finding.measured == pytest.approx(2.0)


def swaying(gap):
    made = two_plates(gap)
    option = made.option("new")
    first, other = option.plates
    return made.with_option(option.revised(plates=(first, other.revised(sway=Sway(x=4.0)))))


def test_sway_adds_to_the_gap_between_plates():
    assert found(swaying(3.175 + 4.0), "plates-apart") == []
    (finding,) = found(swaying(5.0), "plates-apart")
    assert finding.measured == pytest.approx(1.0)


def beside_the_other_plates_rib(gap, travels=()):
    """A case of 20 mm behind the main panel; a rib or a shaft is given in the axes of a plate 300 mm to the right."""
    box = instrument(bezel=None, bodies=(body(BodyKind.CASE, Rectangle(width=20, height=20), far=50.0),))
    first, a = fitted("a", 0, 0)
    other = sheet(100, 100, id="side", name="Side", frame=Frame(x=300))
    if travels is None:
        around = rib(Rectangle(width=20, height=20), -300 + 10 + 10 + gap, 0)
    else:
        around = shaft(Circle(diameter=20), -300 + 10 + 10 + gap + 30, 0, travels=travels)
    moved = around.revised(
        obstacles=tuple(each.revised(plate="side") for each in around.obstacles),
        moving_parts=tuple(each.revised(plate="side") for each in around.moving_parts),
    )
    return project(sheet(cuts=(first,)), other, items=(a,), cutouts=(box,), surroundings=moved)


def test_what_stands_around_a_plate_that_an_option_gave_up_is_judged_still():
    """The panel as found has the side plate, whose frame says where its rib is."""
    made = beside_the_other_plates_rib(6.34, travels=None)
    option = made.option("new")
    main, side = option.plates
    found_with_it = made.as_found.revised(plates=(*made.as_found.plates, side.revised(state="kept")))
    given_up = made.revised(as_found=found_with_it).with_option(option.revised(plates=(main,)))
    (finding,) = found(given_up, "other-plates-obstacles")
    assert finding.measured == pytest.approx(6.34)


@pytest.mark.parametrize(
    ("travels", "gap", "count"),
    [(None, 6.35, 0), (None, 6.34, 1), ((Travel(dx=-30.0),), 12.7, 0), ((Travel(dx=-30.0),), 12.6, 1), ((), 0.0, 0)],
)
def test_bodies_against_what_stands_behind_another_plate(travels, gap, count):
    findings = found(beside_the_other_plates_rib(gap, travels), "other-plates-obstacles")
    assert [f.measured for f in findings] == [pytest.approx(gap)] * count


def given_on(plate, around):
    """The same things around the panel, given in another plate's axes."""
    kinds = ("obstacles", "moving_parts", "keep_outs", "depth_limits")
    return around.revised(
        **{kind: tuple(each.revised(plate=plate) for each in getattr(around, kind)) for kind in kinds}
    )


def case_before(around, plate="side", **frame):
    """A case of 20 mm side and 50 mm depth in the main panel; what is around is given on a plate in the aircraft."""
    box = instrument(bezel=None, bodies=(body(BodyKind.CASE, SQUARE, far=50.0),))
    first, a = fitted("a", 0, 0)
    other = sheet(100, 100, id="side", name="Side", frame=Frame(**frame))
    plates = (sheet(cuts=(first,)), other)
    return project(*plates, items=(a,), cutouts=(box,), surroundings=given_on(plate, around))


def arm_that_turns(gap):
    """An arm 100 mm long turns from pointing up to pointing left at its pivot: its round end reaches 105 mm left."""
    arm = Rectangle(width=10, height=110, corner_radius=5)
    x = -300 + 10 + gap + 105
    around = shaft(arm, x, 50, turn=Turn(x=x, y=0.0, least=0.0, most=90.0))
    return case_before(around, x=300)


def firewall_behind_the_other(left):
    """A firewall that stands upright, given on a plate 80 mm farther forward."""
    wall = DepthLimit(id="wall", name="Firewall", plate="main", shape=SQUARE, x=-300, y=0, at_origin=50 + left - 80)
    return case_before(Surroundings(depth_limits=(wall,)), x=300, z=80)


def sloping_floor(left):
    """A floor that rises 45°: the plane is nearest to the case's lower back edge, 10 mm below its axis."""
    at_origin = 50 + 10 + left * sqrt(2)
    wide = Rectangle(width=200, height=200)
    floor = DepthLimit(
        id="floor", name="Floor", plate="main", shape=wide, x=-300, y=0, at_origin=at_origin, slope_y=1.0
    )
    return case_before(Surroundings(depth_limits=(floor,)), x=300)


KNOB = round_cutout(10.0, "knob", bodies=(body(BodyKind.KNOB, Circle(diameter=20), far=15.0),))


def knob_before(around, plate="side"):
    knob_cut, knob = fitted("k", 0, 0, "knob")
    plates = (sheet(cuts=(knob_cut,)), sheet(100, 100, id="side", name="Side", frame=Frame(x=300)))
    return project(*plates, items=(knob,), cutouts=(KNOB,), surroundings=given_on(plate, around))


def knob_to_shade(gap):
    return knob_before(keep_out(SQUARE, -300 + 10 + 10 + gap, 0, (-300.0, -5.0)))


def knob_to_yoke(gap):
    """A yoke comes toward the panel from 100 mm before it."""
    yoke = MovingPart(
        id="yoke",
        name="Yoke",
        plate="main",
        volume=volume(SQUARE, -300, 0, (-200.0, -100.0)),
        travels=(Travel(dz=85.0 - gap),),
    )
    return knob_before(Surroundings(moving_parts=(yoke,)))


def two_cases_on_one_plate():
    return panel(fitted("a", 0, 0), fitted("b", 10, 0))


@pytest.mark.parametrize("angle", [-90.0, -37.0, 0.0, 37.0, 90.0])
def test_a_turning_arm_is_no_smaller_than_the_truth(angle):
    """Wherever the arm's end comes to a case at 105 mm from its pivot, it is found."""
    arm = Rectangle(width=10, height=110, corner_radius=5)
    at = radians(90 + angle)
    x, y = -300 - 105 * cos(at), -105 * sin(at)
    around = shaft(arm, x, y + 50, turn=Turn(x=x, y=y, least=-90.0, most=90.0))
    assert len(found(case_before(around, x=300), "other-plates-obstacles")) == 1


CASES = [
    Case("plates-apart", two_plates, 3.175, 3.17, required=3.175, not_turned=UPRIGHT),
    Case("other-plates-obstacles", firewall_behind_the_other, 6.35, 6.34, required=6.35, not_turned=UPRIGHT),
    Case("other-plates-obstacles", sloping_floor, 6.3501, 6.34, required=6.35, not_turned=UPRIGHT),
    Case("other-plates-obstacles", arm_that_turns, 12.75, 12.65, required=12.7, accuracy=0.05, not_turned=UPRIGHT),
    Case("other-plates-front", knob_to_shade, 6.35, 6.34, required=6.35, not_turned=UPRIGHT),
    Case("other-plates-front", knob_to_yoke, 6.35, 6.34, required=6.35, not_turned=UPRIGHT),
]
IGNORED = [
    Ignored("plates-apart", "two cases of one plate", two_cases_on_one_plate),
    Ignored(
        "other-plates-obstacles",
        "a rib given on the case's own plate, which is judged exactly",
        lambda: case_before(rib(SQUARE, 0, 0), "main", x=300),
    ),
    Ignored(
        "other-plates-front",
        "a shade given on the knob's own plate, which is judged exactly",
        lambda: knob_before(keep_out(SQUARE, 0, 0, (-300.0, -5.0)), "main"),
    ),
]
