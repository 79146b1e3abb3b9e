"""The panel as found takes the outline that is drawn first of all, and nothing that comes later."""

from panelcad.editing.blank import blank_project
from panelcad.editing.options import copy_option
from panelcad.editing.outline import set_outline
from panelcad.editing.place import place
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.plate import PlateState
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.units import LengthUnit

FIRST, LATER = Rectangle(width=800.0, height=200.0), Rectangle(width=700.0, height=200.0)


def drawn(project: Project, shape: Rectangle) -> Project:
    return set_outline(project, "option-1", "panel", shape)


def test_the_outline_drawn_first_is_the_panel_as_found() -> None:
    project = drawn(drawn(blank_project(LengthUnit.MM), LATER), FIRST)
    found = project.as_found.plate("panel")
    assert (found.outline, found.state) == (FIRST, PlateState.KEPT)
    assert project.option("option-1").plate("panel").outline == FIRST


def test_once_something_stands_there_the_panel_as_found_stays() -> None:
    begun = drawn(blank_project(LengthUnit.MM), FIRST)
    fitted = place(begun, "option-1", "panel", packaged_catalogue().cutout("airspeed-3-1-8"), 0.0, 100.0).project
    for project in (fitted, copy_option(begun, "option-1").project):
        changed = drawn(project, LATER)
        assert changed.as_found.plate("panel").outline == FIRST
        assert changed.option("option-1").plate("panel").outline == LATER
