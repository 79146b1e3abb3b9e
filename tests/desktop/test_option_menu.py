"""The menu of options, and the action search that finds what stands in it."""

import pytest
from PySide6.QtWidgets import QDialog, QLineEdit

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


def test_a_new_option_is_shown_renamed_and_removed(hands):
    document = hands.window.bench.document
    first = document.option_id
    hands.action("option.copy")
    assert document.option_id != first
    assert document.option.items == document.project.option(first).items

    def fill(dialog: QDialog) -> None:
        name, summary = dialog.form.findChildren(QLineEdit)[:2]
        for field, words in ((name, "Two radios"), (summary, "As asked for")):
            field.setText(words)
            field.textEdited.emit(words)
        dialog.accept()

    in_dialog(fill)
    hands.action("option.rename")
    assert (document.option.name, document.option.summary) == ("Two radios", "As asked for")
    hands.action("option.remove")
    assert document.option_id == first
    hands.action("edit.undo")
    assert [each.name for each in document.project.options][-1] == "Two radios"


def test_a_new_option_from_as_found_and_the_panel_as_found_stays(hands):
    document = hands.window.bench.document
    hands.action("option.from_as_found")
    assert document.option.items == document.project.as_found.items
    document.look_at(AS_FOUND)
    assert not hands.window.menus.actions["option.remove"].isEnabled()


def test_side_by_side_shows_the_pane(hands, qtbot):
    hands.action("option.side_by_side")
    qtbot.waitUntil(hands.window.docks.dock("options").isVisible)
