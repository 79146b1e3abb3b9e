from panelcad.editing.groups import group
from panelcad.editing.stack import place_stack
from panelcad.editing.taken_along import taken_along
from panelcad.library.catalogue import packaged_catalogue
from tests.editing import scenes


def test_a_unit_takes_its_whole_stack_along() -> None:
    units = [packaged_catalogue().cutouts[name] for name in ("rack-1-30", "rack-1-65")]
    project = place_stack(scenes.one_instrument(), "new", "main", units, 150.0, 100.0).project
    option = project.option("new")
    assert taken_along(project, option, ["rack-1-30"]) == {"rack-1-30", "stack"}
    assert taken_along(project, option, ["gauge"]) == {"gauge"}
    grouped = group(project, "new", ["stack", "gauge"])[0]
    assert taken_along(grouped, grouped.option("new"), ["rack-1-65"]) == {
        "gauge",
        "hole",
        "rack-1-30",
        "rack-1-65",
        "stack",
    }


def test_two_that_share_a_hole_without_rails_are_moved_apart() -> None:
    project = scenes.stack()
    assert taken_along(project, project.option("new"), ["upper"]) == {"upper"}
