"""Where the pilot's centre line and eye are entered in figures, and how one is led there."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.editing.eye import place_eye
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_keyboard_goes_on import choose, pane

IN = 25.4


def instrument(hands) -> None:
    """Something that is to be seen, so that the eye matters."""
    bench = hands.window.bench
    bench.place_wanted.emit(bench.catalogue.cutout("altimeter-3-1-8"))
    hands.click(100, -100)
    hands.key(Qt.Key.Key_Escape)


def missing_eye(hands, qtbot):
    """The findings, that of the missing eye chosen."""
    instrument(hands)
    findings = pane(hands, "findings")
    qtbot.waitUntil(lambda: any(e.finding.rule == "eye-point" for e in findings.model.entries))
    choose(findings, lambda entry: entry.finding.rule == "eye-point")
    return findings


def enter(*figures: str):
    """Type these in the fields from the first on, and take them."""

    def fill(dialog: EditDialog) -> None:
        for figure in figures:
            field = dialog.focusWidget()
            field.selectAll()
            QTest.keyClicks(field, figure)
            QTest.keyClick(field, Qt.Key.Key_Tab)
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    return fill


def eye_of(hands):
    return hands.window.bench.document.project.surroundings.eye


def test_do_it_asks_for_the_missing_eye(hands, qtbot) -> None:
    findings = missing_eye(hands, qtbot)
    assert findings.detail.cure.isEnabled()
    in_dialog(enter("-180 mm", "-180 mm", "210 mm", "700 mm"), EditDialog)
    QTest.mouseClick(findings.detail.cure, Qt.MouseButton.LeftButton)
    eye = eye_of(hands)
    assert (eye.centre_line, eye.x, eye.y, eye.z) == pytest.approx((-180, -180, 210, -700))
    qtbot.waitUntil(lambda: all(e.finding.rule != "eye-point" for e in findings.model.entries))


def test_no_move_is_spoken_of_where_a_figure_is_missing(hands, qtbot) -> None:
    findings = missing_eye(hands, qtbot)
    bench = hands.window.bench
    qtbot.waitUntil(lambda: bench.judge.report is not None and bench.judge.report.project is bench.document.project)
    assert findings.detail.told.text() == "It is entered under Panel, Pilot's centre line and eye."


def test_why_says_where_it_is_entered(hands, qtbot) -> None:
    findings = missing_eye(hands, qtbot)
    said = []
    in_dialog(lambda dialog: said.extend(label.text() for label in dialog.findChildren(QLabel)))
    QTest.mouseClick(findings.detail.why, Qt.MouseButton.LeftButton)
    assert "It is entered under Panel, Pilot's centre line and eye." in said


def test_the_view_stays_where_one_was(hands) -> None:
    stage = hands.window.bench.stage
    in_dialog(enter("100 mm"), EditDialog)
    hands.action("panel.eye")
    assert eye_of(hands).centre_line == 100
    assert stage.view.id == "front"


def test_the_eye_goes_with_the_centre_line_while_it_stands_on_it(hands) -> None:
    in_dialog(enter("100 mm"), EditDialog)
    hands.action("panel.eye")
    assert eye_of(hands).x == 100


def test_an_eye_beside_the_centre_line_stays_there(hands) -> None:
    document = hands.window.bench.document
    document.apply("Eye", place_eye(document.project, 12.0, 200.0, -700.0, centre_line=0.0))
    in_dialog(enter("50 mm"), EditDialog)
    hands.action("panel.eye")
    assert (eye_of(hands).centre_line, eye_of(hands).x) == (50, 12)


def test_the_centre_line_is_seen_while_it_is_typed(hands) -> None:
    seen, scene = [], hands.window.bench.stage.scene

    def look(_: EditDialog) -> None:
        seen.extend(label.words for label in scene.labels.shown)

    in_dialog(look, EditDialog)
    hands.action("panel.eye")
    assert seen == ["pilot's centre line"]
    assert not scene.labels.shown
