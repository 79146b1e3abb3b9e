"""What a check reports: open findings, accepted ones, acceptances that lapsed, and rules that could not judge."""

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


def in_order(findings: list[Finding]) -> tuple[Finding, ...]:
    """Findings sorted by severity, plate, place (top left first) and identity; each identity once."""
    once = {finding.identity: finding for finding in sorted(findings, key=_sort_key, reverse=True)}
    return tuple(sorted(once.values(), key=_sort_key))


def _sort_key(finding: Finding) -> tuple[int, str, float, float, str]:
    x, y = finding.where[0] if finding.where else (0.0, 0.0)
    return _ORDER[finding.severity], finding.plate, -round(y, 3), round(x, 3), finding.identity
