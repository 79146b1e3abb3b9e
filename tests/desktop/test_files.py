"""Files are driven through their dialogs by keys."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMessageBox, QPushButton

from panelcad.desktop.asking import Asking
from panelcad.store.project_file import load, save
from tests.desktop.next_dialog import in_dialog


def answer(button: str) -> list[str]:
    """Press this button of the next message box; what the box said is collected."""
    said: list[str] = []

    def press(box: QMessageBox) -> None:
        said.append(f"{box.text()} {box.informativeText()}")
        wanted = next(b for b in box.findChildren(QPushButton) if b.text().replace("&", "") == button)
        QTest.mouseClick(wanted, Qt.MouseButton.LeftButton)

    in_dialog(press, QMessageBox)
    return said


def change(hands) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)


def test_a_file_opens_at_the_option_that_was_seen_last(hands, panel_file, tmp_path) -> None:
    window = hands.window
    document, other = window.bench.document, tmp_path / "other.panel.json"
    option = document.option
    second = option.revised(id="second", name="Second")
    save(document.project.revised(options=(option, second)), other)
    window.open(other)
    assert document.option_id == option.id
    document.look_at("second")
    document.look_at("as-found")
    window.open(panel_file)
    assert document.option_id == option.id
    window.open(other)
    assert document.option_id == "second"
    save(document.project.revised(options=(option,)), other)
    window.open(panel_file)
    window.open(other)
    assert document.option_id == option.id


def test_a_change_shows_in_the_title_until_it_is_saved(hands, panel_file) -> None:
    assert not hands.window.isWindowModified()
    assert panel_file.name in hands.window.windowTitle()
    change(hands)
    assert hands.window.isWindowModified()
    QTest.keyClick(hands.window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert not hands.window.isWindowModified()
    assert load(panel_file) == hands.window.bench.document.project


def test_undoing_all_takes_the_mark_away(hands) -> None:
    change(hands)
    QTest.keyClick(hands.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert not hands.window.isWindowModified()


def test_save_as_writes_another_file(hands, panel_file, tmp_path, monkeypatch) -> None:
    change(hands)
    other = tmp_path / "Fläche 2.panel.json"
    monkeypatch.setattr(Asking, "file_to_save", lambda *_: other)
    QTest.keyClick(hands.window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert load(other) == hands.window.bench.document.project
    assert load(panel_file) != load(other)
    assert other.name in hands.window.windowTitle()


def test_closing_with_changes_asks_and_can_be_called_off(hands) -> None:
    change(hands)
    said = answer("Cancel")
    assert not hands.window.close()
    assert "Save the changes" in said[0]
    assert hands.window.isVisible()


def test_closing_with_changes_can_save_them(hands, panel_file) -> None:
    change(hands)
    answer("Save")
    assert hands.window.close()
    assert load(panel_file) == hands.window.bench.document.project


def test_closing_with_changes_can_give_them_up(hands, panel_file) -> None:
    before = panel_file.read_bytes()
    change(hands)
    answer("Discard changes")
    assert hands.window.close()
    assert panel_file.read_bytes() == before


def test_closing_without_changes_asks_nothing(hands) -> None:
    assert hands.window.close()


def test_opening_another_file_asks_first(hands, panel_file, tmp_path, monkeypatch) -> None:
    change(hands)
    project = hands.window.bench.document.project
    monkeypatch.setattr(Asking, "file_to_open", lambda *_: panel_file)
    answer("Cancel")
    hands.action("file.open")
    assert hands.window.bench.document.project is project


@pytest.mark.parametrize("content", [b"", b"{", b"[]", b'{"format": 99}', b"\xff\xfe"])
def test_an_unusable_file_is_told_in_one_sentence_and_changes_nothing(hands, tmp_path, content) -> None:
    bad = tmp_path / "bad.panel.json"
    bad.write_bytes(content)
    project = hands.window.bench.document.project
    said = answer("OK")
    hands.window.open(bad)
    assert str(bad) in said[0]
    assert hands.window.bench.document.project is project


def test_saving_where_one_may_not_is_told_and_the_mark_stays(hands, monkeypatch, tmp_path) -> None:
    change(hands)
    nowhere = tmp_path / "no such folder" / "x.panel.json"
    monkeypatch.setattr(Asking, "file_to_save", lambda *_: nowhere)
    said = answer("OK")
    hands.action("file.save-as")
    assert "cannot be written" in said[0]
    assert hands.window.isWindowModified()


def test_opened_files_are_remembered(hands, panel_file) -> None:
    assert hands.window.settings.recent_files == (panel_file.resolve(),)


def drop_file(widget, file) -> QDropEvent:
    """Drag a file over a widget and let it go there, as from a program that would rather move it."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(file))])
    both, at = Qt.DropAction.MoveAction | Qt.DropAction.CopyAction, QPoint(widget.rect().center())
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(widget, QDragEnterEvent(at, both, data, left, none))
    QApplication.sendEvent(widget, QDragMoveEvent(at, both, data, left, none))
    event = QDropEvent(QPointF(at), both, data, left, none)
    event.setDropAction(Qt.DropAction.MoveAction)
    QApplication.sendEvent(widget, event)
    return event


@pytest.mark.parametrize("place", ["canvas", "window"])
def test_a_dropped_file_is_opened_and_left_where_it_is(hands, qtbot, tmp_path, place) -> None:
    other = tmp_path / "other.panel.json"
    save(hands.window.bench.document.project.revised(title="Another"), other)
    event = drop_file(hands.view.viewport() if place == "canvas" else hands.window, other)
    qtbot.waitUntil(lambda: hands.window.bench.document.project.title == "Another")
    assert event.isAccepted()
    assert event.dropAction() is Qt.DropAction.CopyAction


def test_a_file_dropped_on_unsaved_work_asks_first(hands, qtbot, tmp_path) -> None:
    other = tmp_path / "other.panel.json"
    save(hands.window.bench.document.project.revised(title="Another"), other)
    change(hands)
    said = answer("Cancel")
    drop_file(hands.view.viewport(), other)
    qtbot.waitUntil(lambda: bool(said))
    assert hands.window.bench.document.project.title != "Another"
    assert hands.item("two").x != 0
