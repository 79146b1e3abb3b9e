"""An item in its cut."""

from panelcad.model.cutout import SheetRange
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle
from tests.builders import SOURCE, item
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import bezel, body, fitted, instrument, panel

GRIP = SheetRange(least=1.0, most=4.0, source=SOURCE)


def gripping(thickness):
    return panel(fitted("a", 0, 0), cutouts=(instrument(grip=GRIP),), thickness=thickness)


def case_beside(room):
    """A case 70 mm wide in a round opening of 79.375: 4.6875 mm around it where it is in the middle."""
    shift = 4.6875 - room
    first, fit = fitted("a", 0, 0)
    return panel((first, fit.revised(x=shift)), cutouts=(instrument(bezel=bezel(200, 200)),))


def opening_beside(room):
    """A bezel 82.55 mm square over an opening of 79.375: 1.5875 mm to spare."""
    first, fit = fitted("a", 0, 0)
    return panel((first, fit.revised(x=1.5875 - room)), cutouts=(instrument(bodies=()),))


def shifted_in_its_cut(**fields):
    first, fit = fitted("a", 0, 0)
    return panel((first, fit.revised(x=30.0, **fields)))


CASES = [
    Case("grip", gripping, 1.0, 0.99, required=1.0),
    Case("grip", gripping, 4.0, 4.01, required=4.0),
    Case("case-through", case_beside, 0.0, -0.01, required=0.0, accuracy=0.001),
    Case("opening-shows", opening_beside, -0.25, -0.26, severity=Severity.WARNING, accuracy=0.001),
]


def gauge_with_or_without_its_cut(has_cut):
    first, fit = fitted("a", 0, 0)
    return panel((first, fit)) if has_cut else panel(items=(fit.revised(cut=None),))


CASES += [Case("no-cut", gauge_with_or_without_its_cut, passes=True, fails=False, measured=None)]
IGNORED = [
    Ignored("grip", "an item that grips nothing", lambda: panel(fitted("a", 0, 0), thickness=0.5)),
    Ignored("case-through", "what is fitted from behind", lambda: shifted_in_its_cut(mounting="rear")),
    Ignored("opening-shows", "what is fitted from behind", lambda: shifted_in_its_cut(mounting="rear")),
    Ignored(
        "no-cut",
        "a blank",
        lambda: panel(items=(item("a", 0, 0, "gauge"),), cutouts=(instrument(openings=(), bodies=()),)),
    ),
]


def test_what_is_fitted_from_behind_does_not_go_through():
    first, fit = fitted("a", 0, 0, mounting="rear")
    made = panel((first, fit.revised(x=30.0)))
    assert found(made, "case-through") == found(made, "opening-shows") == []


def test_an_item_without_a_cut():
    made = panel(items=(item("a", 0, 0, "gauge"),))
    assert len(found(made, "no-cut")) == 1
    blank = instrument(openings=(), bodies=())
    assert found(panel(items=(item("a", 0, 0, "gauge"),), cutouts=(blank,)), "no-cut") == []
    beside = instrument(bodies=(body(near=20.0, far=60.0, shape=Circle(diameter=20)),))
    assert found(panel(items=(item("a", 0, 0, "gauge"),), cutouts=(beside,)), "no-cut") == []
