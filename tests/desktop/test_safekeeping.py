"""Nothing is lost: files changed by others, two windows on one file, and work found again after a crash."""

import json

import pytest

from panelcad.desktop.main_window import MainWindow
from panelcad.editing.options import copy_option
from panelcad.store.autosave import recovery_folder, search
from panelcad.store.project_file import load, save
from tests.desktop.test_files import answer, change


@pytest.fixture
def another_window(qtbot, window):
    made = MainWindow(window.settings)
    made.show()
    yield made
    made.bench.document.mark_saved(made.bench.document.path, made.bench.document.project)
    made.close()
    made.deleteLater()


def change_on_disk(path):
    project = load(path).revised(title="Changed by another")
    save(project, path)
    return project


def test_a_file_changed_by_another_is_not_overwritten_without_a_word(hands, panel_file) -> None:
    change(hands)
    theirs = change_on_disk(panel_file)
    said = answer("Cancel")
    assert not hands.window.desk.save()
    assert "was changed by another program" in said[0]
    assert load(panel_file) == theirs
    assert hands.window.isWindowModified()


def test_one_may_save_over_it_after_all(hands, panel_file) -> None:
    change(hands)
    change_on_disk(panel_file)
    answer("Save over it")
    assert hands.window.desk.save()
    assert load(panel_file) == hands.window.bench.document.project


def test_coming_back_to_the_window_notices_a_changed_file_and_loads_it(hands, panel_file) -> None:
    theirs = change_on_disk(panel_file)
    answer("Load it")
    hands.window.desk.look_at_disk()
    assert hands.window.bench.document.project == theirs
    assert not hands.window.isWindowModified()


def test_keeping_what_is_here_is_asked_once_and_marks_it_unsaved(hands, panel_file) -> None:
    change_on_disk(panel_file)
    mine = hands.window.bench.document.project
    answer("Keep what is here")
    hands.window.desk.look_at_disk()
    hands.window.desk.look_at_disk()
    assert hands.window.bench.document.project is mine
    assert hands.window.isWindowModified()


def test_a_second_window_is_warned(hands, another_window, panel_file) -> None:
    said = answer("Leave it")
    another_window.open(panel_file)
    assert "'panel.panel.json' is open in another window." in said[0]
    assert another_window.bench.document.path is None


def test_the_note_goes_with_the_window(hands, another_window, panel_file) -> None:
    hands.window.close()
    another_window.open(panel_file)
    assert another_window.bench.document.path == panel_file


def test_work_is_found_again_after_a_crash(hands, another_window, panel_file) -> None:
    change(hands)
    mine = hands.window.bench.document.project
    hands.window.safekeeping.keep()
    leave_as_after_a_crash(hands.window)
    said = answer("Take it up again")
    another_window.safekeeping.offer_recovered()
    assert "before changes to" in said[0]
    assert another_window.bench.document.project == mine
    assert another_window.isWindowModified()
    assert another_window.desk.save()
    assert load(panel_file) == mine
    assert not search("nobody").recovered


def test_work_on_the_file_that_is_opened_is_found_again_and_no_other(
    hands, another_window, panel_file, tmp_path
) -> None:
    change(hands)
    hands.window.safekeeping.keep()
    leave_as_after_a_crash(hands.window)
    assert not another_window.safekeeping.offer_recovered(tmp_path / "another.panel.json")
    answer("Take it up again")
    assert another_window.safekeeping.offer_recovered(panel_file)
    assert another_window.bench.document.project == hands.window.bench.document.project


def test_work_can_be_left_for_another_day(hands, another_window) -> None:
    change(hands)
    hands.window.safekeeping.keep()
    leave_as_after_a_crash(hands.window)
    answer("Ask again next time")
    another_window.safekeeping.offer_recovered()
    assert len(search("nobody").recovered) == 1


def test_a_copy_that_holds_what_the_file_holds_is_not_asked_about(hands, another_window, panel_file) -> None:
    change(hands)
    hands.window.safekeeping.keep()
    save(hands.window.bench.document.project, panel_file)
    leave_as_after_a_crash(hands.window)
    another_window.safekeeping.offer_recovered()
    assert not list(recovery_folder().glob("*.recovery.json"))


def test_saving_takes_the_copy_away(hands) -> None:
    change(hands)
    hands.window.safekeeping.keep()
    assert list(recovery_folder().glob("*.recovery.json"))
    assert hands.window.desk.save()
    assert not list(recovery_folder().glob("*.recovery.json"))


def test_a_copy_is_written_a_little_after_a_change(hands, qtbot) -> None:
    change(hands)
    qtbot.waitUntil(lambda: bool(list(recovery_folder().glob("*.recovery.json"))), timeout=4_000)


def test_changes_that_follow_fast_do_not_put_the_copy_off_for_ever(hands, qtbot, monkeypatch) -> None:
    monkeypatch.setattr("panelcad.desktop.safekeeping.REST", 60.0)
    monkeypatch.setattr("panelcad.desktop.safekeeping.LATEST", 0.5)
    change(hands)
    qtbot.waitUntil(lambda: bool(list(recovery_folder().glob("*.recovery.json"))), timeout=4_000)


def test_work_that_is_taken_up_again_shows_the_option_one_was_in(hands, another_window) -> None:
    document = hands.window.bench.document
    made = copy_option(document.project, document.option_id)
    document.apply("Copy option", made.project)
    document.look_at(made.option_id)
    hands.window.safekeeping.keep()
    leave_as_after_a_crash(hands.window)
    answer("Take it up again")
    assert another_window.safekeeping.offer_recovered()
    assert another_window.bench.document.option_id == made.option_id


def leave_as_after_a_crash(window) -> None:
    """The notes say that a process which has ended left them."""
    for note in recovery_folder().glob(".*.open"):
        raw = json.loads(note.read_bytes())
        note.write_text(json.dumps(raw | {"process": 2**22 + 1}))
    own = window.bench.document.path
    if own is not None:
        window.desk.leave_note()
