import pytest

from panelcad.editing.rotate import rotate_by
from panelcad.editing.stack import add_to_stack, place_stack
from panelcad.editing.stack_order import place_in_order, stack_at, step_in_stack, units_from_above
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.project import Project
from tests import builders
from tests.editing import scenes

NAMES = ("rack-1-30", "rack-1-65", "rack-2-00")


def stacked() -> Project:
    units = [packaged_catalogue().cutouts[name] for name in NAMES]
    return place_stack(builders.project(builders.sheet(height=400.0)), "new", "main", units, 0.0, 150.0).project


def order(project: Project) -> list[str]:
    option = project.option("new")
    return [unit.id for unit in units_from_above(option, option.plates[0].cuts[0])]


@pytest.mark.parametrize(
    ("unit", "by", "after"),
    [(0, 1, (1, 0, 2)), (2, -1, (0, 2, 1)), (0, -1, (0, 1, 2)), (2, 1, (0, 1, 2)), (0, 5, (1, 2, 0))],
)
def test_a_step_up_or_down_ends_at_the_ends(unit, by, after) -> None:
    assert order(step_in_stack(stacked(), "new", NAMES[unit], by)) == [NAMES[i] for i in after]


def test_above_and_below_are_the_stack_s_own() -> None:
    turned = rotate_by(stacked(), "new", ["stack"], 180.0)
    assert order(step_in_stack(turned, "new", NAMES[0], 1)) == [NAMES[1], NAMES[0], NAMES[2]]


def test_what_is_in_no_stack_is_refused() -> None:
    with pytest.raises(EditRefused, match="in no stack"):
        step_in_stack(scenes.one_instrument(), "new", "gauge", 1)


@pytest.mark.parametrize(("over", "nearly", "past"), [(1, 0, 1), (2, 1, 2)])
def test_a_unit_goes_past_its_neighbour_at_that_one_s_middle(over, nearly, past) -> None:
    project = stacked()
    option = project.option("new")
    middle = option.item(NAMES[over])
    places = [place_in_order(project, option, NAMES[0], Point(middle.x, middle.y + up)) for up in (0.5, -0.5)]
    assert places == [nearly, past]


def test_outside_its_own_stack_a_unit_has_no_place_in_the_order() -> None:
    project = stacked()
    option = project.option("new")
    assert place_in_order(project, option, NAMES[0], Point(200.0, 0.0)) is None
    gauge = scenes.one_instrument()
    assert place_in_order(gauge, gauge.option("new"), "gauge", Point(10.0, 20.0)) is None


def test_a_unit_held_over_a_stack_goes_where_the_pointer_is() -> None:
    project = stacked()
    middle = project.option("new").item(NAMES[1])
    found = stack_at(project, project.option("new"), "main", Point(middle.x, middle.y + 3.0))
    assert found == ("stack", 1)
    assert stack_at(project, project.option("new"), "main", Point(200.0, 0.0)) is None
    added = add_to_stack(project, "new", "stack", packaged_catalogue().cutouts[NAMES[0]], 1)
    assert order(added.project).index(added.ids[0]) == 1
