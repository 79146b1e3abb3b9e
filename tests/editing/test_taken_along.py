from panelcad.editing.groups import group
from panelcad.editing.stack import place_stack
from panelcad.editing.taken_along import bring_to, taken_along
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


def test_a_unit_brought_to_a_place_brings_its_stack() -> None:
    units = [packaged_catalogue().cutouts[name] for name in ("rack-1-30", "rack-1-65")]
    project = place_stack(scenes.one_instrument(), "new", "main", units, 150.0, 100.0).project
    before, after = scenes.where(project), scenes.where(bring_to(project, "new", "rack-1-65", 140.0, 20.0))
    assert after["rack-1-65"] == (140.0, 20.0)
    down = 20.0 - before["rack-1-65"][1]
    assert after["rack-1-30"] == (140.0, round(before["rack-1-30"][1] + down, 6))
    assert after["stack"] == (140.0, round(before["stack"][1] + down, 6))
    assert after["gauge"] == before["gauge"]
