"""Figures of the properties reached by their keys; what is typed beside them is not lost."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.desktop.test_keyboard_goes_on import ALT, pane


@pytest.mark.parametrize(
    ("key", "field"), [("X", "across"), ("Y", "up"), ("U", "turn"), ("N", "name"), ("R", "origin")]
)
def test_an_underlined_letter_leads_to_its_field(hands, key, field) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key[f"Key_{key}"], ALT)
    assert QApplication.focusWidget() is getattr(pane(hands, "properties").sheet, field)


def test_a_figure_is_typed_after_its_key(hands) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_X, ALT)
    type_and_enter("-7.5")
    assert hands.item("two").x == -7.5


def type_and_enter(text: str) -> None:
    for letter in text:
        QTest.keyClicks(QApplication.focusWidget(), letter)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)


def choose_from(sheet, words: str) -> None:
    """Open the list, and take the entry of these words."""
    sheet.origin.setFocus()
    QTest.keyClick(sheet.origin, Qt.Key.Key_Down, ALT)
    entries = sheet.origin.view()
    entries.setCurrentIndex(entries.model().index(sheet.origin.findText(words), 0))
    QTest.keyClick(entries, Qt.Key.Key_Return)


def test_after_a_choice_of_from_the_figure_typed_next_is_x(hands) -> None:
    hands.click(0, 50)
    sheet = pane(hands, "properties").sheet
    choose_from(sheet, "the panel's lower left")
    type_and_enter("290")
    assert hands.item("two").x == pytest.approx(-10)


def test_a_figure_typed_at_the_choice_itself_is_x(hands) -> None:
    hands.click(0, 50)
    pane(hands, "properties").sheet.origin.setFocus()
    type_and_enter("-7.5")
    assert hands.item("two").x == -7.5


def test_a_click_into_a_figure_means_all_of_it(hands) -> None:
    hands.click(0, 50)
    up = pane(hands, "properties").sheet.up
    QTest.mouseClick(up, Qt.MouseButton.LeftButton)
    type_and_enter("3 1/8in + 0,6")
    assert hands.item("two").y == pytest.approx(79.975)


def test_a_second_click_sets_the_cursor(hands) -> None:
    hands.click(0, 50)
    up = pane(hands, "properties").sheet.up
    for _ in range(2):
        QTest.mouseClick(up, Qt.MouseButton.LeftButton, pos=up.rect().center())
    assert not up.hasSelectedText()
    assert up.hasFocus()


def test_a_double_click_means_the_figure_not_only_what_follows_its_point(hands) -> None:
    hands.click(0, 50)
    across = pane(hands, "properties").sheet.across
    across.setFocus()
    QTest.keyClicks(across, "12.5")
    QTest.keyClick(across, Qt.Key.Key_Return)
    across.setFocus()
    QTest.mouseDClick(across, Qt.MouseButton.LeftButton)
    assert across.selectedText() == "12.5"


def test_a_dragged_selection_in_a_figure_stays_as_it_was_dragged(hands) -> None:
    hands.click(200, -50)
    across = pane(hands, "properties").sheet.across
    start, end = across.rect().center(), across.rect().center()
    start.setX(across.cursorRect().left() + 4)
    end.setX(start.x() + across.fontMetrics().horizontalAdvance("2"))
    QTest.mousePress(across, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(across, end)
    QTest.mouseRelease(across, Qt.MouseButton.LeftButton, pos=end)
    assert across.selectedText() == "2"


def test_the_next_thing_is_reckoned_from_there_too(hands) -> None:
    hands.click(0, 50)
    choose_from(pane(hands, "properties").sheet, "one")
    hands.click(200, -50)
    sheet = pane(hands, "properties").sheet
    assert sheet.origin.currentText() == "one"
    assert sheet.across.text() == "400"


def test_a_thing_is_not_reckoned_from_itself_and_the_choice_is_remembered(hands) -> None:
    hands.click(0, 50)
    choose_from(pane(hands, "properties").sheet, "one")
    hands.click(-200, 50)
    assert pane(hands, "properties").sheet.origin.currentText() == "the datum"
    hands.click(0, 50)
    assert pane(hands, "properties").sheet.origin.currentText() == "one"
