from panelcad.drawing.datum_words import datum_of
from panelcad.model.plate import Frame
from panelcad.outputs.dxf import cutting_plan
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
