"""Every question of the program: Enter and Escape lose nothing that cannot be had back."""

import json

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMessageBox, QPushButton

from panelcad.desktop.help.topics import MESSAGES
from panelcad.desktop.main_window import MainWindow
from panelcad.library.own import own_cutouts, own_file
from panelcad.store.autosave import recovery_folder, search
from panelcad.store.project_file import load, save
from panelcad.units import LengthUnit
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_files import answer, change

TOLD = {
    "The file cannot be opened",
    "The project was not saved",
    "Not written",
    "Nothing was written",
    "Help cannot be shown",
    "The limits cannot be used",
    "Nothing was taken in",
    "The photograph cannot be used",
    "Nothing was released",
    "No revision was opened",
    "Not verified",
}
"""Sentences with nothing to choose."""
UNDONE = {"Take in a drawing"}
"""What Enter does in these, undo takes back."""
ADDS = {"Not released", "Released", "Unsaved work was found", "Open elsewhere"}
"""What Enter does in these adds or shows something: a draft, a folder, work that was found, one more look at a file."""
LOSES = {"Unsaved changes", "Changed on disk", "Discard unsaved work", "Forget our own cutout"}
"""One answer of these throws away what cannot be had back."""


def press(key: Qt.Key, *, title: str) -> list[str]:
    """Press this key in the next question, which must be of this title; the words of its default button."""
    seen: list[str] = []

    def look(box: QMessageBox) -> None:
        assert box.windowTitle() == title
        seen.append(next(b.text() for b in box.findChildren(QPushButton) if b.isDefault()))
        QTest.keyClick(box.focusWidget() or box, key)

    in_dialog(look, QMessageBox)
    return seen


def test_no_question_is_left_out_here() -> None:
    assert sorted(MESSAGES) == sorted([*TOLD, *UNDONE, *ADDS, *LOSES])


def test_enter_when_leaving_saves(hands, panel_file) -> None:
    change(hands)
    press(Qt.Key.Key_Return, title="Unsaved changes")
    assert hands.window.desk.may_leave()
    assert load(panel_file) == hands.window.bench.document.project


def test_enter_writes_beside_a_file_that_another_changed(hands, panel_file, monkeypatch) -> None:
    change(hands)
    theirs = load(panel_file).revised(title="Changed by another")
    save(theirs, panel_file)
    monkeypatch.setattr(hands.window.parts.asking, "file_to_save", lambda *_: None)
    press(Qt.Key.Key_Return, title="Changed on disk")
    assert not hands.window.desk.save()
    assert load(panel_file) == theirs
    assert hands.window.isWindowModified()


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Escape])
def test_neither_key_loads_over_changes_that_are_not_saved(hands, panel_file, key) -> None:
    change(hands)
    mine = hands.window.bench.document.project
    save(load(panel_file).revised(title="Changed by another"), panel_file)
    assert press(key, title="Changed on disk") == []
    hands.window.desk.look_at_disk()
    assert hands.window.bench.document.project is mine


def test_enter_loads_where_nothing_is_unsaved(hands, panel_file) -> None:
    theirs = load(panel_file).revised(title="Changed by another")
    save(theirs, panel_file)
    seen = press(Qt.Key.Key_Return, title="Changed on disk")
    hands.window.desk.look_at_disk()
    assert seen == ["&Load it"]
    assert hands.window.bench.document.project == theirs


@pytest.fixture
def found(qtbot, hands, window):
    """Another window, at whose start unsaved work is found."""
    change(hands)
    window.safekeeping.keep()
    for note in recovery_folder().glob(".*.open"):
        note.write_text(json.dumps(json.loads(note.read_bytes()) | {"process": 2**22 + 1}))
    window.desk.leave_note()
    made = MainWindow(window.settings)
    made.show()
    yield made
    made.bench.document.mark_saved(made.bench.document.path, made.bench.document.project)
    made.close()
    made.deleteLater()


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Escape])
def test_neither_key_discards_work_that_was_found(found, key) -> None:
    def discard(box: QMessageBox) -> None:
        press(key, title="Discard unsaved work")
        away = next(b for b in box.findChildren(QPushButton) if b.text() == "&Discard it")
        QTest.mouseClick(away, Qt.MouseButton.LeftButton)

    in_dialog(discard, QMessageBox)
    found.safekeeping.offer_recovered()
    assert len(search("nobody").recovered) == 1


def test_enter_takes_work_up_again(hands, found) -> None:
    seen = press(Qt.Key.Key_Return, title="Unsaved work was found")
    assert found.safekeeping.offer_recovered()
    assert seen == ["&Take it up again"]


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Escape])
def test_neither_key_forgets_a_cutout_of_our_own(hands, our_own, key) -> None:
    press(key, title="Forget our own cutout")
    hands.action("place.own-forget")
    assert [one.name for one in own_cutouts(own_file(LengthUnit.MM))] == ["our-timer"]


def test_its_own_button_does(hands, our_own) -> None:
    said = answer("Forget it")
    hands.action("place.own-forget")
    assert "for good" in said[0]
    assert own_cutouts(own_file(LengthUnit.MM)) == ()
