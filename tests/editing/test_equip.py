import pytest

from panelcad.editing.equip import add_unit, name_unit, place_unit, say_by_cutout
from panelcad.editing.place import place
from panelcad.editing.remove import remove
from panelcad.errors import EditRefused
from panelcad.library.catalogue import packaged_catalogue
from panelcad.library.equipment import packaged_equipment
from panelcad.model.project import Project
from panelcad.planning.equipment import equipment
from panelcad.planning.space import space
from tests import builders

LIBRARY = packaged_equipment()


def with_unit(name: str) -> Project:
    unit = LIBRARY.unit(name)
    cutout = packaged_catalogue().cutout(unit.cutout) if unit.cutout else None
    return add_unit(builders.project(), "new", unit, cutout).project


def test_a_panel_unit_joins_as_not_placed_yet() -> None:
    project = with_unit("audio-panel")
    (item,) = project.option("new").items
    assert (item.unit, item.cutout, item.plate) == ("audio-panel", "rack-audio-panel", None)
    found = equipment(project, project.option("new"))
    assert found.units[0].place_words == "not placed yet"
    assert space(found).not_placed == ("audio-panel",)


def test_a_remote_unit_joins_where_it_is_mounted() -> None:
    project = with_unit("transponder-remote")
    (fitted,) = equipment(project, project.option("new")).units
    assert (fitted.place_words, fitted.item.cutout) == ("radio bay", None)


def test_deleting_it_takes_both_parts() -> None:
    project = with_unit("audio-panel")
    left = remove(project, "new", ["audio-panel"])
    assert equipment(left, left.option("new")).units == ()


def test_a_unit_is_not_mounted_in_a_foreign_cutout() -> None:
    with pytest.raises(EditRefused, match="is mounted in cutout 'rack-audio-panel'"):
        add_unit(builders.project(), "new", LIBRARY.unit("audio-panel"), packaged_catalogue().cutout("toggle"))


def test_an_item_may_become_a_known_unit_and_forget_it_again() -> None:
    project = builders.project(items=(builders.item("gauge", 0, 0),))
    known = name_unit(project, "new", "gauge", LIBRARY.unit("airspeed-round"))
    assert known.option("new").item("gauge").unit == "airspeed-round"
    assert name_unit(known, "new", "gauge", None).option("new").item("gauge").unit is None
    with pytest.raises(EditRefused, match="on no panel"):
        name_unit(project, "new", "gauge", LIBRARY.unit("transponder-remote"))


def test_placing_a_waiting_unit_keeps_the_item() -> None:
    project = with_unit("audio-panel")
    placed = place_unit(project, "new", "audio-panel", "main", 10.0, 20.0)
    (item,) = placed.option("new").items
    assert (item.id, item.unit, item.plate, item.x, item.y) == ("audio-panel", "audio-panel", "main", 10.0, 20.0)
    assert item.cut in {cut.id for cut in placed.option("new").plates[0].cuts}
    assert equipment(placed, placed.option("new")).units[0].place_words == "panel"


def test_what_has_its_place_is_not_placed_again() -> None:
    placed = place_unit(with_unit("audio-panel"), "new", "audio-panel", "main", 0.0, 0.0)
    with pytest.raises(EditRefused, match="is not waiting for a place"):
        place_unit(placed, "new", "audio-panel", "main", 5.0, 5.0)


def test_items_are_said_to_be_the_only_unit_of_their_cutout() -> None:
    """Of two altimeters of one cutout nobody can tell which it is; the airspeed indicator can be only one."""
    project = builders.project(builders.sheet(width=600.0))
    ids = []
    for name, x in (("airspeed-3-1-8", -100.0), ("altimeter-knob-3-1-8", 0.0), ("toggle", 100.0)):
        placed = place(project, "new", "main", packaged_catalogue().cutout(name), x, 0.0)
        project, ids = placed.project, [*ids, *placed.ids]
    said = say_by_cutout(project, "new", ids, LIBRARY.by_cutout)
    assert [item.unit for item in said.option("new").items] == ["airspeed-round", None, None]
    assert say_by_cutout(project, "new", (), LIBRARY.by_cutout) == project


@pytest.mark.parametrize(
    ("cutout", "unit"), [("rack-1-30", None), ("rail-panel-1-50", None), ("outlet-usb", "power-outlet")]
)
def test_a_place_that_holds_one_thing_as_well_as_another_is_not_taken_for_its_only_unit(cutout, unit) -> None:
    placed = place(builders.project(builders.sheet()), "new", "main", packaged_catalogue().cutout(cutout), 0.0, 0.0)
    assert cutout in LIBRARY.by_cutout
    said = say_by_cutout(placed.project, "new", placed.ids, LIBRARY.by_cutout)
    assert said.option("new").items[0].unit == unit
