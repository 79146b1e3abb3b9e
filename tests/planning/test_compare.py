"""The sample tourer: options differ in each judgement, one is short of a controller, one overloads the alternator."""

from functools import cache
from pathlib import Path

import pytest

from panelcad.editing.options import copy_option
from panelcad.editing.remove import remove
from panelcad.library.samples import sample_file
from panelcad.model.finding import Severity
from panelcad.model.function import Function
from panelcad.planning.compare import VERDICT, Comparison, compare
from panelcad.planning.figures import bad_failures
from panelcad.planning.judge import Judgement, Topic, judge
from panelcad.planning.owner import critical_failures, gained, lost, sentences
from panelcad.planning.wording import sentence
from panelcad.store.project_file import load
from tests.planning import kit


@cache
def tourer() -> Comparison:
    return compare(load(sample_file("tourer")))


def of(option: str) -> Judgement:
    return next(judgement for judgement in tourer().judgements if judgement.option.id == option)


def rules(option: str, topic: Topic) -> set[str]:
    return {finding.rule for finding in of(option).findings[topic]}


@pytest.mark.parametrize("topic", Topic)
def test_the_tourers_options_differ_in_each_judgement(topic: Topic) -> None:
    assert any(row.differs for row in tourer().rows_of(topic))


def test_one_is_short_of_a_controller_and_overloads_the_alternator() -> None:
    assert "no-controller" in rules("ambitious", Topic.BELONGING)
    assert "overload" in rules("ambitious", Topic.ELECTRICAL)
    for option in ("classic", "glass"):
        assert not {"no-controller", "need"} & rules(option, Topic.BELONGING)
        assert "overload" not in rules(option, Topic.ELECTRICAL)


def test_the_options_that_are_meant_to_be_right_have_no_error() -> None:
    assert not of("classic").has_errors
    assert not of("glass").has_errors
    assert of("ambitious").has_errors
    assert tourer().has_errors


def test_each_error_is_counted_once_and_told_in_words() -> None:
    found = of("ambitious")
    counts = [found.count(topic, Severity.ERROR) for topic in Topic]
    assert len(found.errors) == sum(counts) == 13
    assert found.count(Topic.SPACE, Severity.ERROR) == found.report.count(Severity.ERROR) == 6
    told = [sentence(error, found.equipment.project, found.option) for error in found.errors]
    assert len(set(told)) == len(told)
    assert "Firewall and Navigator (harness bend): body reaches too deep: 0.088 in, at least 0.250 in." in told


def test_single_failures_that_leave_too_little_are_named() -> None:
    assert list(critical_failures(of("classic"))) == ["Main bus fails: no COM and no NAV left."]
    assert len(list(critical_failures(of("as-found")))) == int(bad_failures(of("as-found")))
    assert list(critical_failures(of("glass"))) == []


def test_fewer_sources_are_told_as_given_up() -> None:
    told = " ".join(sentences(of("glass"), of("as-found")))
    assert "fewer independent sources than before of course deviation (1 instead of 2)" in told


def test_the_navigator_takes_the_transponders_face_off_the_panel() -> None:
    glass = of("glass")
    assert next(f for f in glass.equipment.units if f.id == "transponder").place.value == "radio bay"
    assert glass.space.faces < glass.space.faces_before


def test_the_owner_is_told_what_an_option_adds_and_gives_up() -> None:
    assert Function.GPS_NAVIGATION in gained(of("classic"), of("as-found"))
    assert Function.ADF in lost(of("classic"), of("as-found"))
    told = " ".join(sentences(of("classic"), of("as-found")))
    assert "It adds" in told
    assert "It gives up ADF (a needle that points to radio beacons)" in told
    assert "gives up suction (a gauge" in told or "and suction (a gauge" in told
    assert "It costs USD" in told


def test_every_cell_of_a_verdict_leads_to_its_findings() -> None:
    for row in tourer().rows:
        if row.title == VERDICT:
            for cell, judgement in zip(row.cells, tourer().judgements, strict=True):
                assert cell.reasons == tuple(f.identity for f in judgement.findings[row.topic])


def test_every_finding_has_a_source_and_one_sentence_without_ids() -> None:
    for judgement in tourer().judgements:
        for finding in judgement.all_findings:
            text = sentence(finding, judgement.equipment.project, judgement.option)
            assert finding.source
            assert text.endswith(".")
            assert "alternator-1" not in text


def test_a_copied_option_differs_in_nothing_until_it_is_changed() -> None:
    project = load(sample_file("tourer"))
    copied = copy_option(project, "glass", "Second glass")
    both = compare(copied.project, (project.option("glass"), copied.project.option(copied.option_id)))
    assert not [row.title for row in both.rows if row.differs]
    less = remove(copied.project, copied.option_id, ["autopilot"])
    changed = compare(less, (less.option("glass"), less.option(copied.option_id)))
    differing = {row.title for row in changed.rows if row.differs}
    assert {"Autopilot roll", "Total", "Heaviest continuous load", "Change of empty weight"} <= differing


def test_a_change_of_one_option_judges_only_that_one_again() -> None:
    project = tourer().project
    changed = remove(project, "glass", ["autopilot"])
    again = compare(changed, kept=tourer())
    same = {j.option.id for j in again.judgements if any(j is old for old in tourer().judgements)}
    assert same == {"as-found", "classic", "ambitious"}
    afresh = compare(changed)
    assert [[c.text for c in row.cells] for row in again.rows] == [[c.text for c in row.cells] for row in afresh.rows]


def test_another_aircraft_judges_everything_again() -> None:
    project = tourer().project
    found = project.as_found.revised(items=project.as_found.items[:-1])
    again = compare(project.with_option(found), kept=tourer())
    assert not any(j is old for j in again.judgements for old in tourer().judgements)


def test_removing_and_re_adding_a_unit_changes_nothing() -> None:
    project = load(sample_file("tourer"))
    option = project.option("glass")
    dme = option.item("elt")
    without = project.with_option(option.revised(items=tuple(i for i in option.items if i.id != "elt")))
    again = without.option("glass").revised(items=(*without.option("glass").items, dme))
    found = judge(without.with_option(again), again)
    assert found.cost.total == of("glass").cost.total
    assert found.balance.change.new is not None
    assert of("glass").balance.change.new is not None
    assert found.balance.change.new.moment == pytest.approx(of("glass").balance.change.new.moment, abs=1e-6)
    assert {f.identity for f in found.all_findings} == {f.identity for f in of("glass").all_findings}


def test_a_project_without_equipment_is_judged_as_not_known() -> None:
    project = kit.project()
    found = judge(project, project.option("new"))
    assert found.electrical is None
    cells = {row.title: row.cells[0].text for row in compare(project, (project.option("new"),)).rows}
    assert cells["Heaviest continuous load"] == "not known"
    assert cells["New CG"] == "not known"
    assert cells["Kind of flight"] == "not stated"


def test_a_script_plans_compares_and_writes_the_papers(tmp_path: Path) -> None:
    import panelcad

    project = panelcad.load(sample_file("trainer"))
    option = project.options[0].id
    assert panelcad.plan(project, option).cost.total > 0
    assert next(j.option.id for j in panelcad.compare(project).judgements) == "as-found"
    panelcad.export_comparison(project, tmp_path / "report.pdf")
    written = panelcad.export_planning(project, option, tmp_path / "papers", "2026-03-01")
    assert (tmp_path / "report.pdf").read_bytes().startswith(b"%PDF")
    assert all(path.exists() for path in written)
