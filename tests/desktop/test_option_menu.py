"""The menu of options, and the action search that finds what stands in it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QLineEdit

from panelcad.desktop.findable import Finder
from panelcad.model.project import AS_FOUND
from tests.desktop.next_dialog import in_dialog


@pytest.mark.parametrize(
    ("typed", "title"),
    [
        ("copy option", "New option from this one"),
        ("second option", "New option from this one"),
        ("rename", "Rename option"),
        ("compare", "Options side by side"),
        ("delete option", "Remove option"),
    ],
)
def test_the_search_finds_options_by_other_words(window, typed, title):
    found = Finder(window.parts).find(typed)
    assert title in [each.title for each in found[:5]]


def named(name: str, summary: str = ""):
    """The dialog filled in by keys, the name over the one that is proposed."""

    def fill(dialog: QDialog) -> None:
        fields = dialog.form.findChildren(QLineEdit)[:2]
        QTest.keyClicks(QApplication.focusWidget(), name)
        fields[1].setFocus()
        QTest.keyClicks(fields[1], summary)
        QTest.keyClick(fields[1], Qt.Key.Key_Return)

    return fill


def test_a_new_option_is_named_as_one_step_before_it_is_shown(hands) -> None:
    document = hands.window.bench.document
    before = document.project
    in_dialog(named("Two radios", "As asked for"))
    hands.action("option.copy")
    assert (document.option.name, document.option.summary) == ("Two radios", "As asked for")
    assert [step.title for step in document.done] == ["New option"]
    document.undo()
    assert document.project is before


def test_no_option_is_begun_without_a_name_or_by_one_that_is_borne_already(hands) -> None:
    document = hands.window.bench.document
    before, first, said = document.project, document.option.name, []

    def fill(dialog: QDialog) -> None:
        name = dialog.form.findChildren(QLineEdit)[0]
        for words in ("", first):
            name.selectAll()
            QTest.keyClick(name, Qt.Key.Key_Delete)
            QTest.keyClicks(name, words)
            said.append((dialog.problem.text(), dialog.verb.isEnabled()))
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(fill)
    hands.action("option.from_as_found")
    assert said == [("An option needs a name.", False), (f"There is an option '{first}' already.", False)]
    assert document.project is before


def test_a_new_option_is_shown_renamed_and_removed(hands):
    document = hands.window.bench.document
    first = document.option_id
    in_dialog(lambda dialog: dialog.accept())
    hands.action("option.copy")
    assert document.option_id != first
    assert document.option.items == document.project.option(first).items
    in_dialog(named("Two radios", "As asked for"))
    hands.action("option.rename")
    assert (document.option.name, document.option.summary) == ("Two radios", "As asked for")
    hands.action("option.remove")
    assert document.option_id == first
    hands.action("edit.undo")
    assert [each.name for each in document.project.options][-1] == "Two radios"


def test_a_new_option_from_as_found_and_the_panel_as_found_stays(hands):
    document = hands.window.bench.document
    in_dialog(lambda dialog: dialog.accept())
    hands.action("option.from_as_found")
    assert document.option.items == document.project.as_found.items
    document.look_at(AS_FOUND)
    assert not hands.window.menus.actions["option.remove"].isEnabled()


def test_side_by_side_shows_the_pane(hands, qtbot):
    hands.action("option.side_by_side")
    qtbot.waitUntil(hands.window.docks.dock("options").isVisible)
