"""A shop's limits in the window."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QMessageBox

from panelcad.checks.profile_file import read_profile
from panelcad.desktop.dialogs.new_project import NewProject
from panelcad.desktop.dialogs.preferences import Preferences
from tests.desktop.next_dialog import in_dialog

OURS = 'name = "Our shop"\nunit = "mm"\n[limits]\nweb_advised = 9\n'


def test_limits_are_written_taken_and_undone(hands, tmp_path, monkeypatch) -> None:
    file = tmp_path / "limits.toml"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(file), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(file), ""))
    document = hands.window.bench.document
    before = document.project

    hands.window.menus.actions["file.write-limits"].trigger()
    assert read_profile(file) == before.profile
    file.write_text('name = "Our shop"\nunit = "mm"\n[limits]\nweb_advised = 9\n')
    hands.window.menus.actions["file.take-limits"].trigger()
    assert document.project.profile.web_advised == 9.0
    QTest.keyClick(hands.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert document.project is before


def test_an_unusable_file_is_told_and_changes_nothing(hands, tmp_path, monkeypatch) -> None:
    file = tmp_path / "limits.toml"
    file.write_text("unit =")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(file), ""))
    told: list[str] = []
    hands.window.bench.refused.connect(told.append)
    before = hands.window.bench.document.project

    hands.window.menus.actions["file.take-limits"].trigger()

    assert hands.window.bench.document.project is before
    assert "it is not whole TOML text" in told[0]


def prefer(hands, file, *, is_refused: bool = False) -> None:
    """Name the file of limits in the preferences, by keys."""

    def fill(dialog) -> None:
        dialog.limits.text.selectAll()
        QTest.keyClicks(dialog.limits.text, str(file))
        QTest.keyClick(dialog, Qt.Key.Key_Return)
        assert dialog.isVisible() == is_refused
        assert bool(dialog.problem.text()) == is_refused

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")


def begin(hands) -> None:
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Return), NewProject)
    hands.action("file.new")


def test_new_panels_are_judged_by_the_limits_of_the_preferences(hands, tmp_path) -> None:
    file = tmp_path / "ours.toml"
    file.write_text(OURS)
    opened = hands.window.bench.document.project
    prefer(hands, file)
    assert hands.window.bench.document.project is opened
    begin(hands)
    assert hands.window.bench.document.project.profile.web_advised == 9.0
    assert hands.window.bench.document.is_untouched


def test_limits_that_cannot_be_read_are_no_preference(hands, tmp_path) -> None:
    file = tmp_path / "ours.toml"
    file.write_text("unit =")
    prefer(hands, file, is_refused=True)
    assert hands.window.settings.limits_file is None


def test_limits_that_have_gone_are_told_and_the_panel_begins_with_the_usual_ones(hands, tmp_path) -> None:
    file = tmp_path / "ours.toml"
    file.write_text(OURS)
    prefer(hands, file)
    file.unlink()
    told: list[str] = []

    def read(box) -> None:
        told.append(box.text())
        box.accept()

    in_dialog(lambda dialog: (QTest.keyClick(dialog, Qt.Key.Key_Return), in_dialog(read, QMessageBox)), NewProject)
    hands.action("file.new")
    assert "ours.toml" in told[0]
    assert hands.window.bench.document.path is None
    assert hands.window.bench.document.project.profile.web_advised != 9.0
