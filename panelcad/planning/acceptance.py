"""Accepting a finding about equipment: the word lapses when what it names changes, or when its value gets worse."""

from collections.abc import Iterable, Iterator

from panelcad.checks.acceptance import sort_by, word_on
from panelcad.checks.report import Accepted
from panelcad.model.base import Record
from panelcad.model.finding import Acceptance, Finding
from panelcad.model.fingerprint import record_fingerprint
from panelcad.model.planning import AircraftLoad, Alternator, Bus
from panelcad.planning.equipment import Equipment


def accept(finding: Finding, fitted: Equipment, *, reason: str, initials: str, on: str) -> Acceptance:
    """The acceptance to add to the option. Raises `EditRefused` where a finding can never be right."""
    return word_on(finding, lambda each: _fingerprint(each, fitted), reason=reason, initials=initials, on=on)


def sort_out(
    findings: Iterable[Finding], fitted: Equipment
) -> tuple[list[Finding], tuple[Accepted, ...], tuple[Acceptance, ...]]:
    """Findings that stay open, those that stand accepted, and acceptances whose finding changed or got worse."""
    return sort_by(findings, fitted.option.acceptances, lambda each: _fingerprint(each, fitted))


def _fingerprint(finding: Finding, fitted: Equipment) -> str:
    """Of the equipment that it names; '' where it names none."""
    named = tuple(_named(finding, fitted))
    return record_fingerprint(named) if named else ""


def _named(finding: Finding, fitted: Equipment) -> Iterator[Record]:
    """The units and how they are fitted, wherever on the panel, and the parts of the electrical system."""
    wanted, units = set(finding.items), {unit.name: unit for unit in fitted.project.units}
    known = {item.id: item for item in (*fitted.project.as_found.items, *fitted.option.items) if item.id in wanted}
    for item in (known[each] for each in sorted(known)):
        yield item.revised(x=0.0, y=0.0, rotation=0.0, plate=None, cut=None, name=item.id, notes="")
        if item.unit is not None:
            yield units[item.unit]
    system = fitted.system
    if system is not None:
        parts: tuple[Alternator | Bus | AircraftLoad, ...] = (*system.alternators, *system.buses, *system.loads)
        yield from (part for part in parts if part.id in wanted)
