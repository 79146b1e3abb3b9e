"""Items of which nobody said what equipment they are: what is not known is never zero."""

from panelcad.editing.options import copy_option
from panelcad.editing.place import place
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.project import Project
from panelcad.planning.compare import Comparison, compare
from panelcad.planning.equipment import equipment
from panelcad.planning.nameless import nameless
from tests import builders

_PLACED = ("airspeed-3-1-8", "rack-com", "toggle", "breaker", "jack-headphone", "lamp-1-2", "blank-3-1-8", "vent")


def laid_out() -> Project:
    """A panel placed from the library, and a second option like it."""
    project = builders.project(builders.sheet(width=1200.0))
    for number, name in enumerate(_PLACED):
        at = -500.0 + 120.0 * number
        project = place(project, "new", "main", packaged_catalogue().cutout(name), at, 0.0).project
    return copy_option(project, "new").project


def cells(title: str, compared: Comparison) -> list[str]:
    return next([cell.text for cell in row.cells] for row in compared.rows if row.title == title)


def test_controls_and_hardware_of_the_panel_are_no_equipment() -> None:
    project = laid_out()
    assert [item.cutout for item in nameless(project, project.option("new"))] == ["airspeed-3-1-8", "rack-com"]
    assert equipment(project, project.as_found).nameless == ()


def test_what_is_not_known_is_never_zero_side_by_side() -> None:
    compared = compare(laid_out())
    assert cells("Units of equipment", compared)[1] == "0, 2 items without equipment"
    assert cells("Equipment", compared)[1] == "not known: 2 items without equipment"
    assert cells("Total", compared)[1] == "not known"
    assert cells("More than the least option", compared) == ["", "not known", "not known"]
    assert cells("Change of empty weight", compared)[1].endswith("and 2 unknown items")
    assert cells("New empty weight", compared)[1] == "not known"
