"""Edge distance in nominal diameters D: 2 D plain, 2 1/2 D countersunk (AC 43.13-1B 4-57, by common practice)."""

from panelcad.model.finding import Severity
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle
from tests.builders import cut, round_cutout
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import attach, countersunk, drilled, four_screws, nutplate_form, own_cut, panel, screw_form

D = 3.175
"""An eighth of an inch, as in the handbook's case: 0.249 in fails, 0.250 in passes."""


def plain_to_cut(distance):
    """From a screw's centre to the edge of a 40 mm hole."""
    hole = drilled("screw", 0, 0, screw_form(diameter=3.3, fastener=D))
    return panel(cuts=(hole, own_cut("b", 20 + distance, 0, Circle(diameter=40))))


def countersunk_to_cut(distance):
    hole = drilled("screw", 0, 0, countersunk(diameter=3.3, fastener=D))
    return panel(cuts=(hole, own_cut("b", 20 + distance, 0, Circle(diameter=40))))


def plain_to_edge(distance):
    return panel(attach_screws=(attach("s1", 450 - distance, 0, screw_form(diameter=3.3, fastener=D)),), state="new")


def countersunk_to_edge(distance):
    return panel(attach_screws=(attach("s1", 0, 300 - distance, countersunk(diameter=3.3, fastener=D)),), state="new")


def rivets(pitch):
    """Two nutplates in line, 17.5 mm between their own rivets; the nearest two rivets are `pitch` apart."""
    return panel(
        attach_screws=(attach("s1", 0, 0, nutplate_form()), attach("s2", 17.5 + pitch, 0, nutplate_form())),
        state="new",
    )


INCH = 25.4
CASES = [
    Case("edge-distance", plain_to_cut, 0.250 * INCH, 0.249 * INCH, required=2 * D),
    Case("edge-distance", countersunk_to_cut, 2.5 * D, 2.5 * D - 0.001, required=2.5 * D),
    Case("edge-distance-outline", plain_to_edge, 0.250 * INCH, 0.249 * INCH, required=2 * D),
    Case("edge-distance-outline", countersunk_to_edge, 2.5 * D, 2.5 * D - 0.001, required=2.5 * D),
    Case("rivet-pitch", rivets, 7.2, 7.19, required=7.2),
]
IGNORED = [
    Ignored(
        "edge-distance",
        "the screw's own opening",
        lambda: panel(cuts=(cut("a", 0, 0),), cutouts=(round_cutout(holes=(four_screws(),)),)),
    ),
    Ignored(
        "edge-distance-outline",
        "an old hole that holds no screw",
        lambda: panel(cuts=(drilled("screw", 448, 0, state=CutState.EXISTING),)),
    ),
    Ignored(
        "rivet-pitch",
        "a plain screw beside a rivet",
        lambda: panel(attach_screws=(attach("s1", 0, 0, nutplate_form()), attach("s2", 12.0, 0)), state="new"),
    ),
]


def test_the_own_opening_is_left_to_the_cutouts_own_limit():
    """From the screw's centre to its own 3-1/8 in opening are 4.76 mm, less than 2 D of a #6 screw (7.01 mm)."""
    made = panel(cuts=(cut("a", 0, 0),), cutouts=(round_cutout(holes=(four_screws(),)),))
    assert found(made, "edge-distance") == []


def test_an_old_hole_that_nothing_uses_holds_no_screw():
    hole = drilled("screw", 0, 0, screw_form(diameter=3.3, fastener=D), state=CutState.EXISTING)
    assert found(panel(cuts=(hole, own_cut("b", 25, 0, Circle(diameter=40)))), "edge-distance") == []


def test_old_among_old_is_advice():
    old = CutState.EXISTING
    made = panel(attach_screws=(attach("s1", 0, 0),), cuts=(own_cut("b", 25, 0, Circle(diameter=40), state=old),))
    assert [f.severity for f in found(made, "edge-distance")] == [Severity.ADVICE]
