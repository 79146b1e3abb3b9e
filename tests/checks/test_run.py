from dataclasses import replace

import pytest

from panelcad.checks.finding import Curable
from panelcad.checks.live import LiveChecker
from panelcad.checks.parts import Kind, Layer
from panelcad.checks.registry import EachPair, EachPart, Loaded, Rule, TheWhole, all_rules, listing
from panelcad.checks.run import check
from panelcad.model.finding import Severity
from tests.builders import cut, item, project, sheet
from tests.checks.made import drilled, screw_form


def _broken(*_):
    raise ZeroDivisionError("of course")


def _rule(looks_at):
    return Rule("broken", "Broken", "nothing", looks_at, (Severity.ERROR,), (), "a test", _broken)


def test_a_crashed_rule_is_not_judged_and_never_a_pass():
    made = project(sheet(cuts=(cut("a", 0, 0), cut("b", 80, 0))))
    for looks_at in (EachPart((Kind.CUT,)), EachPair(Layer.CUTS, Layer.CUTS, lambda _: 10.0), TheWhole()):
        report = check(made, made.option("new"), Loaded((_rule(looks_at),), ()))
        assert [broken.rule for broken in report.not_judged] == ["broken"]
        assert report.has_errors


def test_a_finding_stands_whose_cure_cannot_be_worked_out():
    def judge(placed, setting):
        said = {"severity": Severity.ERROR, "problem": "Broken", "source": "a test"}
        yield Curable(rule="broken", items=(placed.cut.id,), plate=setting.plate.id, **said).by(_broken)

    made = project(sheet(cuts=(cut("a", 0, 0),)))
    report = check(made, made.option("new"), Loaded((replace(_rule(EachPart((Kind.CUT,))), judge=judge),), ()))
    assert [(finding.items, finding.cure) for finding in report.findings] == [(("a",), None)]
    assert [broken.rule for broken in report.not_judged] == ["broken"]


def test_a_screw_off_the_sheet_is_judged():
    off = drilled("screw", 310, 0, screw_form(diameter=3.3, fastener=3.175))
    made = project(sheet(cuts=(off,)))
    report = check(made, made.option("new"))
    assert report.not_judged == ()
    found = next(finding for finding in report.findings if finding.rule == "edge-distance-outline")
    assert found.measured == pytest.approx(-10.0)


def test_a_package_that_cannot_be_loaded_is_not_judged():
    made = project()
    report = check(made, made.option("new"), Loaded((), (("other", "ImportError: gone"),)))
    assert [broken.rule for broken in report.not_judged] == ["other"]


def test_findings_are_sorted_by_severity_then_place():
    made = project(sheet(cuts=(cut("a", -200, 0), cut("b", -200 + 85, 0), cut("c", 0, 0), cut("d", 82, 0))))
    report = check(made, made.option("new"))
    assert [finding.items for finding in report.findings] == [("c", "d"), ("a", "b")]


def test_live_equals_full_after_a_move():
    before = project(sheet(cuts=(cut("a", 0, 0), cut("b", 100, 0))), items=(item("i", 0, 0, cut="a"),))
    after = before.with_option(
        before.option("new").revised(plates=(sheet(cuts=(before.option("new").plates[0].cuts[0], cut("b", 84, 0))),))
    )
    live = LiveChecker()
    assert live.update(before, "new").findings == ()
    assert live.update(after, "new").findings == check(after, after.option("new")).findings != ()
    assert live.update(before, "new").findings == ()


def test_every_rule_lists_itself_with_a_source():
    rows = listing()
    assert [row["id"] for row in rows] == [rule.id for rule in all_rules()]
    assert all(row["source"] and row["measures"] for row in rows)
