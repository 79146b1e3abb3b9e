import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.panes.findings import FindingsPane
from panelcad.editing.move import move_to
from panelcad.geometry.point import Point
from panelcad.model.shape import Rectangle
from tests.checks.made import rib
from tests.desktop.next_dialog import in_dialog


def pane(hands, name):
    return hands.window.docks.dock(name).widget()


def type_into(field, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


# Properties


@pytest.mark.parametrize(
    ("text", "mm"), [("25", 25.0), ("1 in", 25.4), ("3 1/8in + 0,6", 79.975), ("100/8", 12.5), ("-4.5 mm", -4.5)]
)
def test_a_position_is_typed_in_any_unit(hands, text, mm) -> None:
    hands.click(0, 50)
    type_into(pane(hands, "properties").sheet.across, text)
    assert hands.item("two").x == pytest.approx(mm)
    assert [step.title for step in hands.window.bench.document.done] == ["Move two"]


def test_nonsense_is_marked_and_changes_nothing(hands) -> None:
    hands.click(0, 50)
    field = pane(hands, "properties").sheet.across
    type_into(field, "3 apples")
    assert field.property("wrong") is True
    assert "cannot be read" in field.toolTip()
    assert hands.item("two").x == 0.0
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert field.text() == "0"


def test_a_position_can_be_given_from_another_thing(hands) -> None:
    hands.click(0, 50)
    sheet = pane(hands, "properties").sheet
    sheet.origin.setCurrentIndex(sheet.origin.findText("one"))
    sheet.origin.activated.emit(sheet.origin.currentIndex())
    assert sheet.across.text() == "200"
    type_into(sheet.across, "100")
    assert hands.item("two").x == -100.0


def test_the_position_follows_a_drag(hands) -> None:
    hands.click(0, 50)
    sheet = pane(hands, "properties").sheet
    hands.press(0, 50)
    hands.move(20, 60)
    hands.move(33, 80, held=Qt.KeyboardModifier.AltModifier)
    assert float(sheet.across.text()) == pytest.approx(33, abs=1)
    hands.key(Qt.Key.Key_Escape)
    assert sheet.across.text() == "0"


def test_renaming_and_turning(hands) -> None:
    hands.click(0, 50)
    type_into(pane(hands, "properties").sheet.name, "Clock")
    type_into(pane(hands, "properties").sheet.turn, "22,5")
    assert hands.item("two").name == "Clock"
    assert hands.item("two").rotation == 22.5


def test_several_things_move_by_figures(hands) -> None:
    hands.drag((-260, 120), (100, 0))
    sheet = pane(hands, "properties").sheet
    type_into(sheet.dx, "10")
    QTest.mouseClick(sheet.move_button, Qt.MouseButton.LeftButton)
    assert [hands.item(name).x for name in ("one", "two", "three")] == [-190.0, 10.0, 200.0]


def test_enter_and_the_buttons_key_move_several_things_by_what_is_typed(hands) -> None:
    hands.drag((-260, 120), (100, 0))
    sheet = pane(hands, "properties").sheet
    sheet.dx.setFocus()
    sheet.dx.selectAll()
    QTest.keyClicks(sheet.dx, "10")
    QTest.keyClick(sheet.dx, Qt.Key.Key_Tab)
    QTest.keyClicks(sheet.dy, "-5")
    QTest.keyClick(sheet.dy, Qt.Key.Key_Return)
    assert (hands.item("one").x, hands.item("one").y) == (-190.0, 45.0)
    assert (sheet.dx.text(), sheet.dy.text()) == ("0", "0")
    sheet.dx.setFocus()
    sheet.dx.selectAll()
    QTest.keyClicks(sheet.dx, "-10")
    sheet.move_button.click()
    assert (hands.item("one").x, hands.item("one").y) == (-200.0, 45.0)
    assert len(hands.window.bench.document.done) == 2


def test_nonsense_moves_nothing(hands) -> None:
    hands.drag((-260, 120), (100, 0))
    sheet = pane(hands, "properties").sheet
    type_into(sheet.dx, "10")
    type_into(sheet.dy, "2 apples")
    assert hands.item("one").y == 50.0
    assert len(hands.window.bench.document.done) == 1


def test_what_is_locked_is_seen_in_properties_and_in_the_list(hands) -> None:
    hands.click(0, 50)
    sheet, tree = pane(hands, "properties").sheet, pane(hands, "items").tree
    sheet.locked.click()
    assert hands.window.bench.document.option.locked == ("two", "two-cut")
    assert sheet.locked.isChecked()
    assert not tree.findItems("two", Qt.MatchFlag.MatchExactly)[0].icon(0).isNull()
    assert tree.findItems("one", Qt.MatchFlag.MatchExactly)[0].icon(0).isNull()
    sheet.locked.click()
    assert hands.window.bench.document.option.locked == ()
    assert tree.findItems("two", Qt.MatchFlag.MatchExactly)[0].icon(0).isNull()


# Library


def test_the_library_is_searched(hands) -> None:
    library = pane(hands, "library")
    everything = library.model.rowCount()
    QTest.keyClicks(library.search, "altimeter")
    assert 0 < library.model.rowCount() < everything
    assert "ltimeter" in library.model.index(0).data()


def test_other_words_are_answered_from_the_top_of_the_list(hands, qtbot) -> None:
    library = pane(hands, "library")
    bar = library.list.verticalScrollBar()
    QTest.keyClicks(library.search, "switch")
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    bar.setValue(bar.maximum())
    library.search.selectAll()
    QTest.keyClicks(library.search, "engine")
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    assert bar.value() == 0


def test_words_that_suit_nothing_say_so(hands) -> None:
    library = pane(hands, "library")
    QTest.keyClicks(library.search, "zzzzzz")
    assert library.model.rowCount() == 0
    assert library.none.isVisible()


def test_a_double_click_puts_a_cutout_on_a_free_place(hands) -> None:
    library = pane(hands, "library")
    QTest.keyClicks(library.search, "altimeter")
    where = library.list.visualRect(library.model.index(0)).center()
    viewport = library.list.viewport()
    QTest.mouseClick(viewport, Qt.MouseButton.LeftButton, pos=where)
    QTest.mouseDClick(viewport, Qt.MouseButton.LeftButton, pos=where)
    option = hands.window.bench.document.option
    assert len(option.items) == 4
    assert hands.window.bench.selection.ids == (option.items[-1].id,)
    assert len(hands.window.bench.document.done) == 1
    report = hands.window.bench.judge
    report.check_now()
    assert not any("overlap" in finding.problem for finding in report.report.findings)


def put_down(hands, words: str) -> str:
    """Double-click what is found first by these words; what the status bar says then."""
    library = pane(hands, "library")
    library.search.clear()
    QTest.keyClicks(library.search, words)
    where = library.list.visualRect(library.model.index(0)).center()
    QTest.mouseClick(library.list.viewport(), Qt.MouseButton.LeftButton, pos=where)
    QTest.mouseDClick(library.list.viewport(), Qt.MouseButton.LeftButton, pos=where)
    return hands.window.statusBar().words.text()


def test_a_place_that_is_free_in_front_only_is_said_to_be(hands) -> None:
    assert put_down(hands, "altimeter").endswith("what stands behind this plate is not entered.")
    around = rib(Rectangle(width=2000.0, height=2000.0), 0.0, 0.0)
    hands.window.bench.edit("Rib", lambda project, _: project.revised(surroundings=around))
    assert put_down(hands, "altimeter").startswith("Free in front only. Body meets an obstacle: ")
    assert len(hands.window.bench.document.option.items) == 5


def test_a_row_says_where_it_begins_that_it_is_free_in_front_only(hands) -> None:
    around = rib(Rectangle(width=2000.0, height=2000.0), 0.0, 0.0)
    hands.window.bench.edit("Rib", lambda project, _: project.revised(surroundings=around))
    seen = []

    def look(dialog) -> None:
        (words,) = [label for label in dialog.findChildren(QLabel) if label.text().startswith("Free in front only")]
        seen.append(words.isVisible())
        entry = next(each for each in dialog.findChildren(LengthEntry) if each.accessibleName() == "x")
        entry.selectAll()
        QTest.keyClicks(entry, "5")
        seen.append(words.isVisible())

    in_dialog(look)
    hands.action("place.row")
    assert seen == [True, False]


def test_a_cutout_is_dragged_onto_the_panel(hands, qtbot) -> None:
    library, viewport = pane(hands, "library"), hands.view.viewport()
    data = library.model.mimeData([library.model.index(0)])
    at = hands.pixel(100, 80)
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.AltModifier
    copy = Qt.DropAction.CopyAction
    QApplication.sendEvent(viewport, QDragEnterEvent(at, copy, data, left, none))
    QApplication.sendEvent(viewport, QDragMoveEvent(at, copy, data, left, none))
    assert len(hands.window.bench.document.option.items) == 3
    QApplication.sendEvent(viewport, QDropEvent(QPointF(at), copy, data, left, none))
    placed = hands.window.bench.document.option.items[-1]
    assert (placed.x, placed.y) == pytest.approx((100, 80), abs=1)
    assert len(hands.window.bench.document.done) == 1


def test_a_cutout_in_hand_is_put_down_by_clicks_until_escape(hands) -> None:
    library = pane(hands, "library")
    library.list.setCurrentIndex(library.model.index(0))
    QTest.mouseClick(library.place, Qt.MouseButton.LeftButton)
    for x in (-100, 110):
        hands.hover(x, -80)
        hands.click(x, -80)
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"
    assert len(hands.window.bench.document.option.items) == 5
    assert [step.title[:5] for step in hands.window.bench.document.done] == ["Place", "Place"]


# Findings


def test_findings_come_up_while_dragging(hands, qtbot) -> None:
    findings = pane(hands, "findings")
    assert not any("overlap" in entry.words for entry in findings.model.entries)
    hands.press(-200, 50)
    for x in range(-190, -29, 20):
        hands.move(x, 50)
    qtbot.waitUntil(lambda: any("overlap" in entry.words for entry in findings.model.entries))
    hands.key(Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not any("overlap" in entry.words for entry in findings.model.entries))


def overlap(hands, qtbot) -> FindingsPane:
    """Two instruments one over the other."""
    hands.drag((-200, 50), (-30, 50), steps=10)
    findings = pane(hands, "findings")
    qtbot.waitUntil(lambda: any("overlap" in entry.words for entry in findings.model.entries))
    return findings


def test_a_click_on_a_finding_goes_there(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    zoom = hands.view.zoom
    row = next(i for i, entry in enumerate(findings.model.entries) if "overlap" in entry.words)
    where = findings.list.visualRect(findings.model.index(row)).center()
    QTest.mouseClick(findings.list.viewport(), Qt.MouseButton.LeftButton, pos=where)
    assert hands.view.zoom > zoom
    finding = findings.model.entries[row].finding
    x1, y1, x2, y2 = hands.view.seen()
    assert all(x1 < x < x2 and y1 < y < y2 for x, y in finding.where)
    assert hands.window.bench.stage.current_finding == finding.identity


def click_finding(findings, row: int) -> None:
    where = findings.list.visualRect(findings.model.index(row)).center()
    QTest.mouseClick(findings.list.viewport(), Qt.MouseButton.LeftButton, pos=where)


def test_a_click_on_a_finding_selects_what_it_is_about(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    bench = hands.window.bench
    bench.selection.set(["three"])
    row = next(i for i, entry in enumerate(findings.model.entries) if "overlap" in entry.words)
    click_finding(findings, row)
    assert set(bench.selection.ids) == {"one", "two"}
    assert "2 things" in bench.selection_words()


def test_a_click_leaves_the_selection_that_the_list_is_about(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    hands.window.bench.selection.set(["two"])
    QTest.keyClick(findings.filter, Qt.Key.Key_End)
    findings.filter.activated.emit(findings.filter.currentIndex())
    row = next(i for i, entry in enumerate(findings.model.entries) if "overlap" in entry.words)
    click_finding(findings, row)
    assert hands.window.bench.selection.ids == ("two",)


def test_a_key_leads_back_from_findings_to_the_view_before(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    hands.wheel(0, 0, 2)
    before, zoom = hands.view.seen(), hands.view.zoom
    click_finding(findings, 0)
    click_finding(findings, 1)
    there = hands.view.seen()
    hands.key(Qt.Key.Key_8, Qt.KeyboardModifier.ControlModifier)
    assert hands.view.zoom == pytest.approx(zoom)
    assert hands.view.seen() == pytest.approx(before, abs=1 / zoom)
    hands.key(Qt.Key.Key_8, Qt.KeyboardModifier.ControlModifier)
    assert hands.view.seen() == pytest.approx(there, abs=1 / zoom)


def test_going_back_to_all_keeps_all_in_view(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    hands.action("view.all")
    click_finding(findings, 0)
    hands.action("view.before")
    assert hands.view.wants_all


def test_findings_are_marked_on_the_canvas_and_a_mark_can_be_picked(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    overlay = hands.window.bench.stage.scene.overlay
    marked = {mark.key: mark for mark in overlay.marks}
    shown = [entry.finding for entry in findings.model.entries if entry.finding.where]
    assert {finding.identity for finding in shown} <= set(marked)
    finding = next(f for f in shown if "overlap" in f.problem)
    x = sum(point[0] for point in finding.where) / len(finding.where)
    y = sum(point[1] for point in finding.where) / len(finding.where)
    hands.click(x, y)
    assert hands.window.bench.stage.current_finding in marked


def test_what_lies_below_a_mark_is_dragged_or_added_to_the_selection(hands, qtbot) -> None:
    overlap(hands, qtbot)
    bench = hands.window.bench
    mark = next(mark for mark in bench.stage.scene.overlay.marks if "overlap" in mark.title)
    at = tuple((first + last) / 2 for first, last in zip(mark.where[0], mark.where[-1], strict=True))
    assert bench.stage.scene.overlay.mark_at(Point(*at))
    bench.selection.set(["three"])
    hands.click(*at, held=Qt.KeyboardModifier.ShiftModifier)
    assert len(bench.selection) == 2
    assert bench.stage.current_finding == ""
    hands.drag(at, (at[0], at[1] - 60), held=Qt.KeyboardModifier.AltModifier)
    assert bench.document.done[-1].title.startswith("Move")
    assert bench.stage.current_finding == ""


def test_the_filter_leaves_only_errors(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    findings.filter.setFocus()
    QTest.keyClick(findings.filter, Qt.Key.Key_Down)
    findings.filter.activated.emit(findings.filter.currentIndex())
    assert findings.model.entries
    assert {entry.kind.value for entry in findings.model.entries} == {"error"}


def test_the_filter_leaves_only_what_is_about_the_selection(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    every = [entry.finding for entry in findings.model.entries]
    QTest.keyClick(findings.filter, Qt.Key.Key_End)
    findings.filter.activated.emit(findings.filter.currentIndex())
    for name in ("two", "three"):
        hands.window.bench.selection.set((name,))
        about = [found for found in every if {name, f"{name}-cut"} & set(found.items)]
        assert [entry.finding for entry in findings.model.entries] == about
        assert len(about) < len(every) or name == "two"
    hands.window.bench.selection.clear()
    assert not findings.model.entries
    assert findings.count.text().startswith(f"0 of {len(every)} shown")


# The list of things


def test_choosing_in_the_list_chooses_on_the_canvas(hands) -> None:
    items = pane(hands, "items")
    row = items.tree.findItems("three", Qt.MatchFlag.MatchExactly)[0]
    QTest.mouseClick(
        items.tree.viewport(), Qt.MouseButton.LeftButton, pos=items.tree.visualItemRect(row).center() - QPoint(10, 0)
    )
    assert hands.window.bench.selection.ids == ("three",)


def test_choosing_on_the_canvas_chooses_in_the_list(hands) -> None:
    hands.click(0, 50)
    items = pane(hands, "items")
    assert [row.text(0) for row in items.tree.selectedItems()] == ["two"]


# What was done


def rows_of(listed) -> list[str]:
    """What the rows say; each is as high as its words with the style's room around them."""
    QApplication.processEvents()
    rows = [listed.item(row) for row in range(listed.count())]
    least = listed.fontMetrics().height() + 6
    assert all(listed.visualItemRect(row).height() >= least for row in rows)
    return [row.text() for row in rows]


def test_the_history_goes_back_and_forth(hands) -> None:
    first = hands.window.bench.document.project
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    hands.key(Qt.Key.Key_Up)
    last = hands.window.bench.document.project
    hands.window.docks.dock("history").show()
    history = pane(hands, "history")
    assert len(rows_of(history.list)) == 3
    history.go_to(0)
    assert hands.window.bench.document.project is first
    assert [row.endswith("(undone)") for row in rows_of(history.list)] == [True, True, False]
    history.go_to(2)
    assert hands.window.bench.document.project is last


def test_the_list_says_itself_that_nothing_was_found_and_moves_nothing(hands) -> None:
    bench, findings = hands.window.bench, hands.window.docks.dock("findings").widget()
    bench.judge.check_now()
    QApplication.processEvents()
    before = findings.list.geometry()
    assert findings.list.words == findings.list.accessibleDescription() == "Nothing found on the panel."
    bench.edit("Touch", lambda project, option: move_to(project, option, "one", -10.0, 50.0))
    bench.judge.check_now()
    QApplication.processEvents()
    assert findings.model.rowCount() > 0
    assert findings.list.words == ""
    assert findings.list.geometry() == before
