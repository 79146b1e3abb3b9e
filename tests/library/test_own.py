from pathlib import Path

import pytest

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.catalogue import packaged_catalogue, whole_catalogue
from panelcad.library.own import own_cutouts, own_file, with_own, without_own
from panelcad.model.cutout import Cutout
from panelcad.units import LengthUnit

ALL = list(packaged_catalogue().cutouts.values())


def renamed(cutout: Cutout, name: str) -> Cutout:
    return cutout.revised(name=name, family=f"own-{cutout.unit.value}")


def keep(cutout: Cutout, folder: Path) -> Path:
    file = own_file(cutout.unit, folder)
    file.write_bytes(with_own(cutout, file))
    return file


@pytest.mark.parametrize("cutout", ALL, ids=lambda cutout: cutout.name)
def test_a_kept_cutout_is_read_back_the_same(cutout: Cutout, tmp_path: Path) -> None:
    own = renamed(cutout, f"our-{cutout.name}")
    keep(own, tmp_path)
    assert whole_catalogue(tmp_path).cutout(own.name) == own


def test_cutouts_are_added_and_replaced_by_name(tmp_path: Path) -> None:
    first, second = renamed(ALL[0], "our-one"), renamed(ALL[1], "our-two")
    keep(first, tmp_path)
    keep(second, tmp_path)
    changed = first.revised(title="Changed")
    file = keep(changed, tmp_path)
    assert own_cutouts(file) == (changed, second)


def test_inches_and_millimetres_are_kept_apart(tmp_path: Path) -> None:
    inch = renamed(packaged_catalogue().cutout("toggle"), "our-toggle")
    metric = renamed(packaged_catalogue().cutout("push-button-22"), "our-button")
    assert keep(inch, tmp_path) != keep(metric, tmp_path)
    whole = whole_catalogue(tmp_path)
    assert whole.faults == ()
    assert whole.cutout("our-button").unit is LengthUnit.MM


def test_a_cutout_is_taken_out_again(tmp_path: Path) -> None:
    file = keep(renamed(ALL[0], "our-one"), tmp_path)
    keep(renamed(ALL[1], "our-two"), tmp_path)
    left = without_own("our-one", file)
    assert left is not None
    file.write_bytes(left)
    assert [own.name for own in own_cutouts(file)] == ["our-two"]
    assert without_own("our-two", file) is None
    with pytest.raises(UnknownName, match="our-two"):
        without_own("our-three", file)


def test_a_name_of_the_library_is_refused(tmp_path: Path) -> None:
    with pytest.raises(UnusableInput, match="cutout 'toggle': the library has this name in its family"):
        with_own(packaged_catalogue().cutout("toggle"), own_file(LengthUnit.INCH, tmp_path))


def test_a_name_kept_in_the_other_unit_is_refused(tmp_path: Path) -> None:
    keep(renamed(packaged_catalogue().cutout("toggle"), "our-one"), tmp_path)
    with pytest.raises(UnusableInput, match="family 'own-in'; expected a name of its own"):
        keep(renamed(packaged_catalogue().cutout("push-button-22"), "our-one"), tmp_path)


def test_a_damaged_file_is_not_written_over(tmp_path: Path) -> None:
    file = own_file(LengthUnit.INCH, tmp_path)
    file.write_text("family =", encoding="utf-8")
    with pytest.raises(UnusableInput, match="not whole TOML"):
        with_own(renamed(ALL[0], "our-one"), file)
