import pytest

from panelcad.editing.take_in import TakenOpening, TakenSheet, take_in_sheet
from panelcad.errors import EditRefused
from panelcad.model.plate import CutState
from panelcad.model.project import AS_FOUND
from panelcad.model.shape import Circle, Corner, Outline, Rectangle
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
