"""Openings of a sheet moved, changed and taken away by what they go by."""

import pytest

from panelcad.editing.move import move_by
from panelcad.editing.openings import is_opening, openings, revise_opening
from panelcad.editing.remove import remove
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.cutout import Opening
from panelcad.model.layout import layout
from panelcad.model.plate import PlateState
from panelcad.model.shape import Circle
from tests import builders

LAMP, YOKE = "main/inner opening 1", "main/inner opening 2"


def project(state: PlateState = PlateState.NEW):
    """A lamp's opening and the control column's, and one instrument."""
    two = tuple(
        Opening(shape=Circle(diameter=40.0), x=x, y=-60.0, purpose=purpose, source=builders.SOURCE)
        for x, purpose in ((-100.0, "lamp"), (100.0, "control column"))
    )
    plate = builders.sheet(state=state, cuts=(builders.cut("one-cut", 0.0, 50.0),), inner_openings=two)
    return builders.project(plate, items=(builders.item("one", 0.0, 50.0, cut="one-cut"),))


def of(project):
    return openings(project.option("new"))


def test_they_go_by_the_names_of_the_layouts_features() -> None:
    made = project()
    (plate,) = layout(made, made.option("new")).plates
    assert tuple(of(made)) == tuple(feature.id for feature in plate.inner) == (LAMP, YOKE)
    assert is_opening(LAMP)
    assert not is_opening("one-cut")


def test_one_moves_with_things_each_by_the_same() -> None:
    moved = move_by(project(), "new", ("one", YOKE), 5.0, -2.0)
    assert [(one.opening.x, one.opening.y) for one in of(moved).values()] == [(-100.0, -60.0), (105.0, -62.0)]
    assert (moved.option("new").item("one").x, moved.option("new").item("one").y) == (5.0, 48.0)


def test_both_are_taken_away_at_once() -> None:
    left = remove(project(), "new", (LAMP, YOKE))
    assert of(left) == {}
    assert left.option("new").item("one").id == "one"


def test_the_first_is_taken_away_and_the_other_stays() -> None:
    left = remove(project(), "new", (LAMP,))
    assert [one.opening.purpose for one in of(left).values()] == ["control column"]


def test_a_kept_sheet_holds_them() -> None:
    with pytest.raises(EditRefused, match="kept"):
        move_by(project(PlateState.KEPT), "new", (YOKE,), 1.0, 0.0)


def test_one_that_is_not_there_is_named() -> None:
    with pytest.raises(UnknownName, match="inner opening 9"):
        revise_opening(project(), "new", "main/inner opening 9", purpose="vent")
