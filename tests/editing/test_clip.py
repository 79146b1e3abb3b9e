import pytest

from panelcad.editing.clip import copy, from_text, left_out, paste, to_text
from panelcad.editing.clip_marks import attached
from panelcad.editing.groups import group
from panelcad.editing.label_row import Side, label_row
from panelcad.editing.marks import add_dimension, add_note
from panelcad.editing.place import place
from panelcad.editing.row import Row, place_row
from panelcad.errors import EditRefused, UnusableInput
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.markup import Along, DrawingNote, Hold, Hook
from panelcad.model.plate import CutState, Engraving
from panelcad.model.project import AS_FOUND, Project
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


def dimensioned() -> Project:
    """Two instruments, a dimension between them, one from the datum, and a note that points at the first."""
    cuts = (builders.cut("left-cut", 0.0, 0.0), builders.cut("right-cut", 100.0, 0.0))
    items = (builders.item("left", 0.0, 0.0, cut="left-cut"), builders.item("right", 100.0, 0.0, cut="right-cut"))
    project = builders.project(builders.sheet(cuts=cuts), items=items)
    left, right = Hook(part="left"), Hook(part="right-cut")
    project, _ = add_dimension(project, "new", "main", left, right, Along.ACROSS, 60.0)
    project, _ = add_dimension(project, "new", "main", Hook(x=-10.0, y=4.0), right, Along.UP, 20.0)
    note = DrawingNote(id="note", plate="main", text="Ream", x=0.0, y=80.0, to=left)
    return add_note(project, "new", note)[0]


def test_a_dimension_goes_along_with_what_it_measures_and_holds_on_to_the_copies() -> None:
    project = dimensioned()
    pasted = paste(project, "new", "main", copy(project, "new", ["left", "right"]), 0.0, -90.0).project
    (made,) = pasted.option("new").dimensions[2:]
    assert (made.start, made.end) == (Hook(part="left-2"), Hook(part="right-cut-2"))
    assert (made.id, made.along, made.offset) == ("dimension-3", Along.ACROSS, 60.0)


def test_a_dimension_of_what_stays_behind_is_left_out() -> None:
    project = dimensioned()
    clip = copy(project, "new", ["left", "dimension-1"])
    assert clip.dimensions == ()
    assert left_out(project, "new", ["left", "dimension-1"], clip) == ("dimension-1",)
    with pytest.raises(EditRefused, match="together with what it measures"):
        copy(project, "new", ["dimension-1"])


def test_a_place_that_is_measured_from_moves_along_where_its_dimension_was_chosen() -> None:
    project = dimensioned()
    assert [one.id for one in copy(project, "new", ["right"]).dimensions] == []
    pasted = paste(project, "new", "main", copy(project, "new", ["right", "dimension-2"]), 5.0, -90.0).project
    (made,) = pasted.option("new").dimensions[2:]
    assert (made.start, made.end) == (Hook(x=-5.0, y=-86.0), Hook(part="right-cut-2"))


def test_a_note_is_copied_and_points_at_the_copy_or_at_nothing() -> None:
    project = dimensioned()
    both = paste(project, "new", "main", copy(project, "new", ["left", "note"]), 50.0, 0.0).project
    made = both.option("new").drawing_notes[1]
    assert (made.id, made.x, made.y, made.to) == ("note-2", 50.0, 80.0, Hook(part="left-2"))
    alone = paste(project, "new", "main", copy(project, "new", ["note"]), 0.0, 9.0).project
    assert alone.option("new").drawing_notes[1].to is None
    assert alone.option("new").items == project.option("new").items


def test_marks_go_to_another_project_as_text_and_onto_a_kept_plate() -> None:
    clip = from_text(to_text(copy(dimensioned(), "new", ["note"])))
    kept = builders.project(builders.sheet(state="kept"))
    assert paste(kept, "new", "main", clip).project.option("new").drawing_notes[0].text == "Ream"
    whole = from_text(to_text(copy(dimensioned(), "new", ["left", "right", "dimension-2", "note"])))
    option = paste(builders.project(cutouts=()), "new", "main", whole).project.option("new")
    assert option.dimensions == dimensioned().option("new").dimensions
    assert option.drawing_notes == dimensioned().option("new").drawing_notes


def test_a_dimension_from_the_edge_goes_along_where_it_was_chosen_and_measures_from_the_other_plate() -> None:
    project, edge = add_dimension(
        dimensioned(), "new", "main", Hook(part="main", hold=Hold.LEFT), Hook(part="left"), Along.ACROSS, -60.0
    )
    assert copy(project, "new", ["left"]).dimensions == ()
    clip = from_text(to_text(copy(project, "new", ["left", edge])))
    other = builders.project(builders.sheet(id="side"))
    (made,) = paste(other, "new", "side", clip).project.option("new").dimensions
    assert (made.plate, made.start, made.end) == ("side", Hook(part="side", hold=Hold.LEFT), Hook(part="left"))
    assert made.offset == -60.0
    beside = paste(project, "new", "main", clip, 5.0, -7.0).project.option("new").dimensions[-1]
    assert beside.offset == -67.0


def test_a_dimension_of_the_plate_alone_is_pasted_onto_another() -> None:
    sides = Hook(part="main", hold=Hold.LEFT), Hook(part="main", hold=Hold.RIGHT)
    project, width = add_dimension(dimensioned(), "new", "main", *sides, Along.ACROSS, 60.0)
    clip = copy(project, "new", [width])
    pasted = paste(builders.project(builders.sheet(id="side")), "new", "side", clip).project.option("new")
    assert [dimension.parts for dimension in pasted.dimensions] == [("side", "side")]


def test_a_group_that_is_copied_whole_is_one_again() -> None:
    project, _ = group(dimensioned(), "new", ["left", "right"], "Engine")
    pasted = paste(project, "new", "main", copy(project, "new", ["left", "right"]), 0.0, -90.0)
    assert [(one.name, set(one.members)) for one in pasted.project.option("new").groups[1:]] == [
        ("Engine 2", {"left-2", "left-cut-2", "right-2", "right-cut-2"})
    ]
    assert set(pasted.ids) == {"left-2", "left-cut-2", "right-2", "right-cut-2", "dimension-3"}
    assert copy(project, "new", ["left"]).groups == ()


def test_labels_and_notes_belong_to_what_they_stand_for() -> None:
    cutout = packaged_catalogue().cutout("toggle-plain")
    placed = place_row(builders.project(builders.sheet()), "new", "main", cutout, Row(Point(0.0, 0.0), 2, 25.4))
    first, second = (item.id for item in placed.project.option("new").items)
    labelled = label_row(placed.project, "new", {first: "NAV", second: "LDG"}, 3.0, Side.BELOW)
    note = DrawingNote(id="note", plate="main", text="Guard", x=0.0, y=40.0, to=Hook(part=first))
    project, _ = add_note(labelled.project, "new", note)
    option = project.option("new")
    assert attached(project, option, [first]) == (labelled.ids[0], "note")
    assert attached(project, option, [second, labelled.ids[1]]) == ()
