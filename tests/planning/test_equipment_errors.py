"""Errors of equipment are those that planning alone finds, counted once, and open."""

import pytest

from panelcad.editing.acceptances import add_acceptance
from panelcad.library.samples import sample_file, sample_names
from panelcad.planning.acceptance import accept
from panelcad.planning.judge import equipment_errors, judge
from panelcad.planning.wording import equipment_errors_text
from panelcad.store.project_file import load
from tests.planning import kit

REMOTE = kit.unit("remote", provides=("transponder",), needs=({"controller": "transponder"},))


@pytest.mark.parametrize("sample", sample_names())
def test_with_those_of_the_panel_they_are_all_errors_of_the_option(sample: str) -> None:
    project = load(sample_file(sample))
    for option in project.all_options:
        judgement = judge(project, option)
        of_panel = {each.identity for each in judgement.report.findings}
        rest = {each.identity for each in judgement.errors if each.identity not in of_panel}
        assert {each.identity for each in equipment_errors(project, option)} == rest


def test_what_is_accepted_is_not_open() -> None:
    project = kit.project(REMOTE)
    (error,) = equipment_errors(project, project.option("new"))
    word = accept(
        error, judge(project, project.option("new")).equipment, reason="on order", initials="AB", on="2026-01-31"
    )
    project = add_acceptance(project, "new", word)
    assert equipment_errors(project, project.option("new")) == ()


@pytest.mark.parametrize(("count", "words"), [(1, "1 error of equipment"), (2, "2 errors of equipment")])
def test_one_error_is_not_many(count: int, words: str) -> None:
    assert equipment_errors_text(count) == words
