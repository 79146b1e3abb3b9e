"""What is not known is read, gone through and followed by keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.checks.wording import unknown_sentences
from tests.checks.test_bundles import bending


@pytest.fixture
def findings(hands, qtbot):
    """The pane, of an item whose hose is of an unknown diameter, on a machine of an unknown bed."""
    document = hands.window.bench.document
    made = bending("hose", None)(50.0)
    document.replace(made, None)
    document.look_at("new")
    judge = hands.window.bench.judge
    qtbot.waitUntil(lambda: judge.report is not None and judge.report.project is document.project)
    return hands.window.docks.dock("findings").widget()


def rows(findings) -> list[str]:
    return [findings.unknown.list.item(row).text() for row in range(findings.unknown.list.count())]


def test_tab_leads_to_it_space_opens_it_and_the_rows_are_what_is_said(hands, findings) -> None:
    unknown = findings.unknown
    findings.list.setFocus()
    for _ in range(5):
        if QApplication.focusWidget() is not unknown.button:
            QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert unknown.button.text() == "Not known: 2 things – show"
    assert not unknown.list.isVisible()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Space)
    assert unknown.list.isVisible()
    assert rows(findings) == list(unknown_sentences(hands.window.bench.judge.report))
    assert not findings.list.isVisible()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is unknown.list
    assert unknown.list.currentRow() == 0
    QTest.keyClick(unknown.list, Qt.Key.Key_Escape)
    QTest.keyClick(hands.view, Qt.Key.Key_4, Qt.KeyboardModifier.AltModifier)
    assert QApplication.focusWidget() is unknown.list


def test_enter_on_a_row_selects_what_it_speaks_of(hands, findings) -> None:
    unknown = findings.unknown
    QTest.mouseClick(unknown.button, Qt.MouseButton.LeftButton)
    unknown.list.setFocus()
    unknown.list.setCurrentRow(next(i for i, words in enumerate(rows(findings)) if "hose" in words))
    QTest.keyClick(unknown.list, Qt.Key.Key_Return)
    assert hands.window.bench.selection.ids == ("a",)


def test_the_line_below_says_where_the_missing_figure_is_entered(hands, findings) -> None:
    unknown = findings.unknown
    assert not unknown.where.isVisible()
    unknown.button.setChecked(True)
    said = {}
    for row, words in enumerate(rows(findings)):
        unknown.list.setCurrentRow(row)
        assert unknown.where.isVisible()
        said[words] = unknown.where.text()
    hose, bed = (next(said[words] for words in said if part in words) for part in ("hose", "bed"))
    assert "the cutout's file" in hose
    assert "Take a shop's limits" in bed
    unknown.button.setChecked(False)
    assert not unknown.where.isVisible()


def test_a_sign_on_the_panel_brings_the_findings_back(hands, findings) -> None:
    findings.unknown.button.setChecked(True)
    hands.window.bench.finding_chosen.emit("any")
    assert findings.list.isVisible()
    assert not findings.unknown.list.isVisible()


def test_it_goes_where_all_is_known(hands, findings, qtbot) -> None:
    document = hands.window.bench.document
    bed = document.project.profile.revised(bed_width=1000.0, bed_height=1000.0)
    known = bending("hose", 6.0)(50.0).revised(profile=bed)
    document.replace(known, None)
    document.look_at("new")
    qtbot.waitUntil(lambda: not findings.unknown.isVisible())
