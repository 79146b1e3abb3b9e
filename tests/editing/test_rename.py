import pytest

from panelcad.editing.rename import rename
from panelcad.errors import UnknownName
from tests import builders
from tests.editing.scenes import one_instrument, stack


def test_an_item_keeps_its_id_and_its_own_cut_follows_while_it_bears_the_same_name() -> None:
    plate = builders.sheet(cuts=(builders.cut("hole", 0.0, 0.0, name="gauge"),))
    same = builders.project(plate, items=(builders.item("gauge", 0.0, 0.0, cut="hole"),))
    option = rename(same, "new", "gauge", "Fuel").option("new")
    assert (option.item("gauge").name, option.plates[0].cuts[0].name) == ("Fuel", "Fuel")


def test_a_cut_with_a_name_of_its_own_or_with_several_items_keeps_it() -> None:
    assert rename(one_instrument(), "new", "gauge", "Fuel").option("new").plates[0].cuts[0].name == "hole"
    assert rename(stack(), "new", "upper", "Audio").option("new").plates[0].cuts[0].name == "bay"


def test_what_is_not_there_is_named() -> None:
    with pytest.raises(UnknownName, match="no part 'x'"):
        rename(stack(), "new", "x", "y")
