import os
import subprocess
import sys
from pathlib import Path

import pytest

from panelcad.errors import UnusableInput
from panelcad.store.atomic import atomic_writer, write_atomically
from panelcad.store.project_file import load, save
from tests import builders

posix_only = pytest.mark.skipif(os.name != "posix", reason="forks and file modes as POSIX has them")
SAVER = Path(__file__).with_name("save_until_killed.py")


@posix_only
def test_a_process_killed_at_any_moment_of_a_save_leaves_the_old_file_or_the_new_one_whole(tmp_path: Path) -> None:
    file = tmp_path / "tourer.panel.json"
    save(builders.project(builders.sheet(cuts=tuple(builders.cut(f"c{i}", i, 0.0) for i in range(60)))), file)
    run = subprocess.run([sys.executable, str(SAVER), str(file), "80", "7"], env=with_path(), check=False)
    assert run.returncode == 0
    assert list(tmp_path.glob(".*.part")), "no save was interrupted, so nothing was tried"
    load(file)


def with_path() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}


@posix_only
def test_what_killed_saves_left_is_swept_away_once_it_is_nobodys(tmp_path: Path) -> None:
    file = tmp_path / "a [1].json"
    old, young, foreign = (tmp_path / name for name in (".a [1].json.x.part", ".a [1].json.y.part", ".b.json.z.part"))
    for left in (old, young, foreign):
        left.write_text("half")
    os.utime(old, (0, 0))
    os.utime(foreign, (0, 0))
    write_atomically(file, b"whole")
    assert sorted(path.name for path in tmp_path.iterdir()) == [young.name, foreign.name, file.name]


def test_an_error_while_writing_leaves_the_old_file_and_nothing_beside_it(tmp_path: Path) -> None:
    file = tmp_path / "a.json"
    file.write_text("old")
    with pytest.raises(ZeroDivisionError):
        write_half(file)
    assert [path.name for path in tmp_path.iterdir()] == ["a.json"]
    assert file.read_text() == "old"


def write_half(file: Path) -> None:
    with atomic_writer(file) as stream:
        stream.write(b"half of the new")
        raise ZeroDivisionError


@posix_only
def test_the_files_permissions_stay_and_a_link_goes_on_pointing_there(tmp_path: Path) -> None:
    file, link = tmp_path / "a.json", tmp_path / "link.json"
    file.write_text("old")
    file.chmod(0o640)
    link.symlink_to(file)
    write_atomically(link, b"new")
    assert link.is_symlink()
    assert (file.read_text(), file.stat().st_mode & 0o777) == ("new", 0o640)


@posix_only
@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_one_may_not_write_in_is_told(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    with pytest.raises(UnusableInput, match="it cannot be written"):
        save(builders.project(), tmp_path / "a.panel.json")


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(UnusableInput, match="it cannot be written"):
        save(builders.project(), tmp_path / "gone" / "a.panel.json")
