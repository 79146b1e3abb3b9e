import pytest

from panelcad.editing.remove import remove
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.project import Project
from tests import builders
from tests.editing.scenes import one_instrument, stack


def left(project: Project) -> set[str]:
    option = project.option("new")
    return {thing.id for thing in (*option.items, *option.plates[0].cuts)}


@pytest.mark.parametrize("named", ["gauge", "hole"])
def test_an_item_and_its_new_cut_go_together(named: str) -> None:
    assert left(remove(one_instrument(), "new", [named])) == set()


def test_the_opening_of_a_stack_goes_with_its_last_unit() -> None:
    without_upper = remove(stack(), "new", ["upper"])
    assert left(without_upper) == {"lower", "bay"}
    assert left(remove(without_upper, "new", ["lower"])) == set()
    assert left(remove(stack(), "new", ["bay"])) == set()


@pytest.mark.parametrize("named", ["gauge", "hole"])
def test_a_cut_already_in_the_metal_stays_when_its_item_goes(named: str) -> None:
    assert left(remove(one_instrument(state="existing"), "new", [named])) == {"hole"}


def test_an_empty_cut_in_the_metal_cannot_be_taken_back() -> None:
    plate = builders.sheet(cuts=(builders.cut("old", 0.0, 0.0, state="existing"),))
    with pytest.raises(EditRefused, match=r"'old' is already in the metal.*cover it with a blank"):
        remove(builders.project(plate), "new", ["old"])


def test_what_is_not_there_is_named() -> None:
    with pytest.raises(UnknownName, match="no part 'gauges'; there is 'gauge'"):
        remove(one_instrument(), "new", ["gauges"])
