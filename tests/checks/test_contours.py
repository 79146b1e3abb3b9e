"""Rules about contours that cannot be cut."""

import pytest

from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle, Corner, Outline, Rectangle
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import attach, body, fitted, instrument, own_cut, panel

OLD = CutState.EXISTING


def two(distance, **states):
    """Two circles of 50 and 30 mm; their gap is the distance of the centres less 40."""
    return panel(
        cuts=(own_cut("a", 0, 0, Circle(diameter=50), **states), own_cut("b", 40 + distance, 0, Circle(diameter=30)))
    )


def small(size):
    return panel(cuts=(own_cut("a", 20, 10, Rectangle(width=20, height=size)),))


def stubby(length):
    """An L whose notch is `length` deep: its shortest piece."""
    corners = ((0, 0), (40, 0), (40, 30), (20, 30), (20, 30 - length), (0, 30 - length))
    return panel(cuts=(own_cut("a", 0, 0, Outline(corners=tuple(Corner(x=x, y=y) for x, y in corners))),))


def bow(*points):
    return Outline(corners=tuple(Corner(x=x, y=y) for x, y in points))


CASES = [
    Case("overlap", two, 0.0, -0.01, required=0.0),
    Case("overlap", two, 0.0, -10.0),
    Case("tiny-cut", small, 1.0, 0.99, required=1.0, severity=Severity.WARNING),
    Case("short-piece", stubby, 0.05, 0.049, required=0.05, severity=Severity.WARNING),
]


def twice(apart):
    """The same round cut again, `apart` beside itself: one contour when no side differs by 0.01 mm."""
    return panel(cuts=(own_cut("a", 0, 0, Circle(diameter=50)), own_cut("b", apart, apart, Circle(diameter=50))))


def four_corners(crossed):
    corners = ((0, 0), (40, 40), (40, 0), (0, 60)) if crossed else ((0, 0), (40, 0), (40, 40), (0, 60))
    return panel(cuts=(own_cut("a", 0, 0, bow(*corners)),))


CASES += [
    Case("doubled", twice, 0.02, 0.004, measured=None),
    Case("self-crossing", four_corners, passes=False, fails=True, measured=None),
]
IGNORED = [
    Ignored(
        "overlap",
        "an old cut that is gone in a new opening",
        lambda: panel(
            cuts=(own_cut("old", 0, 0, Circle(diameter=20), state=OLD), own_cut("new", 2, 1, Circle(diameter=60)))
        ),
    ),
    Ignored(
        "doubled",
        "a cut of another size about the same centre",
        lambda: panel(cuts=(own_cut("a", 0, 0, Circle(diameter=50)), own_cut("b", 0, 0, Circle(diameter=30)))),
    ),
    Ignored(
        "self-crossing",
        "two cuts that cross each other",
        lambda: panel(cuts=(own_cut("a", 0, 0, Circle(diameter=50)), own_cut("b", 30, 0, Circle(diameter=50)))),
    ),
    Ignored(
        "tiny-cut",
        "a slender knob",
        lambda: panel(
            fitted("a", 0, 0),
            cutouts=(instrument(bodies=(body(BodyKind.KNOB, Circle(diameter=0.5), far=15.0),)),),
        ),
    ),
    Ignored(
        "short-piece",
        "the short straight between two round ends",
        lambda: panel(cuts=(own_cut("a", 0, 0, Rectangle(width=20, height=10.02, corner_radius=5.0)),)),
    ),
]


def test_overlap_can_never_be_accepted_and_its_cure_parts_the_cuts():
    (finding,) = found(two(-10.0), "overlap")
    assert not finding.acceptable
    assert found(two(-10.0 + finding.cure.dx), "overlap") == []


def test_an_old_cut_wholly_in_a_new_opening_is_gone():
    """Nothing is said of it: no overlap, and none of its webs."""
    made = panel(cuts=(own_cut("old", 0, 0, Circle(diameter=20), state=OLD), own_cut("new", 2, 1, Circle(diameter=60))))
    assert found(made, "overlap") == found(made, "web") == []


def test_a_new_cut_in_an_old_opening_cuts_air():
    made = panel(cuts=(own_cut("old", 0, 0, Circle(diameter=60), state=OLD), own_cut("new", 2, 1, Circle(diameter=20))))
    assert len(found(made, "overlap")) == 1


def test_an_attach_screw_is_never_swallowed():
    made = panel(cuts=(own_cut("new", 2, 1, Circle(diameter=60)),), attach_screws=(attach("s1", 0, 0),))
    assert len(found(made, "overlap")) == 1


def test_old_cuts_that_overlap_are_advice():
    made = panel(
        cuts=(
            own_cut("a", 0, 0, Circle(diameter=50), state=OLD),
            own_cut("b", 30, 0, Circle(diameter=30), state=OLD),
        )
    )
    assert [f.severity for f in found(made, "overlap")] == [Severity.ADVICE]


@pytest.mark.parametrize(("shift", "count"), [(0.0, 1), (0.009, 1), (0.5, 0)])
def test_the_same_cut_twice(shift, count):
    made = panel(cuts=(own_cut("a", 0, 0, Circle(diameter=50)), own_cut("b", shift, 0, Circle(diameter=50))))
    assert len(found(made, "doubled")) == count
    assert len(found(made, "overlap")) == 1 - count


def test_a_contour_that_crosses_itself():
    crossed = bow((0, 0), (40, 40), (40, 0), (0, 60))
    (finding,) = found(panel(cuts=(own_cut("a", 0, 0, crossed),)), "self-crossing")
    assert finding.where[0] == pytest.approx((24.0, 24.0))
    assert not finding.acceptable
    assert found(panel(cuts=(own_cut("a", 0, 0, bow((0, 0), (40, 0), (40, 40))),)), "self-crossing") == []


def test_an_outline_that_crosses_itself():
    made = panel()
    plate = made.option("new").plates[0].revised(outline=bow((0, 0), (400, 400), (400, 0), (0, 600)))
    made = made.with_option(made.option("new").revised(plates=(plate,)))
    assert len(found(made, "self-crossing")) == 1
