"""Dimensions, notes and lettering put on the panel with the mouse, changed in the properties, taken away."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from panelcad.desktop.panes.one_mark import OneMark
from panelcad.editing.marks import add_dimension, add_note
from panelcad.editing.plates import add_engraving
from panelcad.model.markup import Along, DrawingNote, Hook
from panelcad.model.plate import Engraving
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_panel_dialogs import fill, press

ALT, CTRL, SHIFT = (
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
)


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


def test_a_dimension_line_is_pulled_nearer_and_put_back(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    (before,) = option(hands).dimensions
    hands.click(-150, 110)
    assert hands.window.bench.selection.ids == ("dimension-1",)
    hands.drag((-150, 110), (-130, 120), held=ALT, steps=6)
    (pulled,) = option(hands).dimensions
    assert pulled.offset == pytest.approx(before.offset + 10.0, abs=1.0)
    assert (pulled.start, pulled.end, pulled.along) == (before.start, before.end, before.along)
    hands.action("edit.undo")
    assert option(hands).dimensions == (before,)


def test_a_dimension_is_picked_by_its_figure(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    # The figure stands above the middle of the line, 9 pixels high.
    hands.click(-100, 110 + 7 / hands.view.zoom)
    assert hands.window.bench.selection.ids == ("dimension-1",)
    hands.click(-100, 110 + 30 / hands.view.zoom)
    assert hands.window.bench.selection.ids == ()


def test_a_dimension_is_picked_from_the_list_and_taken_away_by_keys(hands, qtbot) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    tree = hands.window.docks.dock("items").widget().tree
    tree.setFocus()
    qtbot.keyClick(tree, Qt.Key.Key_End)
    assert hands.window.bench.selection.ids == ("dimension-1",)
    assert tree.currentItem().text(0) == "dimension 1"
    hands.action("edit.delete")
    assert [step.title for step in hands.window.bench.document.done][-1] == "Take away dimension 1"
    assert tree.topLevelItemCount() == 3


def test_an_instrument_is_taken_hold_of_where_extension_lines_cross_it(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    hands.click(0, 60)
    assert hands.window.bench.selection.ids == ("two",)


def test_escape_leaves_a_dimension_line_where_it_was(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    (before,) = option(hands).dimensions
    hands.press(-150, 110)
    hands.move(-150, 130)
    hands.move(-150, 140)
    hands.key(Qt.Key.Key_Escape)
    hands.release(-150, 140)
    assert option(hands).dimensions == (before,)
    assert len(hands.window.bench.document.done) == 1


def test_a_dimension_line_comes_in_line_with_another(hands) -> None:
    put_dimension(hands)
    hands.window.bench.edit(
        "Another",
        lambda project, name: add_dimension(
            project, name, "main", Hook(part="two"), Hook(part="three"), Along.ACROSS, 80.0
        )[0],
    )
    hands.action("tool.select")
    hands.drag((-150, 110), (-150, 127), steps=6)
    # The other line stands at y = 50 + 80.
    assert option(hands).dimensions[0].offset == 80.0


def test_a_dimension_by_keys(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    (before,) = option(hands).dimensions
    hands.click(-150, 110)
    hands.key(Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert option(hands).dimensions[0].offset == pytest.approx(before.offset + 5.0)
    hands.key(Qt.Key.Key_Delete)
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


def test_a_note_is_dragged_under_a_centre_and_moved_by_figures(hands, qtbot) -> None:
    note = DrawingNote(id="note", plate="main", text="Keep the old screws", x=60.0, y=-80.0, height=6.0)
    hands.window.bench.edit("Note", lambda project, name: add_note(project, name, note)[0])
    hands.drag((70, -77), (11.5, -97), steps=6)
    # Its own place, left of where it was grabbed, came under the centre of 'two' at x = 0.
    assert option(hands).drawing_notes[0].x == 0.0
    sheet = hands.window.docks.dock("properties").widget().sheet
    sheet.up.selectAll()
    qtbot.keyClicks(sheet.up, "-100 + 2.5")
    qtbot.keyClick(sheet.up, Qt.Key.Key_Return)
    assert option(hands).drawing_notes[0].y == -97.5


def test_lettering_goes_into_the_metal(hands, qtbot) -> None:
    hands.action("tool.lettering")
    in_dialog(lambda dialog: (fill(dialog, Words="FLAPS", Height_of_a_capital="4"), press(dialog, "Put")))
    hands.click(100, 100)
    qtbot.waitUntil(lambda: len(option(hands).plates[0].engravings) == 1)
    (words,) = option(hands).plates[0].engravings
    assert (words.text, words.height) == ("FLAPS", 4.0)


def test_lettering_takes_other_words_and_another_height(hands, qtbot) -> None:
    hands.action("tool.lettering")
    in_dialog(lambda dialog: (fill(dialog, Words="FLAPS", Height_of_a_capital="4"), press(dialog, "Put")))
    hands.click(100, 100)
    qtbot.waitUntil(lambda: len(option(hands).plates[0].engravings) == 1)
    rows = hands.window.docks.dock("properties").widget().sheet.lettering
    for field, text in ((rows.text, "TRIM"), (rows.height, "2 + 1.5")):
        field.selectAll()
        qtbot.keyClicks(field, text)
        qtbot.keyClick(field, Qt.Key.Key_Return)
    (words,) = option(hands).plates[0].engravings
    assert (words.text, words.height) == ("TRIM", 3.5)
    rows.height.selectAll()
    qtbot.keyClicks(rows.height, "-3")
    qtbot.keyClick(rows.height, Qt.Key.Key_Return)
    assert option(hands).plates[0].engravings == (words,)


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


def word(hands) -> str:
    return hands.window.statusBar().words.text()


def test_a_dimension_is_pasted_with_both_that_it_measures(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    hands.click(-200, 50)
    hands.click(0, 50, held=SHIFT)
    QTest.keyClick(hands.window, Qt.Key.Key_C, CTRL)
    assert word(hands) == "Copied 2 to the clipboard"
    QTest.keyClick(hands.window, Qt.Key.Key_V, CTRL)
    first, second = option(hands).dimensions
    assert {second.start.part, second.end.part} == {item.id for item in option(hands).items[3:]}
    assert second.offset == first.offset
    hands.action("edit.undo")
    assert option(hands).dimensions == (first,)


def test_a_dimension_whose_other_end_stays_is_left_out_and_that_is_said(hands) -> None:
    put_dimension(hands)
    hands.action("tool.select")
    hands.window.bench.selection.set(["two", "dimension-1"])
    QTest.keyClick(hands.window, Qt.Key.Key_C, CTRL)
    assert word(hands).startswith("Copied 1 to the clipboard, left out: 1 dimension to what is not copied too")
    QTest.keyClick(hands.window, Qt.Key.Key_D, CTRL)
    assert word(hands).startswith("Duplicated 1, left out: 1 dimension")
    assert len(option(hands).dimensions) == 1
    hands.window.bench.selection.set(["dimension-1"])
    QTest.keyClick(hands.window, Qt.Key.Key_C, CTRL)
    assert word(hands) == "A dimension is copied together with what it measures."


def test_a_second_note_and_a_second_lettering_do_not_lie_on_the_first(hands) -> None:
    document = hands.window.bench.document
    note = DrawingNote(id="note", plate="main", text="Ream", x=-100.0, y=-60.0)
    project = add_note(document.project, "new", note)[0]
    words = Engraving(id="words", text="FLAPS", x=-100.0, y=-90.0, height=4.0)
    document.apply("Words", add_engraving(project, "new", "main", words).project)
    hands.window.bench.selection.set(["note", "words"])
    QTest.keyClick(hands.window, Qt.Key.Key_C, CTRL)
    for _ in range(2):
        QTest.keyClick(hands.window, Qt.Key.Key_V, CTRL)
    assert len({(one.x, one.y) for one in option(hands).drawing_notes}) == 3
    assert len({(one.x, one.y) for one in option(hands).plates[0].engravings}) == 3
    assert hands.window.bench.selection.ids == ("words-3", "note-3")
