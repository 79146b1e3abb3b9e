import pytest

from panelcad.editing.place import fit, place, place_blank
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.cutout import Bezel, Body, BodyKind
from panelcad.model.plate import CutState
from panelcad.model.project import AS_FOUND
from panelcad.model.shape import Circle
from tests import builders

BEZEL = Bezel(shape=Circle(diameter=85.0), source=builders.SOURCE)
CASE = Body(kind=BodyKind.CASE, shape=Circle(diameter=78.0), far=150.0, source=builders.SOURCE)
INSTRUMENT = builders.round_cutout(name="altimeter", bezel=BEZEL, bodies=(CASE,))
HOLE = builders.round_cutout(diameter=10.0, name="plain-hole")
BLANK = builders.round_cutout(name="blank", openings=(), bezel=BEZEL)


def test_an_instrument_makes_a_cut_and_an_item_at_one_place() -> None:
    placed = place(builders.project(), "new", "main", INSTRUMENT, 10.0, -20.0, 90.0)
    option = placed.project.option("new")
    item, cut = option.item("altimeter"), option.plate("main").cuts[0]
    assert placed.ids == ("altimeter", "altimeter-cut")
    assert (item.cut, item.plate, item.x, item.y, item.rotation) == (cut.id, "main", 10.0, -20.0, 90.0)
    assert (cut.x, cut.y, cut.rotation, cut.state) == (10.0, -20.0, 90.0, CutState.NEW)


def test_a_bare_hole_makes_no_item_and_a_blank_makes_no_cut() -> None:
    hole = place(builders.project(), "new", "main", HOLE, 0.0, 0.0)
    assert hole.item_id is None
    blank = place(hole.project, "new", "main", BLANK, 100.0, 0.0)
    assert (blank.cut_id, blank.item_id) == (None, "blank")


def test_the_second_of_a_kind_gets_a_number_and_the_cutout_is_carried_once() -> None:
    first = place(builders.project(), "new", "main", INSTRUMENT, 0.0, 0.0)
    second = place(first.project, "new", "main", INSTRUMENT, 100.0, 0.0)
    assert second.ids == ("altimeter-2", "altimeter-2-cut")
    assert second.project.option("new").item("altimeter-2").name == "Altimeter 2"
    assert [cutout.name for cutout in second.project.cutouts] == ["round", "altimeter"]


def test_another_cutout_of_the_same_name_is_carried_beside_the_first() -> None:
    first = place(builders.project(), "new", "main", INSTRUMENT, 0.0, 0.0)
    changed = INSTRUMENT.revised(notes="a longer case")
    second = place(first.project, "new", "main", changed, 100.0, 0.0)
    third = place(second.project, "new", "main", changed, 200.0, 0.0)
    assert [cutout.name for cutout in third.project.cutouts] == ["round", "altimeter", "altimeter-2"]
    assert third.project.option("new").item("altimeter-3").cutout == "altimeter-2"


def test_what_is_entered_into_the_panel_as_found_is_metal_already_cut() -> None:
    placed = place(builders.project(), AS_FOUND, "main", INSTRUMENT, 0.0, 0.0)
    assert placed.project.as_found.plates[0].cuts[0].state is CutState.EXISTING


def test_a_kept_plate_takes_no_new_cut_and_an_unknown_plate_is_named() -> None:
    kept = builders.project(builders.sheet(state="kept"))
    with pytest.raises(EditRefused, match="'Main panel' is kept as it is"):
        place(kept, "new", "main", INSTRUMENT, 0.0, 0.0)
    with pytest.raises(UnknownName, match="no plate 'side'; there is 'main'"):
        place(kept, "new", "side", BLANK, 0.0, 0.0)


def test_an_item_is_fitted_in_a_cut_that_is_there() -> None:
    with_hole = builders.project(builders.sheet(state="kept", cuts=(builders.cut("old", 5.0, 6.0, rotation=45.0),)))
    placed = fit(with_hole, "new", "old", INSTRUMENT)
    item = placed.project.option("new").item("altimeter")
    assert (item.cut, item.x, item.y, item.rotation) == ("old", 5.0, 6.0, 45.0)


def test_a_blank_covers_an_empty_cut_only() -> None:
    with_hole = builders.project(builders.sheet(cuts=(builders.cut("old", 5.0, 6.0),)))
    covered = place_blank(with_hole, "new", "old", BLANK)
    assert covered.project.option("new").item("blank").cut == "old"
    with pytest.raises(EditRefused, match="'Blank' is still fitted"):
        place_blank(covered.project, "new", "old", BLANK)
    with pytest.raises(EditRefused, match="neither a bezel nor a body"):
        fit(with_hole, "new", "old", HOLE)
