import pytest

from panelcad.editing.blank import blank_project
from panelcad.editing.options import copy_option
from panelcad.editing.take_in import TakenOpening, TakenSheet, take_in_found, take_in_sheet
from panelcad.errors import EditRefused
from panelcad.model.plate import CutState, PlateState
from panelcad.model.project import AS_FOUND
from panelcad.model.shape import Circle, Corner, Outline, Rectangle
from panelcad.units import LengthUnit
from tests.builders import cut, project, sheet

DRAWN = TakenSheet(
    Rectangle(width=500.0, height=200.0),
    (TakenOpening(Circle(diameter=80.0), 10.0, 5.0), TakenOpening(Rectangle(width=20.0, height=10.0), -60.0, 0.0)),
    "old.dxf",
)


def test_the_outline_is_replaced_and_openings_become_cuts():
    made = take_in_sheet(project(sheet(state="new", cuts=(cut("drawn-1", 100.0, 0.0),))), "new", "main", DRAWN)
    plate = made.option("new").plate("main")

    assert plate.outline == DRAWN.outline
    assert [(c.id, c.x, c.y, c.state) for c in plate.cuts[1:]] == [
        ("drawn-2", 10.0, 5.0, CutState.NEW),
        ("drawn-3", -60.0, 0.0, CutState.NEW),
    ]
    assert plate.cuts[1].openings[0].source.text == "read from old.dxf"


def test_on_the_panel_as_found_they_exist_already():
    made = take_in_sheet(project(), AS_FOUND, "main", DRAWN)

    assert {c.state for c in made.as_found.plate("main").cuts} == {CutState.EXISTING}


def test_a_kept_plate_and_a_crossing_outline_are_refused():
    crossing = Outline(corners=tuple(Corner(x=x, y=y) for x, y in ((0, 0), (100, 0), (100, 50), (80, -20), (0, 60))))

    with pytest.raises(EditRefused, match="is kept as it is"):
        take_in_sheet(project(sheet(state="kept")), "new", "main", DRAWN)
    with pytest.raises(EditRefused, match="cross"):
        take_in_sheet(project(), "new", "main", TakenSheet(crossing))


def test_the_sheet_that_was_begun_with_gives_way_as_found_too():
    made = take_in_sheet(blank_project(LengthUnit.MM), "option-1", "panel", DRAWN)

    assert made.as_found.plate("panel").outline == DRAWN.outline
    assert made.as_found.plate("panel").cuts == ()
    assert {c.state for c in made.option("option-1").plate("panel").cuts} == {CutState.NEW}


def test_once_there_is_another_option_the_panel_as_found_stays():
    begun = copy_option(blank_project(LengthUnit.MM), "option-1").project
    made = take_in_sheet(begun, "option-1", "panel", DRAWN)

    assert made.as_found is begun.as_found


def test_the_panel_in_the_aircraft_is_what_the_option_starts_from():
    made = take_in_found(blank_project(LengthUnit.MM), "panel", DRAWN)
    found, begun = made.as_found.plate("panel"), made.option("option-1").plate("panel")

    assert (found.outline, found.state, begun.state) == (DRAWN.outline, PlateState.KEPT, PlateState.REWORKED)
    assert {c.state for c in found.cuts} == {CutState.EXISTING}
    assert begun == found.revised(state=PlateState.REWORKED)


def test_an_option_that_was_worked_on_stays_when_the_panel_as_found_is_taken_in():
    worked_on = take_in_sheet(blank_project(LengthUnit.MM), "option-1", "panel", DRAWN)
    made = take_in_found(worked_on, "panel", TakenSheet(Rectangle(width=600.0, height=250.0)))

    assert made.as_found.plate("panel").outline == Rectangle(width=600.0, height=250.0)
    assert made.option("option-1") == worked_on.option("option-1")
