"""The tests' own answer to a dialog: it does not hang, and does not pass where nothing was answered."""

import pytest
from PySide6.QtWidgets import QDialog, QMessageBox

from tests.desktop import next_dialog
from tests.desktop.next_dialog import in_dialog, stop_waiting


def test_the_dialog_is_closed_though_nobody_closed_it(qapp) -> None:
    seen = []
    in_dialog(seen.append)
    dialog = QDialog()
    dialog.exec()
    assert seen == [dialog]
    assert not dialog.isVisible()


def test_one_that_never_opens_is_told(qapp) -> None:
    in_dialog(lambda _: None, QMessageBox)
    assert stop_waiting() == ["QMessageBox"]
    assert stop_waiting() == []


def test_another_that_stands_in_the_way_is_closed_and_told(qtbot, monkeypatch) -> None:
    monkeypatch.setattr(next_dialog, "_FOR_ANOTHER", 2)
    in_dialog(lambda _: pytest.fail("it is no message"), QMessageBox)
    dialog = QDialog()
    dialog.setWindowTitle("Another")
    with qtbot.captureExceptions() as faults:
        dialog.exec()
    assert str(faults[0][1]) == "'Another' was open instead of a QMessageBox"
