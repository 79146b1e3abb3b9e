"""Dimensions, notes and lettering put on the panel with the mouse, changed in the properties, taken away."""

import pytest
from PySide6.QtCore import Qt

from panelcad.desktop.panes.one_mark import OneMark
from panelcad.model.markup import Along, Hook
from tests.desktop.test_panel_dialogs import fill, in_dialog, press

ALT = Qt.KeyboardModifier.AltModifier


def option(hands):
    return hands.window.bench.document.option


def put_dimension(hands) -> None:
    """Between the centres of 'one' (-200, 50) and 'two' (0, 50), its line above them."""
    hands.action("tool.dimension")
    hands.hover(-199, 51)
    hands.click(-199, 51)
    hands.click(1, 49)
    hands.hover(-100, 110)
    hands.click(-100, 110)


def test_a_dimension_holds_on_to_centres_and_follows(hands) -> None:
    put_dimension(hands)
    (made,) = option(hands).dimensions
    assert (made.start, made.end, made.along) == (Hook(part="one"), Hook(part="two"), Along.ACROSS)
    assert made.offset == pytest.approx(60, abs=1.0)
    assert [step.title for step in hands.window.bench.document.done] == ["Put a dimension on the drawing"]
    assert hands.window.toolbox.tool_id == "dimension"


def test_a_bare_point_is_taken_with_alt_and_escape_begins_anew(hands) -> None:
    hands.action("tool.dimension")
    hands.click(-199, 51, held=ALT)
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "dimension"
    hands.click(-199, 51, held=ALT)
    hands.click(-199, -60, held=ALT)
    hands.click(-150, 0)
    (made,) = option(hands).dimensions
    assert made.along is Along.UP
    assert made.start.part is None
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"


def test_a_dimension_is_picked_changed_and_taken_away(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    hands.window.bench.selection.set(["dimension-1"])
    sheet = hands.window.docks.dock("properties").widget().sheet
    assert isinstance(sheet, OneMark)
    assert sheet.title.text() == "200.00 mm"
    sheet.along.setCurrentIndex(sheet.along.findData(Along.STRAIGHT))
    sheet.along.activated.emit(0)
    assert option(hands).dimensions[0].along is Along.STRAIGHT
    hands.action("edit.delete")
    assert option(hands).dimensions == ()


def test_a_note_is_dragged_from_what_it_points_at(hands, qtbot) -> None:
    hands.action("tool.note")
    in_dialog(lambda dialog: (fill(dialog, Words="Keep the old screws"), press(dialog, "Put")))
    hands.drag((1, 51), (80, 110))
    qtbot.waitUntil(lambda: len(option(hands).drawing_notes) == 1)
    (note,) = option(hands).drawing_notes
    assert (note.text, note.to) == ("Keep the old screws", Hook(part="two"))
    assert (note.x, note.y) == pytest.approx((80, 110), abs=1.0)
    assert hands.window.toolbox.tool_id == "select"
    sheet = hands.window.docks.dock("properties").widget().sheet
    assert isinstance(sheet, OneMark)
    assert sheet.text.text() == "Keep the old screws"


def test_lettering_goes_into_the_metal(hands, qtbot) -> None:
    hands.action("tool.lettering")
    in_dialog(lambda dialog: (fill(dialog, Words="FLAPS", Height_of_a_capital="4"), press(dialog, "Put")))
    hands.click(100, 100)
    qtbot.waitUntil(lambda: len(option(hands).plates[0].engravings) == 1)
    (words,) = option(hands).plates[0].engravings
    assert (words.text, words.height) == ("FLAPS", 4.0)


def test_no_words_are_told_and_too_many_too(hands, qtbot) -> None:
    told = []

    def act(dialog) -> None:
        for text in ("", "x" * 300):
            fill(dialog, Words=text)
            told.append((dialog.problem.text(), dialog.verb.isEnabled()))
        press(dialog, "Cancel")

    hands.action("tool.lettering")
    in_dialog(act)
    hands.click(100, 100)
    qtbot.waitUntil(lambda: len(told) == 2)
    assert told[0] == ("There are no words yet.", False)
    assert "200 characters" in told[1][0]
    assert not told[1][1]
