import pytest

from panelcad.editing.marks import add_dimension
from panelcad.editing.place import place, place_blank
from panelcad.editing.rename import rename
from panelcad.editing.swap import swap
from panelcad.errors import EditRefused
from panelcad.model.cutout import Bezel, Cutout
from panelcad.model.markup import Along, Hook
from panelcad.model.plate import CutState
from panelcad.model.project import Project
from panelcad.model.shape import Circle
from tests import builders

BEZEL = Bezel(shape=Circle(diameter=85.0), source=builders.SOURCE)
ALTIMETER = builders.round_cutout(name="altimeter", bezel=BEZEL)
CLOCK = builders.round_cutout(name="clock", diameter=57.15, bezel=BEZEL)
HOLE = builders.round_cutout(name="hole", diameter=12.0)
BLANK = builders.round_cutout(name="blank", openings=(), bezel=BEZEL)


def altimeter(**cut_fields: object) -> Project:
    project = place(builders.project(), "new", "main", ALTIMETER, 7.0, 8.0, 30.0).project
    option = project.option("new")
    cut = option.plates[0].cuts[0].revised(**cut_fields)
    return project.with_option(option.revised(plates=(option.plates[0].revised(cuts=(cut,)),)))


def state(project: Project) -> tuple[list[str], list[tuple[str, str | None, str]]]:
    """item cutouts; cuts as (id, cutout, state)"""
    option = project.option("new")
    cuts = [(cut.id, cut.cutout, cut.state.value) for cut in option.plates[0].cuts]
    return [f"{item.id}: {item.cutout} in {item.cut}" for item in option.items], cuts


@pytest.mark.parametrize("named", ["altimeter", "altimeter-cut"])
def test_another_instrument_takes_the_place_and_the_ids(named: str) -> None:
    swapped = swap(altimeter(), "new", named, CLOCK)
    assert state(swapped) == (["altimeter: clock in altimeter-cut"], [("altimeter-cut", "clock", "new")])
    item, cut = swapped.option("new").items[0], swapped.option("new").plates[0].cuts[0]
    assert (item.x, item.y, item.rotation, item.name, cut.name) == (7.0, 8.0, 30.0, "Clock", "Clock")


def test_a_name_somebody_gave_stays() -> None:
    named = rename(altimeter(), "new", "altimeter", "Cabin height")
    assert swap(named, "new", "altimeter", CLOCK).option("new").items[0].name == "Cabin height"


def test_an_old_cut_is_enlarged_but_not_where_the_metal_is_the_same() -> None:
    assert state(swap(altimeter(state="existing"), "new", "altimeter", CLOCK))[1][0][2] == CutState.ENLARGED.value
    same = builders.round_cutout(name="variometer", bezel=BEZEL)
    assert state(swap(altimeter(state="existing"), "new", "altimeter", same))[1] == [
        ("altimeter-cut", "altimeter", "existing")
    ]


def test_a_blank_closes_the_hole_or_covers_the_old_one() -> None:
    assert state(swap(altimeter(), "new", "altimeter", BLANK)) == (["altimeter: blank in None"], [])
    assert state(swap(altimeter(state="existing"), "new", "altimeter", BLANK)) == (
        ["altimeter: blank in altimeter-cut"],
        [("altimeter-cut", "altimeter", "existing")],
    )


def test_a_bare_hole_leaves_nothing_fitted_and_an_instrument_in_a_bare_hole_is_fitted() -> None:
    bare = swap(altimeter(), "new", "altimeter", HOLE)
    assert state(bare) == ([], [("altimeter-cut", "hole", "new")])
    assert state(swap(bare, "new", "altimeter-cut", CLOCK))[0] == ["clock: clock in altimeter-cut"]


def test_an_instrument_in_place_of_a_blank_gets_its_cut() -> None:
    project = place(builders.project(), "new", "main", BLANK, 5.0, 0.0).project
    assert state(swap(project, "new", "blank", CLOCK)) == (
        ["blank: clock in blank-cut"],
        [("blank-cut", "clock", "new")],
    )


def test_a_dimension_to_a_cut_that_goes_goes_too() -> None:
    ends = Hook(), Hook(part="altimeter-cut")
    project, _ = add_dimension(altimeter(), "new", "main", *ends, Along.ACROSS, 5.0)
    assert swap(project, "new", "altimeter", BLANK).option("new").dimensions == ()


def test_a_kept_plate_takes_another_instrument_only_in_the_same_metal() -> None:
    plate = builders.sheet(state="kept", cuts=(builders.cut("old", 0.0, 0.0, "altimeter", state="existing"),))
    project = builders.project(plate, cutouts=(ALTIMETER,))
    same: Cutout = builders.round_cutout(name="variometer", bezel=BEZEL)
    assert state(swap(project, "new", "old", same))[0] == ["variometer: variometer in old"]
    with pytest.raises(EditRefused, match="is kept as it is"):
        swap(project, "new", "old", CLOCK)
    covered = place_blank(project, "new", "old", BLANK).project
    assert state(swap(covered, "new", "blank", same))[0] == ["blank: variometer in old"]
