"""The status bar tells without moving anything: words that change with the pointer lay nothing out anew."""

import threading
from dataclasses import replace

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.checks.report import NotJudged
from panelcad.desktop.judge import CHECKING, Judge
from panelcad.editing.groups import lock


class Layouts(QObject):
    """Counts how often a widget was asked to lay itself out."""

    count = 0

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - the name is Qt's
        self.count += event.type() is QEvent.Type.LayoutRequest
        return super().eventFilter(watched, event)


def test_words_that_change_lay_nothing_out_anew(window) -> None:
    status, layouts = window.statusBar(), Layouts()
    window.bench.judge.check_now()
    QApplication.processEvents()
    status.installEventFilter(layouts)
    width = status.words.width()
    status.words.setText("Snapped to the left edge of the second radio of the stack, and much more besides")
    status.place.setText("x -123.456   y -78.9 mm")
    QApplication.processEvents()
    assert layouts.count == 0
    assert status.words.width() == width


def test_what_was_found_has_room_and_keeps_it(window) -> None:
    status = window.statusBar()
    QApplication.processEvents()
    status.found.setText("112 errors, 113 warnings, 114 advice, 2 rules could not judge")
    status.found_place.make_room()
    QApplication.processEvents()
    width = status.found.width()
    assert width >= status.found.sizeHint().width()
    status.found.setText("nothing found")
    status.found_place.make_room()
    QApplication.processEvents()
    assert status.found.width() == width


def test_the_pointers_place_is_never_clipped(hands) -> None:
    status = hands.window.statusBar()
    hands.hover(-250.0, -120.0)
    QApplication.processEvents()
    assert status.place.text().startswith("x -2")
    assert status.place.width() >= status.place.sizeHint().width()


def test_one_rule_is_not_many(window) -> None:
    judge, found = window.bench.judge, window.statusBar().found
    judge.check_now()
    broken = NotJudged("web", "gone")
    for not_judged, words in (((broken,), "1 rule could not judge"), ((broken, broken), "2 rules could not judge")):
        judge.report = replace(judge.report, not_judged=not_judged)
        judge.reported.emit()
        assert words in found.text()


def test_a_check_that_takes_long_says_so_until_it_is_over(hands, qtbot, monkeypatch) -> None:
    window = hands.window
    findings = window.docks.dock("findings").widget()
    may_end, usual = threading.Event(), Judge._check

    def slow(judge, order):
        may_end.wait(10)
        return usual(judge, order)

    monkeypatch.setattr(Judge, "_check", slow)
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    qtbot.waitUntil(lambda: window.statusBar().found.text() == CHECKING)
    assert findings.count.text() == CHECKING
    may_end.set()
    qtbot.waitUntil(lambda: window.statusBar().found.text() != CHECKING)
    assert CHECKING not in findings.count.text()


def test_findings_of_another_project_are_not_shown_while_the_new_one_is_checked(hands, qtbot, monkeypatch) -> None:
    window, document = hands.window, hands.window.bench.document
    findings = window.docks.dock("findings").widget()
    hands.drag((0, 50), (-180, 50))
    qtbot.waitUntil(lambda: bool(findings.model.entries))
    may_end, usual = threading.Event(), Judge._check

    def slow(judge, order):
        may_end.wait(10)
        return usual(judge, order)

    monkeypatch.setattr(Judge, "_check", slow)
    document.replace(document.project.revised(title="Another"), None)
    assert not findings.model.entries
    assert not window.statusBar().found.text()
    may_end.set()
    qtbot.waitUntil(lambda: bool(findings.model.entries))
    document.replace(document.project, None)
    qtbot.waitUntil(lambda: window.bench.judge.report is not None)


def bad_figure(hands):
    """A figure that cannot be read, entered in the properties; what says so."""
    hands.click(0, 50)
    field = hands.window.docks.dock("properties").widget().sheet.across
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "3 apples")
    QTest.keyClick(field, Qt.Key.Key_Return)
    words = hands.window.statusBar().words
    assert "cannot be read" in words.text()
    return field, words


def test_esc_that_puts_the_figure_back_ends_what_was_said_of_it(hands) -> None:
    field, words = bad_figure(hands)
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert "cannot be read" not in words.text()


def test_typing_it_anew_ends_what_was_said_of_it(hands) -> None:
    field, words = bad_figure(hands)
    QTest.keyClick(field, Qt.Key.Key_Backspace)
    assert "cannot be read" not in words.text()


def test_what_was_said_of_one_thing_is_not_said_once_another_is_selected(hands) -> None:
    _, words = bad_figure(hands)
    QApplication.processEvents()
    hands.click(200, -50)
    hands.click(-200, 50)
    assert "cannot be read" not in words.text()


def test_words_that_belong_to_the_step_stay_though_it_selects_something(hands) -> None:
    bench = hands.window.bench
    bench.told.emit("One was left out.")
    bench.selection.set(["one"])
    assert hands.window.statusBar().words.text() == "One was left out."


def test_a_refusal_stands_out_until_something_else_is_told(hands) -> None:
    bench, words = hands.window.bench, hands.window.statusBar().words
    bench.edit("Lock", lambda project, option: lock(project, option, ["two"]))
    hands.drag((0, 50), (40, 80))
    assert "locked" in words.text()
    assert words.property("role") == "wrong"
    assert words.palette().color(words.foregroundRole()).name() == bench.theme.wrong
    bench.told.emit("Copied 1")
    assert words.property("role") == ""
