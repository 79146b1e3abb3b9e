import json
import subprocess
import sys
from pathlib import Path

import pytest

from panelcad.model.project import Project
from panelcad.store.autosave import Autosave, Match, Recovered, discard, search
from panelcad.store.on_disk import open_project
from panelcad.store.project_file import save
from tests import builders

SAVED, CHANGED = builders.project(title="Saved"), builders.project(title="Changed, not saved")
CRASH = """
import sys
from pathlib import Path
from panelcad.store.autosave import Autosave
from panelcad.store.on_disk import open_project
folder, file, title = Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3]
opened = open_project(file)
Autosave("crashed", folder).keep(opened.project.revised(title=title), file, opened.seen.digest)
import os; os.kill(os.getpid(), 9)
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "recovery"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "tourer.panel.json"
    save(SAVED, path)
    return path


def crash(folder: Path, file: Path, title: str = CHANGED.title) -> None:
    subprocess.run([sys.executable, "-c", CRASH, str(folder), str(file), title], check=False)


def only(folder: Path) -> Recovered:
    (recovered,) = search("mine", folder).recovered
    return recovered


def test_unsaved_work_of_a_crashed_window_comes_back_whole(folder: Path, file: Path) -> None:
    crash(folder, file)
    recovered = only(folder)
    assert recovered.project == CHANGED
    assert (recovered.file, recovered.match) == (file, Match.FILE_AS_IT_WAS)
    discard(recovered.copy)
    assert search("mine", folder).recovered == ()


def test_a_copy_that_holds_the_same_as_its_file_raises_no_question(folder: Path, file: Path) -> None:
    crash(folder, file, SAVED.title)
    assert search("mine", folder).recovered == ()
    assert not list(folder.glob("*.recovery.json"))


def test_work_saved_after_the_copy_was_made_raises_no_question_whatever_the_dates(folder: Path, file: Path) -> None:
    crash(folder, file)
    save(CHANGED, file)
    assert search("mine", folder).recovered == ()


def test_a_file_that_went_on_without_the_copy_is_told(folder: Path, file: Path) -> None:
    crash(folder, file)
    save(builders.project(title="Somebody else's"), file)
    assert only(folder).match is Match.FILE_CHANGED
    file.unlink()
    assert only(folder).match is Match.FILE_GONE


def test_a_project_that_was_never_saved_comes_back_too(folder: Path) -> None:
    autosave = Autosave("never", folder)
    autosave.keep(CHANGED, None, None)
    (folder / ".never.recovery.json.open").unlink()
    assert (only(folder).project, only(folder).match) == (CHANGED, Match.NEVER_SAVED)


def test_the_copy_of_a_window_that_runs_is_left_to_it(folder: Path, file: Path) -> None:
    autosave = Autosave("running", folder)
    autosave.keep(CHANGED, file, open_project(file).seen.digest)
    assert search("mine", folder).recovered == ()
    assert autosave.copy.exists()
    autosave.forget()
    assert list(folder.iterdir()) == []


def test_the_same_project_is_written_once(folder: Path) -> None:
    autosave = Autosave("mine", folder)
    autosave.keep(CHANGED, None, None)
    autosave.copy.write_text("untouched")
    autosave.keep(CHANGED, None, None)
    assert autosave.copy.read_text() == "untouched"
    same: Project = CHANGED.revised()
    autosave.keep(same, None, None)
    assert json.loads(autosave.copy.read_text())["project"]["title"] == CHANGED.title


@pytest.mark.parametrize(
    "content",
    [
        "",
        "[]",
        "{",
        '{"recovery": 9}',
        '{"recovery": 1, "project": {}, "file": 7, "base": null}',
        '{"recovery": 1, "file": null, "base": null, "project": {"format": 1, "unit": "in", "title": NaN}}',
        "[" * 100_000,
    ],
)
def test_a_damaged_copy_is_told_and_stays(folder: Path, content: str) -> None:
    folder.mkdir()
    copy = folder / "old.recovery.json"
    copy.write_text(content)
    ((path, reason),) = search("mine", folder).unreadable
    assert path == copy
    assert str(copy) in reason
    assert copy.exists()
