from panelcad.drawing.datum_words import datum_of, datum_on_part
from panelcad.model.layout import layout
from panelcad.model.plate import Frame
from panelcad.model.shape import Corner, Outline
from panelcad.outputs.dxf import cutting_plan
from panelcad.units import LengthUnit
from tests import builders


def test_a_plate_in_the_aircrafts_axes_begins_at_its_datum() -> None:
    project = builders.project()
    assert datum_of(project, builders.sheet()) == project.aircraft.datum


def test_a_plate_that_stands_elsewhere_says_so_on_its_cutting_file_too() -> None:
    plate = builders.sheet(frame=Frame(x=-299.72, y=233.68, z=-15.24))
    project = builders.project(plate)
    words = datum_of(project, plate)
    assert "own origin, which is at X -299.72, Y 233.68, Z -15.24" in words
    written = " ".join(label.text for label in cutting_plan(project, project.option("new"), plate.id).labels)
    assert "own origin" in written
    assert "-299.72" in written


def test_the_axes_are_found_from_the_edges_of_the_part() -> None:
    """The sheet of the builders is 600 x 300 about its origin."""

    def said(unit: LengthUnit = LengthUnit.MM, **fields) -> str:
        project = builders.project(builders.sheet(**fields))
        return datum_on_part(layout(project, project.option("new")).plates[0], unit)

    middle = "X 0 is half the width, 300.00 from the left and the right edge"
    assert said() == f"On the part: {middle}; Y 0 is half the height, 150.00 from the lower and the upper edge."
    corners = tuple(Corner(x=x, y=y) for x, y in ((0, -20), (100, -20), (100, 80), (0, 80)))
    assert (
        said(outline=Outline(corners=corners))
        == "On the part: X 0 is the left edge; Y 0 is 20.00 from the lower edge and 80.00 from the upper edge."
    )
    away = tuple(Corner(x=x, y=y) for x, y in ((25.4, 0), (127, 0), (127, 50.8), (25.4, 50.8)))
    assert (
        said(LengthUnit.INCH, outline=Outline(corners=away))
        == "On the part: X 0 is off the sheet, 1.000 from the left edge and 5.000 from the right edge; "
        "Y 0 is the lower edge."
    )
