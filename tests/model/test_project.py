import pytest
from pydantic import ValidationError

from panelcad.errors import UnknownName
from tests import builders


def test_an_option_is_found_by_id_or_name_and_a_slip_is_helped() -> None:
    project = builders.project()
    assert project.option("New") is project.option("new")
    with pytest.raises(UnknownName, match="there is 'new'"):
        project.option("nwe")


@pytest.mark.parametrize(
    "items",
    [
        (builders.item("i", 0, 0, cut="nowhere"),),
        (builders.item("i", 0, 0, plate="nowhere"),),
        (builders.item("i", 0, 0, cutout="unknown"),),
        (builders.item("i", 0, 0), builders.item("i", 5, 5)),
        (builders.item("i", 0, 0, plate=None, cut="c"),),
    ],
)
def test_parts_that_do_not_hang_together_are_refused(items: tuple[builders.Item, ...]) -> None:
    with pytest.raises(ValidationError):
        builders.project(builders.sheet(cuts=(builders.cut("c", 0, 0),)), items=items)


def test_an_item_may_wait_to_be_placed() -> None:
    waiting = builders.item("i", 0, 0, plate=None)
    assert builders.project(items=(waiting,)).option("new").item("i").plate is None


def test_a_cut_is_a_cutout_or_its_own_openings_and_not_both() -> None:
    with pytest.raises(ValidationError, match="either a cutout or openings"):
        builders.cut("c", 0, 0, cutout=None)
    with pytest.raises(ValidationError, match="either a cutout or openings"):
        builders.cut("c", 0, 0, openings=(builders.opening(builders.Circle(diameter=5)),))
