"""A finding about equipment is accepted with a reason; the word lapses as one on a finding of the panel does."""

import pytest

from panelcad.editing.acceptances import add_acceptance
from panelcad.errors import EditRefused
from panelcad.model.finding import Finding
from panelcad.model.planning import WeightAndBalance
from panelcad.model.project import Project
from panelcad.planning.acceptance import accept
from panelcad.planning.judge import Judgement, Topic, judge
from tests.planning import kit

SYSTEM = {"voltage": 14, "alternators": ({"id": "alternator", "name": "Alternator", "rating": 10.0},)}


def overloaded(amperes: float = 9.0, rating: float = 10.0) -> Project:
    """A heater alone on an alternator of 10 A, of which 80 % may be drawn."""
    system = {**SYSTEM, "alternators": ({"id": "alternator", "name": "Alternator", "rating": rating},)}
    heater = kit.unit("heater", draw_14={"continuous": amperes})
    return kit.project(heater, planning={"electrical": system})


def judged(project: Project) -> Judgement:
    return judge(project, project.option("new"))


def of_rule(judgement: Judgement, rule: str) -> list[Finding]:
    return [finding for finding in judgement.all_findings if finding.rule == rule]


def accepted(project: Project, rule: str) -> Project:
    """With every finding of the rule accepted."""
    found = judged(project)
    for finding in of_rule(found, rule):
        word = accept(finding, found.equipment, reason="used on the ground only", initials="AB", on="2026-01-31")
        project = add_acceptance(project, "new", word)
    return project


def with_words_of(project: Project, other: Project) -> Project:
    option = project.option("new")
    return project.with_option(option.revised(acceptances=other.option("new").acceptances))


def test_what_is_accepted_is_open_no_more_and_told_with_the_reason() -> None:
    project = overloaded()
    before, after = judged(project), judged(accepted(project, "overload"))
    phases = of_rule(before, "overload")
    assert phases
    assert of_rule(after, "overload") == []
    assert [each.finding for each in after.accepted[Topic.ELECTRICAL]] == phases
    assert {each.acceptance.told for each in after.all_accepted} == {"AB: used on the ground only"}
    assert len(before.errors) - len(after.errors) == len(phases)
    assert after.lapsed == ()


@pytest.mark.parametrize(("amperes", "lapses"), [(9.009, 0), (8.5, 0), (9.011, 1)])
def test_the_word_lapses_when_the_load_gets_worse_by_more_than_a_hundredth(amperes: float, lapses: int) -> None:
    word = accepted(overloaded(), "overload")
    phases = len(word.option("new").acceptances)
    later = judged(with_words_of(overloaded(amperes), word))
    assert len(of_rule(later, "overload")) == len(later.lapsed) == lapses * phases


def test_the_word_lapses_when_what_it_names_is_changed() -> None:
    word = accepted(overloaded(), "overload")
    later = judged(with_words_of(overloaded(9.0, rating=11.0), word))
    assert of_rule(later, "overload")
    assert {each.finding for each in later.lapsed} == {f.identity for f in of_rule(later, "overload")}


def test_the_word_on_a_unit_stands_where_it_is_moved_and_lapses_where_it_is_another() -> None:
    def lone(**fields: object) -> Project:
        remote = kit.unit("remote", needs=({"controller": "transponder"},), **fields)
        return kit.project(remote, items=(kit.fit("remote", name="Remote", arm=1000.0),))

    project = accepted(lone(), "no-controller")
    assert of_rule(judged(project), "no-controller") == []
    option = project.option("new")
    renamed = project.with_option(option.revised(items=(option.items[0].revised(name="Box", notes="low"),)))
    assert of_rule(judged(renamed), "no-controller") == []
    assert of_rule(judged(with_words_of(lone(mass=9.0), project)), "no-controller")


def test_what_can_never_be_right_is_not_accepted() -> None:
    sheet = WeightAndBalance.model_validate({"datum": "firewall", "empty_mass": 1.0, "empty_arm": 1000.0})
    heavy = kit.unit("heavy", mass=5.0)
    found = kit.fit("heavy", arm=1000.0)
    project = kit.project(heavy, items=(), as_found_items=(found,), planning={"weight": sheet})
    judgement = judged(project)
    (finding,) = of_rule(judgement, "nothing-left")
    with pytest.raises(EditRefused, match="can never be right"):
        accept(finding, judgement.equipment, reason="no", initials="AB", on="2026-01-31")
