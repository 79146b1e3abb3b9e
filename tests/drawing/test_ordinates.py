from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.inks import INKS, Ink
from panelcad.drawing.ordinates import PITCH, Mark, Shared, Surround, ordinates
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.front import front_page
from panelcad.geometry.point import Point
from panelcad.model.hole import HoleForm, HoleGroup, Spot
from tests import builders
from tests.drawing import papers

AROUND = Surround((100.0, 100.0, 300.0, 200.0), (50.0, 50.0, 350.0, 250.0), INKS[Ink.COLOUR], 2.5)


def mark(x: float, y: float, *, is_reference: bool = False) -> Mark:
    return Mark(Point(x, y), f"x{x:g}", f"y{y:g}", is_reference)


def words(*marks: Mark, around: Surround = AROUND) -> list[str]:
    found = ordinates(marks, around)
    assert found is not None
    return sorted(text.text for text in found.texts)


def test_features_in_line_share_one_ordinate():
    assert words(mark(150, 120), mark(150, 180), mark(250, 120)) == ["x150", "x250", "y120", "y180"]


def test_a_value_that_only_tells_what_is_there_stands_in_brackets():
    assert words(mark(150, 120, is_reference=True)) == ["(x150)", "(y120)"]
    assert words(mark(150, 120, is_reference=True), mark(150, 180)) == ["(y120)", "x150", "y180"]


def test_each_stands_at_the_side_it_is_nearer_to():
    found = ordinates([mark(110, 105), mark(290, 195)], AROUND)
    at = {text.text: text.at for text in found.texts}
    assert (at["x110"].y < 100, at["x290"].y > 200) == (True, True)
    assert (at["y105"].x < 100, at["y195"].x > 300) == (True, True)


@pytest.mark.parametrize(("shared", "side"), [(Shared.LOW, -1), (Shared.HIGH, 1)])
def test_all_may_stand_at_one_side(shared, side):
    around = Surround(AROUND.view, AROUND.area, AROUND.inks, 2.5, shared)
    found = ordinates([mark(110, 105), mark(290, 195)], around)
    assert all((text.at.x - 200) * side > 0 for text in found.texts if text.text.startswith("y"))


def test_a_side_too_short_for_its_ordinates_is_refused():
    crowd = [mark(100 + i * 2.0, 100.0) for i in range(100)]
    assert ordinates(crowd, Surround((100, 100, 300, 200), (90, 90, 310, 210), AROUND.inks, 2.5)) is None


@given(st.lists(st.tuples(st.floats(100, 300), st.floats(100, 200)), min_size=1, max_size=25))
def test_texts_never_touch_and_keep_the_order_of_their_values(spots):
    found = ordinates([mark(*spot) for spot in spots], AROUND)
    assert found is not None
    assert papers.overlapping(Sheet(400, 300, found.nodes, "")) == []
    below = sorted(text.at.x for text in found.texts if text.rotation == 90.0 and text.at.y < 100)
    assert all(b - a >= PITCH * 2.5 - 1e-6 for a, b in pairwise(below))


def test_a_plate_with_few_holes_has_an_ordinate_for_each():
    spots = (Spot(x=-80, y=-40), Spot(x=70, y=45))
    group = HoleGroup(form=HoleForm(diameter=4.3, fastener=3.5), spots=spots, source=builders.SOURCE)
    plate = builders.sheet(cuts=(builders.cut("a", 100, 20),), state="new")
    project = builders.project(plate, cutouts=(builders.round_cutout(holes=(group,)),))
    subject = papers.shown(project, project.options[0])
    written = {text.text for text in papers.texts(front_page(subject, subject.laid.plates[0]).nodes)}
    assert {"20.00", "100.00", "170.00", "65.00", "-20.00"} <= written


@pytest.mark.parametrize(("state", "wanted"), [("new", "300.00"), ("reworked", "(300.00)"), ("kept", "(300.00)")])
def test_edges_of_a_sheet_that_is_there_already_stand_in_brackets(state, wanted):
    project = builders.project(builders.sheet(state=state))
    subject = papers.shown(project, project.options[0])
    written = {text.text for text in papers.texts(front_page(subject, subject.laid.plates[0]).nodes)}
    assert written & {"300.00", "(300.00)"} == {wanted}
    assert "0" in written
