from pathlib import Path

import pytest

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.catalogue import packaged_catalogue, read_catalogue, whole_catalogue

GOOD = """
family = "own"
title = "Our own"
unit = "in"
[sources.us]
standing = "entered by the user"
text = "measured"
[[cutouts]]
name = "{name}"
title = "Lamp"
mounting = "front"
openings = [{{ shape = {{ kind = "circle", diameter = 0.5 }}, source = "us" }}]
"""


def write(folder: Path, name: str, text: str) -> Path:
    file = folder / name
    file.write_text(text, encoding="utf-8")
    return file


def refusal(folder: Path, text: str) -> str:
    write(folder, "own.toml", text)
    with pytest.raises(UnusableInput) as caught:
        read_catalogue(folder)
    return str(caught.value)


def test_a_files_lengths_are_in_the_unit_it_states(tmp_path: Path) -> None:
    write(tmp_path, "own.toml", GOOD.format(name="lamp"))
    lamp = read_catalogue(tmp_path).cutout("lamp")
    assert lamp.openings[0].shape.contour().bounds == (-6.35, -6.35, 6.35, 6.35)


def test_the_sources_of_a_file_are_named_by_key(tmp_path: Path) -> None:
    write(tmp_path, "own.toml", GOOD.format(name="lamp"))
    assert str(read_catalogue(tmp_path).cutout("lamp").openings[0].source) == "measured (entered by the user)"


def test_a_source_that_the_file_does_not_give_is_told(tmp_path: Path) -> None:
    sentence = refusal(tmp_path, GOOD.format(name="lamp").replace('"us" }}]'.format(), '"uss" }]'))
    assert sentence == (
        f"{tmp_path / 'own.toml'}, cutouts 1 ('lamp'): There is no source 'uss'; there is 'us'; "
        "expected a key of the table 'sources'."
    )


def test_an_unknown_key_is_told_with_the_nearest_one(tmp_path: Path) -> None:
    sentence = refusal(tmp_path, GOOD.format(name="lamp").replace("mounting", "mountin"))
    assert "cutouts 1 ('lamp')" in sentence
    assert "(and 1 more faults)" in sentence


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("family = ", "it is not whole TOML text"),
        ("a = " + "[" * 5000, "it is not whole TOML text"),
        (GOOD.format(name="lamp").replace('"in"', '"ell"'), "unit"),
        (GOOD.format(name="lamp").replace("0.5", "-0.5"), "openings 1, shape, circle, diameter: -0.5 is not usable"),
        (GOOD.format(name="lamp").replace("0.5", "nan"), "nan is not usable"),
        (GOOD.format(name="lamp").replace("[[cutouts]]", "[cutouts]"), "cutouts"),
        (GOOD.format(name="La mp"), "name"),
        ('family = "own"', "it is missing"),
    ],
)
def test_a_file_that_cannot_be_used_gets_one_sentence(tmp_path: Path, text: str, told: str) -> None:
    sentence = refusal(tmp_path, text)
    assert told in sentence
    assert sentence.startswith(str(tmp_path / "own.toml"))


def test_a_cutout_has_no_unit_of_its_own(tmp_path: Path) -> None:
    sentence = refusal(tmp_path, GOOD.format(name="lamp").replace("mounting", 'unit = "mm"\nmounting'))
    assert "cutouts 1 ('lamp'), unit: the file states it for all its cutouts" in sentence


def test_a_file_that_is_not_utf8_gets_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(UnusableInput, match="not whole TOML"):
        read_catalogue(tmp_path)


def test_the_users_own_cutouts_are_added(tmp_path: Path) -> None:
    write(tmp_path, "own.toml", GOOD.format(name="our-lamp"))
    whole = whole_catalogue(tmp_path)
    assert set(whole.cutouts) == set(packaged_catalogue().cutouts) | {"our-lamp"}
    assert whole.faults == ()


def test_a_users_name_that_is_taken_is_told_and_the_packaged_one_stays(tmp_path: Path) -> None:
    write(tmp_path, "own.toml", GOOD.format(name="airspeed-3-1-8"))
    whole = whole_catalogue(tmp_path)
    assert whole.cutout("airspeed-3-1-8") is packaged_catalogue().cutout("airspeed-3-1-8")
    assert "name 'airspeed-3-1-8': this name is used already in" in str(whole.faults[0])


def test_a_damaged_file_of_the_user_does_not_hide_the_others(tmp_path: Path) -> None:
    write(tmp_path, "a.toml", "family =")
    write(tmp_path, "b.toml", GOOD.format(name="our-lamp"))
    whole = whole_catalogue(tmp_path)
    assert "our-lamp" in whole.cutouts
    assert len(whole.faults) == 1


def test_a_folder_that_does_not_exist_adds_nothing(tmp_path: Path) -> None:
    assert whole_catalogue(tmp_path / "none").cutouts == packaged_catalogue().cutouts


def test_an_unknown_cutout_is_told_with_near_ones() -> None:
    with pytest.raises(UnknownName, match="airspeed-3-1-8"):
        packaged_catalogue().cutout("airspeed")
