"""A shop's limits in the window."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from panelcad.checks.profile_file import read_profile


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
    hands.window.bench.told.connect(told.append)
    before = hands.window.bench.document.project

    hands.window.menus.actions["file.take-limits"].trigger()

    assert hands.window.bench.document.project is before
    assert "it is not whole TOML text" in told[0]
