import pytest

from panelcad.editing.clip import copy, from_text, paste, to_text
from panelcad.editing.place import place
from panelcad.errors import EditRefused, UnusableInput
from panelcad.model.plate import CutState, Engraving
from panelcad.model.project import AS_FOUND
from tests import builders
from tests.editing.scenes import one_instrument, stack, where


def test_an_instrument_is_pasted_with_its_cut_under_fresh_ids() -> None:
    project = one_instrument()
    pasted = paste(project, "new", "main", copy(project, "new", ["gauge"]), 100.0, 0.0)
    assert pasted.ids == ("gauge-2", "hole-2")
    assert where(pasted.project) | where(project) == where(pasted.project)
    assert where(pasted.project)["hole-2"] == (110.0, 20.0)
    assert pasted.project.option("new").item("gauge-2").cut == "hole-2"


def test_a_clip_survives_as_text_and_brings_its_cutout_to_another_project() -> None:
    clip = from_text(to_text(copy(one_instrument(), "new", ["hole"])))
    empty = builders.project(cutouts=())
    pasted = paste(empty, "new", "main", clip)
    assert where(pasted.project) == where(one_instrument())
    assert [cutout.name for cutout in pasted.project.cutouts] == ["round"]


def test_another_cutout_of_that_name_is_not_overwritten() -> None:
    clip = copy(one_instrument(), "new", ["gauge"])
    other = builders.project(cutouts=(builders.round_cutout(diameter=57.15),))
    pasted = paste(other, "new", "main", clip).project
    assert {c.name: c.openings[0].shape.diameter for c in pasted.cutouts} == {"round": 57.15, "round-2": 79.375}
    assert pasted.option("new").item("gauge").cutout == "round-2"
    assert pasted.option("new").plates[0].cuts[0].cutout == "round-2"


def test_an_old_cut_is_new_metal_where_it_is_pasted() -> None:
    old = one_instrument(state="existing")
    pasted = paste(old, "new", "main", copy(old, "new", ["gauge"]), 50.0, 0.0).project
    assert [cut.state for cut in pasted.option("new").plates[0].cuts] == [CutState.EXISTING, CutState.NEW]
    with pytest.raises(EditRefused, match="'Main panel' is kept"):
        paste(builders.project(builders.sheet(state="kept")), "new", "main", copy(old, "new", ["gauge"]))


def test_from_an_option_to_the_panel_as_found() -> None:
    project = one_instrument()
    pasted = paste(project, AS_FOUND, "main", copy(project, "new", ["gauge"])).project
    assert pasted.as_found.plates[0].cuts[0].state is CutState.EXISTING
    assert pasted.option("new") is project.option("new")


def test_one_unit_of_a_stack_is_copied_without_the_opening_and_all_of_them_with_it() -> None:
    assert copy(stack(), "new", ["upper"]).items[0].cut is None
    assert [cut.id for cut in copy(stack(), "new", ["upper", "lower"]).cuts] == ["bay"]


def test_an_item_and_its_cut_of_one_name_go_on_bearing_one() -> None:
    placed = place(builders.project(), "new", "main", builders.round_cutout(name="clock", bezel=None), 0.0, 0.0)
    again = paste(placed.project, "new", "main", copy(placed.project, "new", placed.ids), 90.0, 0.0)
    assert [cut.name for cut in again.project.option("new").plates[0].cuts] == ["Clock", "Clock 2"]


def test_engravings_are_copied_and_things_of_two_plates_are_not() -> None:
    words = Engraving(id="words", text="FLAPS", x=0.0, y=0.0, height=4.0)
    plates = (builders.sheet(engravings=(words,)), builders.sheet(id="side", cuts=(builders.cut("c", 0.0, 0.0),)))
    project = builders.project(*plates)
    pasted = paste(project, "new", "side", copy(project, "new", ["words"]), 0.0, 5.0)
    assert pasted.project.option("new").plate("side").engravings[0].id == "words-2"
    with pytest.raises(EditRefused, match="one plate"):
        copy(project, "new", ["words", "c"])


@pytest.mark.parametrize("text", ["", "hello", "{}x", '{"holds": "something else"}', "[" * 5000])
def test_other_text_on_the_clipboard_is_told_apart(text: str) -> None:
    with pytest.raises(UnusableInput, match="the clipboard: it holds no parts of a panel"):
        from_text(text)
