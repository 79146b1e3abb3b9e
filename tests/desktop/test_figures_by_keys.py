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
