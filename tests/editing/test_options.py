import pytest

from panelcad.editing.move import move_by
from panelcad.editing.options import copy_option, delete_option, move_option, option_from_as_found, rename_option
from panelcad.editing.place import place
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.plate import PlateState
from panelcad.model.project import AS_FOUND, Project
from panelcad.model.release import Release
from tests import builders
from tests.editing.scenes import one_instrument


def found() -> Project:
    return place(builders.project(), AS_FOUND, "main", builders.round_cutout(), 3.0, 4.0).project


def names(project: Project) -> list[tuple[str, str]]:
    return [(option.id, option.name) for option in project.all_options]


def test_a_new_option_starts_with_the_metal_as_it_was_found() -> None:
    made = option_from_as_found(found(), "Two screens")
    option = made.project.option(made.option_id)
    assert made.option_id == "two-screens"
    assert option.plates[0].state is PlateState.REWORKED
    assert option.plates[0].cuts == found().as_found.plates[0].cuts
    with pytest.raises(EditRefused, match="already in the metal"):
        move_by(made.project, made.option_id, ["round"], 1.0, 0.0)


def test_a_copy_is_independent_and_named_apart() -> None:
    made = copy_option(one_instrument(), "new")
    assert names(made.project) == [(AS_FOUND, "As found"), ("new", "New"), ("new-2", "New 2")]
    moved = move_by(made.project, made.option_id, ["gauge"], 1.0, 0.0)
    assert moved.option("new") is made.project.option("new")
    assert copy_option(found(), AS_FOUND).option_id == "option"


def test_options_are_renamed_reordered_and_deleted() -> None:
    project = copy_option(one_instrument(), "new", "Other").project
    assert names(rename_option(project, "new", "First", "Cheap"))[1] == ("new", "First")
    assert names(move_option(project, "other", 0))[1] == ("other", "Other")
    assert names(delete_option(project, "new")) == [(AS_FOUND, "As found"), ("other", "Other")]
    with pytest.raises(EditRefused, match="There is an option 'Other' already"):
        rename_option(project, "new", "Other")
    with pytest.raises(UnknownName, match="no option 'third'"):
        delete_option(project, "third")


def test_the_panel_as_found_and_released_options_stay() -> None:
    with pytest.raises(EditRefused, match="as found cannot be deleted"):
        delete_option(one_instrument(), AS_FOUND)
    with pytest.raises(EditRefused, match="comes first"):
        move_option(one_instrument(), AS_FOUND, 1)
    entry = Release(option="new", revision="A", on="2026-05-01", fingerprint="0000")
    with pytest.raises(EditRefused, match="was released and stays"):
        delete_option(one_instrument().revised(releases=(entry,)), "new")
