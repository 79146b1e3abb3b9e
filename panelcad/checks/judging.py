"""Calling a rule so that a crash is reported as not judged, and choosing the worst of what it says."""

from collections.abc import Iterable
from typing import Any

from panelcad.checks.registry import Rule
from panelcad.checks.report import NotJudged, Verdict
from panelcad.model.finding import Finding, Severity


def judged(rule: Rule, *subjects: Any) -> tuple[Verdict, ...]:
    """What the rule finds, or that it could not judge."""
    try:
        return tuple(rule.judge(*subjects))
    except Exception as problem:  # noqa: BLE001 - a rule may fail in any way; its failure is never a pass
        return (NotJudged(rule.id, f"{type(problem).__name__}: {problem}"),)


def worst(verdicts: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """The worst finding of each severity, or only that of the gravest, and whatever was not judged.

    Two cuts that are too near each other at ten places are one finding, measured where they are nearest.
    """
    kept: list[Verdict] = []
    gravest: Finding | None = None
    for verdict in verdicts:
        if not isinstance(verdict, Finding):
            kept.append(verdict)
        elif gravest is None or _gravity(verdict) < _gravity(gravest):
            gravest = verdict
    return tuple(dict.fromkeys(kept)) + ((gravest,) if gravest else ())


_ORDER = {severity: place for place, severity in enumerate(Severity)}


def _gravity(finding: Finding) -> tuple[int, float, str]:
    """Smaller is worse: severity, then how far the measured value misses the required one (rounded to a nanometre)."""
    if finding.measured is None or finding.required is None:
        return _ORDER[finding.severity], 0.0, finding.identity
    miss = finding.measured - finding.required
    return _ORDER[finding.severity], round(-miss if finding.more_is_worse else miss, 6), finding.identity
