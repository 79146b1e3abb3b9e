from pathlib import Path

import pytest

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library import packaged
from panelcad.library.samples import sample_file


def test_a_clone_has_its_folders_beside_the_package() -> None:
    assert packaged.folder("cutouts").name == "cutouts"


def test_a_wheels_folder_goes_before_one_beside_the_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    inside = tmp_path / "panelcad" / "packaged" / "cutouts"
    inside.mkdir(parents=True)
    (tmp_path / "cutouts").mkdir()
    monkeypatch.setattr(packaged, "files", lambda name: tmp_path / name)
    assert packaged.folder("cutouts") == inside


def test_a_missing_folder_is_told() -> None:
    with pytest.raises(UnusableInput, match="its folder 'nothing' is missing"):
        packaged.folder("nothing")


def test_an_unknown_sample_is_told() -> None:
    with pytest.raises(UnknownName, match="There is no sample 'zeppelin'"):
        sample_file("zeppelin")
