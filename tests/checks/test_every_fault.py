"""Every fault in one project: missing, extra and doubled findings fail.

After a change that is meant, look at the difference and write the new list: `python -m tests.checks.test_every_fault`.
"""

from collections import Counter
from pathlib import Path

from panelcad.checks.live import LiveChecker
from panelcad.checks.registry import Loaded, load_rules
from panelcad.checks.run import check
from panelcad.checks.wording import sentence
from panelcad.editing.move import move_by
from tests.checks.every_fault import every_fault

EXPECTED = Path(__file__).with_name("every_fault.txt")
ONLY_UNKNOWN = {"clamp-adjuster", "tray-support"}
"""Rules that find nothing but what is unknown."""


def rules() -> Loaded:
    """The rules about metal, front and behind; the pilot's have a panel of their own."""
    return Loaded(tuple(rule for rule in load_rules().rules if ".pilot_" not in rule.judge.__module__), ())


def identities() -> list[str]:
    made = every_fault()
    report = check(made, made.option("new"), rules())
    assert report.not_judged == ()
    return sorted(finding.identity for finding in report.findings)


def test_each_fault_is_found_and_nothing_else():
    expected = Counter(EXPECTED.read_text().splitlines())
    found = Counter(identities())
    assert found - expected == Counter(), "not expected"
    assert expected - found == Counter(), "not found"


def test_every_rule_finds_something():
    assert {identity.partition("|")[0] for identity in identities()} == {r.id for r in rules().rules} - ONLY_UNKNOWN


def test_every_finding_can_be_said():
    made = every_fault()
    for finding in check(made, made.option("new"), rules()).findings:
        said = sentence(finding, made, made.option("new"))
        assert finding.problem in said
        assert "{" not in said


def test_every_move_cures_its_finding():
    """One of each plate is carried out, all at once: each stands far from the others."""
    made = every_fault()
    moves = {
        finding.plate: finding
        for finding in check(made, made.option("new"), rules()).findings
        if finding.cure is not None and not finding.cure.advice
    }
    for finding in moves.values():
        made = move_by(made, "new", (finding.cure.item,), finding.cure.dx, finding.cure.dy)
    left = {finding.identity for finding in check(made, made.option("new"), rules()).findings}
    assert len(moves) > 20
    assert [finding.identity for finding in moves.values() if finding.identity in left] == []


def test_live_says_the_same():
    made = every_fault()
    assert LiveChecker(rules()).update(made, "new") == check(made, made.option("new"), rules())


if __name__ == "__main__":
    EXPECTED.write_text("\n".join(identities()) + "\n")
