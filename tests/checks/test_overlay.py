"""Overlays, and bodies of two plates."""

import pytest

from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.plate import CutState, Frame, Sway
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.travel import Travel
from tests.builders import project, sheet
from tests.checks.cases import found
from tests.checks.made import body, fitted, instrument, own_cut, rib, shaft


def overlay(*cuts, **fields):
    plain = {"id": "face", "name": "Overlay", "role": "overlay", "over": "main", "cuts": cuts}
    return sheet(**plain | fields)


def over(room, **fields):
    """A hole of 50 mm under a window with `room` around it."""
    below = sheet(cuts=(own_cut("below", 0, 0, Circle(diameter=50)),))
    return project(below, overlay(own_cut("above", 0, 0, Circle(diameter=50 + 2 * room)), **fields))


@pytest.mark.parametrize(("room", "count"), [(1.0, 0), (0.0, 0), (-0.01, 1)])
def test_a_cut_holds_or_matches_the_one_below(room, count):
    findings = found(over(room), "overlay-cut")
    assert [f.measured for f in findings] == [pytest.approx(room, abs=0.001)] * count


def test_a_shifted_overlay_is_compared_where_it_lies():
    assert len(found(over(2.0, frame=Frame(x=2.01)), "overlay-cut")) == 1
    assert found(over(2.0, frame=Frame(x=2.0)), "overlay-cut") == []
    assert len(found(over(2.0, frame=Frame(x=2.01, tilt=5)), "overlay-cut")) == 0
    made = over(2.0, frame=Frame(tilt=5))
    assert [u.rule for u in check(made, made.option("new")).unknown] == ["overlay-cut"]


def test_a_covered_cut_is_an_error_unless_it_is_old_and_unused():
    for state, count in ((CutState.NEW, 1), (CutState.EXISTING, 0)):
        below = sheet(cuts=(own_cut("below", 0, 0, Circle(diameter=50), state=state),))
        assert len(found(project(below, overlay()), "overlay-cut")) == count


def test_a_cut_beside_the_overlay_is_ignored():
    below = sheet(cuts=(own_cut("below", 200, 0, Circle(diameter=50)),))
    made = project(below, overlay(outline=Rectangle(width=300, height=200)))
    assert found(made, "overlay-cut") == []


def test_an_overlay_that_is_cut_where_the_sheet_is_not():
    made = project(sheet(), overlay(own_cut("above", 0, 0, Circle(diameter=50))))
    assert [f.items for f in found(made, "overlay-alone")] == [("above", "face")]


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


@pytest.mark.parametrize(
    ("travels", "gap", "count"),
    [(None, 6.35, 0), (None, 6.34, 1), ((Travel(dx=-30.0),), 12.7, 0), ((Travel(dx=-30.0),), 12.6, 1), ((), 0.0, 0)],
)
def test_bodies_against_what_stands_behind_another_plate(travels, gap, count):
    findings = found(beside_the_other_plates_rib(gap, travels), "other-plates-obstacles")
    assert [f.measured for f in findings] == [pytest.approx(gap)] * count
