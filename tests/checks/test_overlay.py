"""Overlays, and bodies of two plates."""

import pytest

from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.plate import CutState, Frame
from panelcad.model.shape import Circle, Rectangle
from tests.builders import project, sheet
from tests.checks.cases import found
from tests.checks.made import body, fitted, instrument, own_cut


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
    assert all(f.acceptable == (gap >= 0) for f in findings)


def test_a_canted_plate():
    """Canted 90°, the second plate's depth runs to the left: its box reaches from 70 - 50 to 70 mm, 10 mm away."""
    assert found(two_plates(50 - 20 + 20, cant=90), "plates-apart") == []
    (finding,) = found(two_plates(50 - 20 + 12, cant=90), "plates-apart")
    assert finding.measured == pytest.approx(2.0)
