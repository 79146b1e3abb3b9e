"""Every fault in one project: missing, extra and doubled findings fail.

After a change that is meant, look at the difference and write the new list: `python -m tests.checks.test_every_fault`.
"""

from collections import Counter
from pathlib import Path

from panelcad.checks.live import LiveChecker
from panelcad.checks.registry import Loaded, load_rules
from panelcad.checks.run import check
from panelcad.checks.wording import sentence
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


def test_every_finding_can_be_said_and_its_move_cures_it():
    """A cure that moves something is tried: the finding it is for is gone, or no longer as grave."""
    made = every_fault()
    option, live = made.option("new"), LiveChecker(rules())
    for finding in live.update(made, "new").findings:
        said = sentence(finding, made, option)
        assert finding.problem in said
        assert "{" not in said
        cure = finding.cure
        if cure is not None and not cure.advice:
            moved = _after(made, cure)
            left = {f.identity: f for f in live.update(moved, "new").findings}
            again = left.get(finding.identity)
            assert again is None or again.severity != finding.severity, said


def _after(made, cure):
    """The project after the move: an item takes its cut along unless others use it too, a cut takes its items along."""
    option = made.option("new")
    own = next((i.cut for i in option.items if i.id == cure.item), cure.item)
    is_stack = own != cure.item and sum(i.cut == own for i in option.items) > 1
    cut_id = None if is_stack else own
    plates = tuple(
        plate.revised(
            cuts=tuple(_shifted(cut, cure) if cut.id in {cure.item, cut_id} else cut for cut in plate.cuts),
        )
        for plate in option.plates
    )
    items = tuple(
        _shifted(item, cure) if item.id == cure.item or (cut_id and item.cut == cut_id) else item
        for item in option.items
    )
    return made.with_option(option.revised(plates=plates, items=items))


def _shifted(record, cure):
    return record.revised(x=record.x + cure.dx, y=record.y + cure.dy)


def test_live_says_the_same():
    made = every_fault()
    assert LiveChecker(rules()).update(made, "new") == check(made, made.option("new"), rules())


if __name__ == "__main__":
    EXPECTED.write_text("\n".join(identities()) + "\n")
