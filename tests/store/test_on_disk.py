import os
from pathlib import Path

import pytest

from panelcad.errors import ChangedOnDisk
from panelcad.store.on_disk import DiskState, disk_state, open_project, save_over
from panelcad.store.project_file import load, save
from tests import builders

OURS, THEIRS = builders.project(title="Ours"), builders.project(title="Theirs")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "Ein Flugzeug für zwei.panel.json"
    save(builders.project(), path)
    return path


def later(path: Path) -> None:
    """As if the clock had gone on, so that no two writes share a time of change."""
    os.utime(path, ns=(path.stat().st_atime_ns, path.stat().st_mtime_ns + 10**9))


def test_a_file_that_nobody_touched_is_the_same(file: Path) -> None:
    assert disk_state(file, open_project(file).seen) is DiskState.SAME


def test_a_file_that_was_touched_or_copied_back_is_the_same(file: Path) -> None:
    seen = open_project(file).seen
    file.write_bytes(file.read_bytes())
    later(file)
    assert disk_state(file, seen) is DiskState.SAME


def test_another_content_is_noticed_and_not_overwritten(file: Path) -> None:
    seen = open_project(file).seen
    save(THEIRS, file)
    later(file)
    assert disk_state(file, seen) is DiskState.CHANGED
    with pytest.raises(ChangedOnDisk, match="changed by another program or window"):
        save_over(OURS, file, seen)
    assert load(file) == THEIRS


def test_after_the_question_was_answered_it_is_overwritten_and_seen_anew(file: Path) -> None:
    seen = save_over(OURS, file, None)
    assert load(file) == OURS
    assert disk_state(file, seen) is DiskState.SAME
    assert disk_state(file, save_over(THEIRS, file, seen)) is DiskState.SAME


def test_a_file_that_is_gone_is_told_and_can_be_written_again(file: Path) -> None:
    seen = open_project(file).seen
    file.unlink()
    assert disk_state(file, seen) is DiskState.GONE
    save_over(OURS, file, seen)
    assert load(file) == OURS
