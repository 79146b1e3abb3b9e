"""Several findings accepted with one reason; what a cure did and why a button is grey are said."""

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtTest import QTest

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.editing.row import Row, place_row
from panelcad.geometry.point import Point
from tests.desktop.test_keyboard_goes_on import ALT, accept_with, choose, overlap, pane, settled

TOGETHER = QItemSelectionModel.SelectionFlag.Select


def test_several_are_accepted_with_one_reason_that_is_offered_again(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    settled(hands, qtbot)
    rows = [row for row, entry in enumerate(findings.model.entries) if entry.finding.acceptable]
    wanted = {findings.model.entries[row].finding.identity for row in rows}
    assert len(wanted) > 1
    choose(findings, lambda entry: entry.finding.acceptable)
    for row in rows[1:]:
        findings.list.selectionModel().select(findings.model.index(row), TOGETHER)
    assert findings.detail.word.text() == f"A&ccept {len(rows)}…"
    bench = hands.window.bench
    steps = len(bench.document.done)
    accept_with("measured on the aircraft")
    QTest.mouseClick(findings.detail.word, Qt.MouseButton.LeftButton)
    assert {word.finding for word in bench.document.option.acceptances} == wanted
    assert {word.reason for word in bench.document.option.acceptances} == {"measured on the aircraft"}
    assert len(bench.document.done) == steps + 1
    assert bench.settings.reason == "measured on the aircraft"


def test_a_cure_brings_what_it_moved_into_view_and_says_how_far(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    settled(hands, qtbot)
    choose(findings, lambda entry: entry.finding.cure is not None and entry.finding.cure.dx)
    cure = findings.chosen.cure
    bench, told = hands.window.bench, []
    bench.view.show_box((-400.0, -400.0, -390.0, -390.0))
    bench.told.connect(told.append)
    QTest.mouseClick(findings.detail.cure, Qt.MouseButton.LeftButton)
    box, seen = bench.stage.scene.box(bench.stage.whole((cure.item,))), bench.view.seen()
    assert all(edge >= of_view for edge, of_view in zip(box[:2], seen[:2], strict=True))
    assert all(edge <= of_view for edge, of_view in zip(box[2:], seen[2:], strict=True))
    assert any(words.startswith(f"Moved {bench.name_of(cure.item)} ") for words in told)


def test_what_nobody_may_accept_says_so(hands, qtbot) -> None:
    findings = pane(hands, "findings")
    hands.drag((0, 50), (-180, 50), held=ALT)
    qtbot.waitUntil(lambda: any(not entry.finding.acceptable for entry in findings.model.entries))
    settled(hands, qtbot)
    choose(findings, lambda entry: not entry.finding.acceptable)
    assert not findings.detail.word.isEnabled()
    assert "cannot be accepted" in findings.detail.told.text()


def test_a_row_that_stands_too_tight_is_spread_as_one(hands, qtbot) -> None:
    """Eight breakers 17 mm apart: one pitch cures them all."""
    bench = hands.window.bench
    cutout = bench.catalogue.cutout("breaker")
    row = Row(Point(-250.0, -110.0), 8, 17.0)
    bench.edit("Place", lambda project, option: place_row(project, option, "main", cutout, row).project)
    findings = pane(hands, "findings")
    settled(hands, qtbot)
    before = len(findings.model.entries)
    choose(findings, lambda entry: entry.kind is MarkKind.ERROR and "reaker" in entry.words)
    assert "Spread the row of 8 (" in findings.model.entries[findings.list.currentIndex().row()].words
    QTest.mouseClick(findings.detail.cure, Qt.MouseButton.LeftButton)
    settled(hands, qtbot)
    assert len(findings.model.entries) < before
    assert not any(e.kind is MarkKind.ERROR and "reaker" in e.words for e in findings.model.entries)
    assert len(bench.selection) == 8


def test_a_new_error_comes_into_sight_unless_the_list_is_being_used(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    settled(hands, qtbot)
    known = {entry.finding.identity for entry in findings.model.entries}
    bar = findings.list.verticalScrollBar()

    def fresh() -> list[int]:
        rows = enumerate(findings.model.entries)
        return [r for r, e in rows if e.kind is MarkKind.ERROR and e.finding.identity not in known]

    hands.window.docks.dock("findings").setFloating(True)
    findings.setFixedHeight(220)
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    hands.window.activateWindow()
    hands.view.setFocus()
    qtbot.waitUntil(lambda: not findings.list.hasFocus())
    bar.setValue(bar.maximum())
    hands.drag((200, -50), (-50, 40), held=ALT)
    settled(hands, qtbot)

    assert fresh()
    assert findings.list.viewport().rect().intersects(findings.list.visualRect(findings.model.index(fresh()[0])))
