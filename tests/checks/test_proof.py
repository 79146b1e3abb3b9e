"""Every rule is proved: a case inside and one outside its limit, turned and moved copies, and what it must ignore.

A module of this folder that is about a rule states them in `CASES` and `IGNORED`; here they are collected and run.
"""

from collections.abc import Collection, Iterator
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

import pytest

import tests.checks
from panelcad.checks.registry import load_rules
from tests.checks.cases import Case, Ignored, holds, said


def stated(name: str) -> Iterator[Any]:
    """All that the modules of this folder state under this name."""
    for module in iter_modules(tests.checks.__path__, "tests.checks."):
        if module.name != __name__:
            yield from getattr(import_module(module.name), name, ())


CASES: tuple[Case, ...] = tuple(stated("CASES"))
IGNORED: tuple[Ignored, ...] = tuple(stated("IGNORED"))


def lacking(rule: str, cases: Collection[Case] = CASES, ignored: Collection[Ignored] = IGNORED) -> list[str]:
    """What is missing of the proof of a rule."""
    own = [case for case in cases if case.rule == rule]
    wanted = {
        "a case inside and one outside its limit": own,
        "a copy off the origin": [copy for case in own for copy in case.copies if copy.x],
        "a turned copy, or why there is none": [case for case in own if case.not_turned or _is_turned(case)],
        "something it must ignore": [each for each in ignored if each.rule == rule],
    }
    return [what for what, there in wanted.items() if not there]


def _is_turned(case: Case) -> bool:
    return any(copy.rotation % 90 for copy in case.copies)


def test_every_rule_is_proved():
    ours = [rule.id for rule in load_rules().rules if rule.judge.__module__.startswith("panelcad.")]
    assert {rule: lacking(rule) for rule in ours if lacking(rule)} == {}


def test_a_rule_that_nobody_proved_is_told():
    assert len(lacking("made-up")) == 4
    (case, *_) = CASES
    assert lacking(case.rule, [case], ()) == ["something it must ignore"]


def test_a_case_states_a_severity_that_its_rule_knows():
    known = {rule.id: rule.severities for rule in load_rules().rules}
    assert [str(case) for case in CASES if case.severity and case.severity not in known[case.rule]] == []


@pytest.mark.parametrize("case", CASES, ids=str)
def test_inside_outside_and_copies(case):
    holds(case)


@pytest.mark.parametrize("ignored", IGNORED, ids=str)
def test_ignores(ignored):
    assert said(ignored.make(), ignored.rule) == []
