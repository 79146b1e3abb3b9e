"""Corners and slivers. Closed forms: the radius as drawn; 180° less the turn at a re-entrant corner."""

from math import atan, degrees

from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle, Corner, FlattedCircle, Outline, Rectangle
from tests.builders import project, sheet
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import drilled, own_cut, panel


def corner_radius(radius):
    return panel(cuts=(own_cut("a", 5, 9, Rectangle(width=60, height=40, corner_radius=radius)),))


def outline(*points):
    return Outline(corners=tuple(Corner(x=x, y=y) for x, y in points))


def tongue(half_width):
    """A wedge of metal 40 mm deep and twice `half_width` wide at its root reaches into a window."""
    window = outline((-50, 0), (50, 0), (50, 60), (half_width, 60), (0, 20), (-half_width, 60), (-50, 60))
    return panel(cuts=(own_cut("a", 0, 0, window),))


def angle_of(half_width):
    return 2 * degrees(atan(half_width / 40))


SIX_TO_FIVE = 40 * 0.41421356237309503
"""Half the width at which the wedge has 45°: tan 22.5° = 0.4142."""

CASES = [
    Case("inside-corner", corner_radius, 0.5, 0.49, required=0.5, severity=Severity.WARNING),
    Case("inside-corner", corner_radius, 0.5, 0.0, severity=Severity.WARNING),
    Case("sliver", tongue, SIX_TO_FIVE + 1e-4, 16.0, measured=angle_of, required=45.0, severity=Severity.WARNING),
]
IGNORED = [
    Ignored(
        "inside-corner",
        "an old opening's corners and the flat of a keyed hole",
        lambda: panel(
            cuts=(
                own_cut("old", 0, 0, Rectangle(width=60, height=40), state=CutState.EXISTING),
                own_cut("flat", 200, 0, FlattedCircle(diameter=12, flat_depth=1.0)),
            )
        ),
    ),
    Ignored(
        "sliver",
        "a sharp corner of the window itself",
        lambda: panel(cuts=(own_cut("a", 0, 0, outline((0, 0), (80, 0), (0, 6))),)),
    ),
]


def test_old_corners_drilled_holes_and_keyed_holes_are_ignored():
    sharp = Rectangle(width=60, height=40)
    made = panel(
        cuts=(
            own_cut("old", 0, 0, sharp, state=CutState.EXISTING),
            drilled("screw", 100, 0),
            own_cut("flat", 200, 0, FlattedCircle(diameter=12, flat_depth=1.0)),
            own_cut("round", 300, 0, Circle(diameter=20)),
        )
    )
    assert found(made, "inside-corner") == []


def test_the_edge_of_a_new_sheet_has_inside_corners_where_it_is_notched():
    notched = outline((-300, -200), (300, -200), (300, 200), (50, 200), (50, 100), (-300, 100))
    for state, count in (("new", 1), ("reworked", 0)):
        made = project(sheet(outline=notched, state=state))
        assert [f.features for f in found(made, "inside-corner")] == [("main/edge",)] * count


def test_a_sharp_corner_of_the_window_itself_is_no_sliver():
    assert found(panel(cuts=(own_cut("a", 0, 0, outline((0, 0), (80, 0), (0, 6))),)), "sliver") == []
