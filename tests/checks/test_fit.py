"""An item in its cut."""

import pytest

from panelcad.model.cutout import SheetRange
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle
from tests.builders import SOURCE, item
from tests.checks.cases import Case, found, holds
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


CASES = [
    Case("grip", gripping, 1.0, 0.99, required=1.0),
    Case("grip", gripping, 4.0, 4.01, required=4.0),
    Case("case-through", case_beside, 0.0, -0.01, required=0.0, accuracy=0.001),
    Case("opening-shows", opening_beside, -0.25, -0.26, severity=Severity.WARNING, accuracy=0.001),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_inside_outside_and_copies(case):
    holds(case)


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
