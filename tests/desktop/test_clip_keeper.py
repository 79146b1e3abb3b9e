"""What was copied outlives the window where the clipboard is emptied with it, and goes before no later copy."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.main_window import MainWindow
from panelcad.store.kept_clip import clip_file

CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture(autouse=True)
def empty_clipboard(qapp):
    QApplication.clipboard().clear()
    yield
    QApplication.clipboard().clear()


@pytest.fixture
def later(qtbot, window, panel_file, hands):
    """Copy a thing, close the window, lose the clipboard, and open the file in another."""
    hands.click(0, 50)
    QTest.keyClick(window, Qt.Key.Key_C, CTRL)
    window.close()
    QApplication.clipboard().clear()
    made = MainWindow(window.settings)
    made.show()
    made.open(panel_file)
    yield made
    made.bench.document.mark_saved(panel_file, made.bench.document.project)
    made.close()
    made.deleteLater()


def paste(window) -> tuple[int, str]:
    """How many things are there then, and what is said."""
    QTest.keyClick(window, Qt.Key.Key_V, CTRL)
    return len(window.bench.document.option.items), window.statusBar().words.text()


def test_what_was_copied_is_pasted_in_a_later_window_which_says_so(later) -> None:
    count, said = paste(later)
    assert count == 4
    assert said.startswith("The clipboard was empty: pasted what was copied in the window that closed at 20")


def test_a_later_copy_of_anything_else_goes_before_it_and_ends_it(later) -> None:
    QApplication.clipboard().setText("a letter home")
    assert paste(later) == (3, "The clipboard holds nothing that belongs on a panel")
    QApplication.clipboard().clear()
    assert paste(later) == (3, "The clipboard is empty")


def test_closing_with_something_else_on_the_clipboard_keeps_nothing(later) -> None:
    assert clip_file().exists()
    QApplication.clipboard().setText("a letter home")
    later.bench.document.mark_saved(later.bench.document.path, later.bench.document.project)
    later.close()
    assert not clip_file().exists()


def test_what_was_kept_and_can_no_longer_be_read_is_not_pasted(later) -> None:
    clip_file().write_text("{")
    assert paste(later) == (3, "The clipboard is empty")
