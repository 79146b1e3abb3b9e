"""A control out of reach is brought nearer by Do it; where Do it is grey, the reason is said."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from panelcad.model.finding import Severity
from panelcad.model.surroundings import Surroundings
from tests.checks.pilot_panels import INCH, eye, fitted, panel
from tests.checks.test_pilot_hands import toggle_at
from tests.desktop.test_keyboard_goes_on import choose


def shown(hands, qtbot, project):
    """The findings pane of a project whose findings are known."""
    bench = hands.window.bench
    bench.document.replace(project, None)
    bench.document.look_at("new")
    judge = bench.judge
    qtbot.waitUntil(lambda: judge.report is not None and judge.report.project is bench.document.project)
    return hands.window.docks.dock("findings").widget()


def reaches(findings):
    return [entry.finding for entry in findings.model.entries if entry.finding.rule == "reach"]


def test_do_it_brings_one_control_within_reach(hands, qtbot) -> None:
    findings = shown(hands, qtbot, toggle_at(35.0 * INCH))
    choose(findings, lambda entry: entry.finding.rule == "reach")
    assert findings.chosen.severity is Severity.WARNING
    assert findings.detail.cure.isEnabled()
    QTest.mouseClick(findings.detail.cure, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: Severity.WARNING not in {each.severity for each in reaches(findings)})
    hands.window.bench.document.undo()
    qtbot.waitUntil(lambda: Severity.WARNING in {each.severity for each in reaches(findings)})


def test_of_several_the_farthest_move_is_told_and_grey_do_it_says_why(hands, qtbot) -> None:
    around = Surroundings(eye=eye(y=215.9, z=-500.0 + 101.6))
    row = [fitted(f"s{i}", 40 * (i + 12), 0, "toggle") for i in range(4)]
    findings = shown(hands, qtbot, panel(*row, around=around))
    choose(findings, lambda entry: entry.finding.rule == "reach")
    words = next(entry.words for entry in findings.model.entries if entry.finding.rule == "reach")
    assert "Move the farthest, s3, 141.90 mm left or more" in words
    assert not findings.detail.cure.isEnabled()
    assert findings.detail.told.isVisible()
    assert findings.detail.told.text() == "Do it makes single moves; what would cure this stands above."
