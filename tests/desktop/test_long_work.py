"""Long work runs beside the window, says what it is at, and stops when somebody says so; nothing half-made is left."""

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from panelcad.desktop import long_work
from panelcad.desktop.dialogs import verifying
from panelcad.desktop.long_work import Stopped, done_beside
from panelcad.outputs import preview
from tests.desktop.next_dialog import in_dialog

ESCAPE = Qt.Key.Key_Escape


@pytest.fixture(autouse=True)
def at_once(monkeypatch):
    """The dialog comes up without a wait."""
    monkeypatch.setattr(long_work, "_PATIENCE", 0.0)


def test_work_is_done_beside_the_window_and_says_its_step(window, qtbot) -> None:
    said, may_end = threading.Event(), threading.Event()
    seen = []

    def work(tell) -> str:
        tell("Folding the paper")
        said.set()
        may_end.wait(10)
        return threading.current_thread().name

    def look(dialog) -> None:
        qtbot.waitUntil(lambda: dialog.words.text() == "Folding the paper")
        seen.append((dialog.windowTitle(), said.is_set()))
        may_end.set()
        qtbot.waitUntil(lambda: not dialog.isVisible())

    in_dialog(look)
    assert done_beside(window, "For a test", "Beginning", work).startswith("long work")
    assert seen == [("For a test", True)]


def test_what_the_work_raises_is_raised_here(window) -> None:
    def work(_tell) -> None:
        raise ValueError("a sheet is missing")

    with pytest.raises(ValueError, match="a sheet is missing"):
        done_beside(window, "For a test", "Beginning", work)


@pytest.mark.parametrize("stop", ["button", "escape"])
def test_after_a_stop_the_next_step_is_not_begun(window, stop) -> None:
    stopped = threading.Event()
    steps, words = [], []

    def work(tell) -> None:
        steps.append("first")
        stopped.wait(10)
        tell("the second step")
        steps.append("second")

    def press(dialog) -> None:
        if stop == "button":
            QTest.mouseClick(dialog.button, Qt.MouseButton.LeftButton)
        else:
            QTest.keyClick(dialog, ESCAPE)
        words.append((dialog.words.text(), dialog.button.isEnabled(), dialog.isVisible()))
        stopped.set()

    in_dialog(press)
    with pytest.raises(Stopped):
        done_beside(window, "For a test", "Beginning", work)
    assert steps == ["first"]
    assert words == [("Stopping after this step", False, True)]


def test_a_stopped_preview_leaves_the_older_one_whole(window, qtbot, tmp_path, monkeypatch) -> None:
    """Stopped while the first option is drawn."""
    folder = tmp_path / "for the owner"
    folder.mkdir()
    (folder / "proposal.pdf").write_bytes(b"older")
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    drawing, stopped = threading.Event(), threading.Event()
    usual = preview._pictures

    def slow(*what):
        drawing.set()
        stopped.wait(10)
        return usual(*what)

    monkeypatch.setattr(preview, "_pictures", slow)

    def press(dialog) -> None:
        qtbot.waitUntil(drawing.is_set)
        QTest.keyClick(dialog, ESCAPE)
        stopped.set()

    in_dialog(press)
    window.menus.actions["file.preview"].trigger()
    assert [file.name for file in folder.iterdir()] == ["proposal.pdf"]
    assert (folder / "proposal.pdf").read_bytes() == b"older"
    assert "nothing was written" in window.statusBar().words.text()


def test_a_verification_that_is_stopped_is_left_at_once(window, tmp_path, monkeypatch) -> None:
    """It only reads: nobody waits for its end."""
    end = threading.Event()
    monkeypatch.setattr(verifying, "hold", lambda *_: end.wait(10))
    in_dialog(lambda dialog: QTest.keyClick(dialog, ESCAPE))
    verifying.show_verification(window.parts, str(tmp_path / "one.dxf"))
    assert not end.is_set()
    end.set()
    assert window.statusBar().words.text() == "Stopped: one.dxf was not verified"
