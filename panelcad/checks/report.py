"""What a check reports: open findings, accepted ones, acceptances that lapsed, and rules that could not judge."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from panelcad.model.finding import Acceptance, Finding, Severity
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.project import Option, Project

_ORDER = {severity: place for place, severity in enumerate(Severity)}


@dataclass(frozen=True, order=True)
class NotJudged:
    """A rule that broke: what it should have judged counts as not judged, never as passed."""

    rule: str
    reason: str


@dataclass(frozen=True, order=True)
class Unknown:
    """What a rule could not judge because something is not known of these items; unknown is never safe."""

    rule: str
    items: tuple[str, ...]
    missing: str
    """What is not known: 'its compass-safe distance'."""


Verdict = Finding | NotJudged | Unknown


@dataclass(frozen=True)
class Accepted:
    """A finding that somebody accepted, and their word."""

    finding: Finding
    acceptance: Acceptance


@dataclass(frozen=True)
class CheckReport:
    """What checking one option found, sorted by severity, then from the top left to the bottom right."""

    project: Project
    option: Option
    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...] = ()
    lapsed: tuple[Acceptance, ...] = ()
    not_judged: tuple[NotJudged, ...] = ()
    unknown: tuple[Unknown, ...] = ()

    @cached_property
    def fingerprint(self) -> str:
        """The fingerprint of the geometry that was judged."""
        return option_fingerprint(self.project, self.option)

    @property
    def has_errors(self) -> bool:
        """Whether an error is open or a rule could not judge: then nothing may be cut."""
        return bool(self.not_judged) or any(f.severity is Severity.ERROR for f in self.findings)

    def count(self, severity: Severity) -> int:
        return sum(finding.severity is severity for finding in self.findings)


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings sorted by severity, plate, place (top left first) and identity; of each identity only the worst."""
    once: dict[str, Finding] = {}
    for finding in findings:
        other = once.setdefault(finding.identity, finding)
        if other is not finding:
            once[finding.identity] = min(finding, other, key=_worst_first)
    return tuple(sorted(once.values(), key=_sort_key))


def gravity(finding: Finding) -> tuple[int, float, str]:
    """Smaller is worse: severity, then how far the measured value misses the required one (rounded to a nanometre)."""
    if finding.measured is None or finding.required is None:
        return _ORDER[finding.severity], 0.0, finding.identity
    miss = finding.measured - finding.required
    return _ORDER[finding.severity], round(-miss if finding.more_is_worse else miss, 6), finding.identity


def _worst_first(finding: Finding) -> tuple[int, float, str, str]:
    """Two findings alike in all but their places are told apart by their whole text, never by who came first."""
    return *gravity(finding), finding.model_dump_json()


def _sort_key(finding: Finding) -> tuple[int, str, float, float, str]:
    x, y = finding.where[0] if finding.where else (0.0, 0.0)
    return _ORDER[finding.severity], finding.plate, -round(y, 3), round(x, 3), finding.identity
