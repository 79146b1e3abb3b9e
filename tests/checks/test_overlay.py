"""Overlays against the sheet below."""

import pytest

from panelcad.model.plate import CutState, Frame
from panelcad.model.shape import Circle, Rectangle
from tests.builders import project, sheet
from tests.checks.cases import Case, Ignored, found, unknown
from tests.checks.made import own_cut


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
    assert unknown(made, "overlay-cut") == [(("face",), "how an overlay that is not parallel lies on its sheet")]


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


def window_in_overlay(is_cut_below):
    below = (own_cut("below", 0, 0, Circle(diameter=50)),) if is_cut_below else ()
    return project(sheet(cuts=below), overlay(own_cut("above", 0, 0, Circle(diameter=50))))


def covered_old_cut():
    old = own_cut("below", 0, 0, Circle(diameter=50), state=CutState.EXISTING)
    return project(sheet(cuts=(old,)), overlay())


CASES = [
    Case("overlay-cut", over, 0.0, -0.01, accuracy=0.001),
    Case("overlay-alone", window_in_overlay, passes=True, fails=False, measured=None),
]
IGNORED = [
    Ignored("overlay-cut", "an old cut that nothing uses", covered_old_cut),
    Ignored("overlay-alone", "a cut of the overlay over one of the sheet", lambda: over(1.0)),
]
