import pytest

from panelcad.editing.equip import add_unit, name_unit
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
