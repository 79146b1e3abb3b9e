"""Lettering across lettering: every pair of one plate is told once, and a live check hears of it when a line moves."""

from panelcad.checks.live import LiveChecker
from panelcad.checks.registry import Loaded, load_rules
from panelcad.checks.run import check
from panelcad.editing.move import move_by
from panelcad.model.finding import Severity
from panelcad.model.plate import Frame
from panelcad.model.project import Project
from tests.builders import sheet
from tests.checks.pilot_panels import blamed, fitted, found, panel, words

RULE = "crossed-words"


def lettered(*lines, more=()) -> Project:
    return panel(plate={"engravings": lines}, more=more)


def test_each_pair_of_three_that_lie_across_each_other_is_told_once() -> None:
    lines = (
        words("THROTTLE, MIXTURE", 0, 0),
        words("MIXTURE CONTROL", 5, 1),
        words("MIXTURE", 8, 2),
        words("X", 0, 99),
    )
    findings = found(lettered(*lines), RULE)
    ids = [line.id for line in lines]
    assert blamed(findings) == {tuple(sorted(pair)) for pair in ((ids[0], ids[1]), (ids[0], ids[2]), (ids[1], ids[2]))}
    assert {(finding.severity, finding.acceptable) for finding in findings} == {(Severity.WARNING, True)}
    assert all(finding.measured < 0.0 for finding in findings)


def test_a_turned_line_is_judged_as_it_stands() -> None:
    """A line 60 mm to the right, turned upright, is only as wide as it is high: its box ends 57.14 mm off."""
    across = words("FUEL PUMP FUEL PUMP", 0, 0)
    beside = words("FUEL PUMP FUEL PUMP", 60, 0)
    assert len(found(lettered(across, beside), RULE)) == 1
    assert found(lettered(across, beside.revised(rotation=90.0)), RULE) == []


def test_each_plate_is_judged_by_itself() -> None:
    twice = (words("TRIM", 0, 0), words("FLAPS", 2, 1))
    sub = sheet(
        id="sub",
        name="Sub-panel",
        frame=Frame(z=80.0),
        engravings=tuple(line.revised(id=f"sub-{line.id}") for line in twice),
    )
    assert {finding.plate for finding in found(lettered(*twice, more=(sub,)), RULE)} == {"main", "sub"}


def test_placards_across_each_other_and_words_under_one_are_other_rules() -> None:
    """A placard 30 mm wide; nothing is found twice."""
    two = panel(fitted("p", 0, 0, "plate"), fitted("q", 20, 0, "plate"), plate={"engravings": (words("TRIM", 0, 0),)})
    assert found(two, RULE) == []
    assert len(found(two, "bezels")) == 1
    assert len(found(two, "covered-words")) == 1


def test_a_live_check_says_the_same_after_each_move() -> None:
    rules = Loaded(tuple(each for each in load_rules().rules if each.id in {RULE, "label", "covered-words"}), ())
    live = LiveChecker(rules)
    upper, lower = words("NAV", 0, 0), words("COM", 0, -20)
    project = panel(fitted("a", 0, 20, "toggle"), plate={"engravings": (upper, lower)})
    for dy, crossing in ((0.0, 0), (18.0, 1), (-18.0, 0), (20.0, 1), (-3.0, 1)):
        project = move_by(project, "new", (lower.id,), 0.0, dy)
        report = live.update(project, "new")
        assert report == check(project, project.option("new"), rules)
        assert sum(finding.rule == RULE for finding in report.findings) == crossing
