from pathlib import Path

import pytest

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.catalogue import packaged_catalogue
from panelcad.library.equipment import packaged_equipment, read_equipment, whole_equipment
from panelcad.model.equipment import Power
from panelcad.model.function import Control, Supply
from panelcad.model.source import Standing

HEAD = 'family = "own"\ntitle = "Own"\ncurrency = "EUR"\nsource = { standing = "shop setting", text = "ours" }\n'


def test_there_are_at_least_sixty_generic_units_with_invented_values_marked_as_such() -> None:
    units = packaged_equipment().units.values()
    assert len(units) >= 60
    assert all(unit.source.standing is Standing.DEMO for unit in units)


def test_each_unit_on_the_panel_is_mounted_in_a_cutout_of_the_library() -> None:
    named = {unit.cutout for unit in packaged_equipment().units.values() if unit.cutout}
    assert named <= set(packaged_catalogue().cutouts)


def test_every_need_can_be_met_by_some_unit() -> None:
    units = packaged_equipment().units.values()
    needs = [need for unit in units for need in unit.needs]
    assert {n.supply for n in needs if n.supply} <= {s for unit in units for s in unit.supplies}
    assert {n.controller for n in needs if n.controller} <= {c for unit in units for c in unit.controls}


def test_every_supply_and_controller_of_the_published_list_has_a_unit() -> None:
    units = packaged_equipment().units.values()
    assert {s for unit in units for s in unit.supplies} == set(Supply)
    assert {c for unit in units for c in unit.controls} == set(Control)


def test_electrical_units_state_a_draw_and_a_breaker_at_both_voltages() -> None:
    for unit in packaged_equipment().units.values():
        if unit.power is Power.ELECTRICAL:
            assert unit.draw_14 is not None, unit.name
            assert unit.draw_28 is not None, unit.name
            assert unit.breaker is not None, unit.name


def test_units_are_found_by_what_they_do() -> None:
    library = packaged_equipment()
    found = [unit.name for unit in library.search("transponder remote")]
    assert found[:2] == ["transponder-remote", "transponder-remote-both"]
    assert "com-radio" not in found
    assert len(library.search("")) == len(library.units)


def test_an_unknown_unit_offers_near_names() -> None:
    with pytest.raises(UnknownName, match="there is 'com-radio'"):
        packaged_equipment().unit("com-radios")


def test_the_users_own_units_stand_in_for_packaged_ones(tmp_path: Path) -> None:
    (tmp_path / "equipment").mkdir()
    (tmp_path / "equipment" / "own.toml").write_text(
        HEAD + '[[units]]\nname = "compass"\ntitle = "Our compass"\nplace = "cabin"\n', encoding="utf-8"
    )
    library = whole_equipment(tmp_path)
    assert library.unit("compass").title == "Our compass"
    assert library.unit("compass").currency == "EUR"
    assert len(library.units) == len(packaged_equipment().units)


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("mass = -1.0", r"own.toml, units 1 \('a'\), mass: -1.0 is not usable; expected greater than or equal to 0"),
        ('mass = "-2 lb"', r"mass: it is not usable; expected a mass in kg, or a text such as '2.4 lb'"),
        ('provides = ["mind reading"]', r"provides 1: 'mind reading' is not usable; expected 'attitude', 'heading'"),
        ('supplies = ["vacuum"]\nneeds = [{ supply = "vacuum" }]', "a circular need"),
        ("draw_14 = { continous = 1.0 }", "this key is not known; expected 'continuous'"),
        ('price = "-5"', "expected greater than or equal to 0"),
    ],
)
def test_a_bad_file_gets_one_clear_sentence(tmp_path: Path, line: str, sentence: str) -> None:
    (tmp_path / "own.toml").write_text(HEAD + f'[[units]]\nname = "a"\ntitle = "A"\nplace = "cabin"\n{line}\n')
    with pytest.raises(UnusableInput, match=sentence):
        read_equipment(tmp_path)


def test_a_name_used_twice_is_refused(tmp_path: Path) -> None:
    one = '[[units]]\nname = "a"\ntitle = "A"\nplace = "cabin"\n'
    (tmp_path / "own.toml").write_text(HEAD + one + one)
    with pytest.raises(UnusableInput, match="units 2, name 'a': this name is used already"):
        read_equipment(tmp_path)


def test_units_that_give_what_a_face_shows_are_found_and_those_that_give_most_of_it_come_first() -> None:
    shown = packaged_catalogue().cutout("ati-3-standby-display").shows
    found = packaged_equipment().giving(shown)
    assert found[0].title == "Small round flight display"
    given = [len(set(unit.provides) & set(shown)) for unit in found]
    assert given == sorted(given, reverse=True)
    assert min(given) * 2 >= len(shown) == 4
    assert all(unit.cutout for unit in found)


def test_a_face_that_shows_nothing_is_no_reason_to_offer_anything() -> None:
    assert packaged_equipment().giving(()) == ()
