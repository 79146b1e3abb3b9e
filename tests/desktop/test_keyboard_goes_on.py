"""Where the keyboard is after a thing is done, so that the next key means what one expects."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.desktop.dialogs.acceptance import AcceptanceQuestion
from tests.desktop.next_dialog import in_dialog

CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier


def pane(hands, name: str):
    dock = hands.window.docks.dock(name)
    dock.show()
    return dock.widget()


def overlap(hands, qtbot):
    hands.drag((0, 50), (-120, 50), held=ALT)
    findings = pane(hands, "findings")
    qtbot.waitUntil(lambda: any("overlap" in entry.words for entry in findings.model.entries))
    return findings


def choose(findings, wanted) -> None:
    row = next(i for i, entry in enumerate(findings.model.entries) if wanted(entry))
    where = findings.list.visualRect(findings.model.index(row)).center()
    QTest.mouseClick(findings.list.viewport(), Qt.MouseButton.LeftButton, pos=where)


def settled(hands, qtbot) -> None:
    document, judge = hands.window.bench.document, hands.window.bench.judge
    qtbot.waitUntil(lambda: judge.report is not None and judge.report.project is document.project)


def accept_with(reason: str) -> None:
    """Fill in and accept the question that opens next."""

    def fill(question: AcceptanceQuestion) -> None:
        question.reason.setPlainText(reason)
        question.initials.setText("AB")
        question.accept()

    in_dialog(fill, AcceptanceQuestion)


def test_after_a_cure_ctrl_z_takes_it_back(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    choose(findings, lambda entry: entry.finding.cure is not None and entry.finding.cure.dx)
    before = hands.window.bench.document.project
    QTest.mouseClick(findings.detail.cure, Qt.MouseButton.LeftButton)
    settled(hands, qtbot)
    assert QApplication.focusWidget() is findings.list
    assert hands.window.bench.document.project is not before
    QTest.keyClick(findings.list, Qt.Key.Key_Z, CTRL)
    assert hands.window.bench.document.project is before


def test_after_accepting_the_next_finding_is_chosen_and_the_same_click_takes_nothing_back(hands, qtbot) -> None:
    findings = overlap(hands, qtbot)
    choose(findings, lambda entry: entry.finding.acceptable)
    accepted = findings.chosen.identity
    accept_with("measured on the aircraft")
    QTest.mouseClick(findings.detail.word, Qt.MouseButton.LeftButton)
    settled(hands, qtbot)
    assert hands.window.focusWidget() is findings.list
    assert findings.chosen is not None
    assert findings.chosen.identity != accepted
    choose(findings, lambda entry: entry.kind is MarkKind.ACCEPTED)
    before = hands.window.bench.document.project
    QTest.mouseClick(findings.detail.word, Qt.MouseButton.LeftButton)
    assert hands.window.bench.document.project is before
    QTest.mouseClick(findings.detail.back, Qt.MouseButton.LeftButton)
    settled(hands, qtbot)
    assert accepted in {
        entry.finding.identity for entry in findings.model.entries if entry.kind is not MarkKind.ACCEPTED
    }


def test_a_field_with_nothing_typed_leaves_undo_to_the_panel(hands) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    before = hands.item("two").x
    name = pane(hands, "properties").sheet.name
    name.setFocus()
    QTest.keyClick(name, Qt.Key.Key_Z, CTRL)
    assert hands.item("two").x < before


def test_enter_in_the_properties_leaves_the_keyboard_on_the_canvas(hands) -> None:
    hands.click(0, 50)
    across = pane(hands, "properties").sheet.across
    across.setFocus()
    across.selectAll()
    QTest.keyClicks(across, "12 mm")
    QTest.keyClick(across, Qt.Key.Key_Return)
    assert hands.item("two").x == 12.0
    assert QApplication.focusWidget() is hands.view
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Delete)
    assert "two" not in {item.id for item in hands.window.bench.document.option.items}


def test_a_passing_word_goes_with_the_panel_it_was_said_of(hands) -> None:
    words = hands.window.statusBar().words
    assert hands.window.desk.save()
    assert "Saved" in words.text()
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    assert "Saved" not in words.text()


def test_a_passing_word_goes_after_a_while(hands, qtbot) -> None:
    status = hands.window.statusBar()
    status._passing.setInterval(1)
    hands.window.bench.told.emit("Wrote three files")
    qtbot.waitUntil(lambda: "Wrote" not in status.words.text())
