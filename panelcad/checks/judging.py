"""Calling a rule so that a crash is reported as not judged, and choosing the worst of what it says."""

from collections.abc import Iterable
from typing import Any

from panelcad.checks.registry import Rule
from panelcad.checks.report import NotJudged, Verdict, gravity
from panelcad.model.finding import Finding


def judged(rule: Rule, *subjects: Any) -> tuple[Verdict, ...]:
    """What the rule finds, or that it could not judge."""
    try:
        return tuple(rule.judge(*subjects))
    except Exception as problem:  # noqa: BLE001 - a rule may fail in any way; its failure is never a pass
        return (crashed(rule.id, problem),)


def crashed(rule: str, problem: Exception) -> NotJudged:
    """What is said of a rule that failed."""
    return NotJudged(rule, f"{type(problem).__name__}: {problem}")


def worst(verdicts: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """The worst finding of each severity, or only that of the gravest, and whatever was not judged.

    Two cuts that are too near each other at ten places are one finding, measured where they are nearest.
    """
    kept: list[Verdict] = []
    gravest: Finding | None = None
    for verdict in verdicts:
        if not isinstance(verdict, Finding):
            kept.append(verdict)
        elif gravest is None or gravity(verdict) < gravity(gravest):
            gravest = verdict
    return tuple(dict.fromkeys(kept)) + ((gravest,) if gravest else ())
