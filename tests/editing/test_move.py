import pytest

from panelcad.editing.move import move_by, move_to
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.project import AS_FOUND, Option
from tests import builders
from tests.editing.scenes import one_instrument, stack, where


@pytest.mark.parametrize("named", ["gauge", "hole"])
def test_an_item_and_its_cut_move_as_one(named: str) -> None:
    moved = move_by(one_instrument(), "new", [named], 1.0, -2.0)
    assert where(moved) == {"gauge": (11.0, 18.0), "hole": (11.0, 18.0)}


def test_a_selection_of_both_moves_once() -> None:
    assert where(move_by(one_instrument(), "new", ["gauge", "hole"], 1.0, 0.0))["hole"] == (11.0, 20.0)


def test_one_unit_of_a_stack_moves_alone_and_the_opening_moves_them_all() -> None:
    assert where(move_by(stack(), "new", ["upper"], 0.0, 5.0)) == {
        "upper": (0.0, 25.0),
        "lower": (0.0, -20.0),
        "bay": (0.0, 0.0),
    }
    everything = {"upper": (3.0, 20.0), "lower": (3.0, -20.0), "bay": (3.0, 0.0)}
    assert where(move_by(stack(), "new", ["bay"], 3.0, 0.0)) == everything
    assert where(move_by(stack(), "new", ["upper", "lower"], 3.0, 0.0)) == everything


def test_a_place_given_in_numbers_is_reached_to_the_nanometre() -> None:
    moved = move_to(one_instrument(), "new", "gauge", 396.875, 0.1)
    assert where(moved) == {"gauge": (396.875, 0.1), "hole": (396.875, 0.1)}


@pytest.mark.parametrize("state", ["existing", "enlarged"])
def test_a_cut_already_in_the_metal_stays(state: str) -> None:
    with pytest.raises(EditRefused, match="The cut 'hole' is already in the metal of plate 'Main panel'"):
        move_by(one_instrument(state=state), "new", ["gauge"], 1.0, 0.0)


def test_on_a_new_plate_every_cut_moves() -> None:
    plate = builders.sheet(state="new", cuts=(builders.cut("hole", 0.0, 0.0, state="existing"),))
    assert where(move_by(builders.project(plate), "new", ["hole"], 1.0, 0.0)) == {"hole": (1.0, 0.0)}


def test_the_panel_as_found_may_be_corrected() -> None:
    plate = builders.sheet(state="kept", cuts=(builders.cut("hole", 0.0, 0.0, state="existing"),))
    found = builders.project(as_found=Option(id=AS_FOUND, name="As found", plates=(plate,)))
    assert move_by(found, AS_FOUND, ["hole"], 1.0, 0.0).as_found.plates[0].cuts[0].x == 1.0


def test_what_is_not_there_is_named() -> None:
    with pytest.raises(UnknownName, match="no placed part 'gauje'; there is 'gauge'"):
        move_by(one_instrument(), "new", ["gauje"], 1.0, 0.0)


def test_what_does_not_move_is_shared() -> None:
    before = one_instrument()
    assert move_by(before, "new", ["gauge"], 0.0, 0.0) is before
    after = move_by(before, "new", ["gauge"], 1.0, 0.0)
    assert after.as_found is before.as_found
    assert after.option("new").plates[0].outline is before.option("new").plates[0].outline
