"""All judgements of an option: seven sets of findings and the tables they come from."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property

from panelcad.checks.report import Accepted, CheckReport
from panelcad.checks.run import check
from panelcad.model.finding import Acceptance, Finding, Severity
from panelcad.model.project import Option, Project
from panelcad.planning.acceptance import sort_out
from panelcad.planning.balance import Balance, balance, judge_balance
from panelcad.planning.belonging import judge_belonging
from panelcad.planning.cost import Cost, cost, judge_cost
from panelcad.planning.electrical.judge import Electrical, electrical, judge_electrical
from panelcad.planning.equipment import Change, Equipment, change, equipment
from panelcad.planning.failures import Outcome, outcomes
from panelcad.planning.redundancy import FunctionRow, judge_redundancy, matrix
from panelcad.planning.required import RequirementResult, judge_required, required_equipment
from panelcad.planning.space import Space, judge_space, space
from panelcad.planning.wording import is_of_the_panel


class Topic(StrEnum):
    """The seven judgements."""

    BELONGING = "belonging together"
    REDUNDANCY = "functions and redundancy"
    REQUIRED = "required equipment"
    ELECTRICAL = "electrical"
    WEIGHT = "weight and balance"
    COST = "cost"
    SPACE = "panel space"


@dataclass(frozen=True)
class Judgement:
    """An option with everything that planning says about it. Tables are made when first asked for."""

    equipment: Equipment
    report: CheckReport
    findings: dict[Topic, tuple[Finding, ...]]
    """What is open."""
    accepted: dict[Topic, tuple[Accepted, ...]] = field(default_factory=dict)
    lapsed: tuple[Acceptance, ...] = ()
    """Acceptances whose finding changed or got worse; it is open again."""

    @property
    def option(self) -> Option:
        return self.equipment.option

    @cached_property
    def change(self) -> Change:
        return change(self.equipment.project, self.option)

    @cached_property
    def matrix(self) -> tuple[FunctionRow, ...]:
        return matrix(self.equipment)

    @cached_property
    def outcomes(self) -> tuple[Outcome, ...]:
        return outcomes(self.equipment)

    @cached_property
    def required(self) -> tuple[RequirementResult, ...]:
        """Empty where the kind of flight is not stated."""
        return required_equipment(self.equipment, self.equipment.flight) if self.equipment.flight else ()

    @cached_property
    def electrical(self) -> Electrical | None:
        return electrical(self.equipment)

    @cached_property
    def balance(self) -> Balance:
        return balance(self.equipment)

    @cached_property
    def cost(self) -> Cost:
        return cost(self.equipment)

    @cached_property
    def space(self) -> Space:
        return space(self.equipment, self.report)

    @property
    def all_findings(self) -> tuple[Finding, ...]:
        """Every finding once, errors first."""
        order = {severity: i for i, severity in enumerate(Severity)}
        found = {f.identity: f for topic in self.findings.values() for f in topic}
        return tuple(sorted(found.values(), key=lambda f: order[f.severity]))

    @property
    def errors(self) -> tuple[Finding, ...]:
        """Every open error once. Their number is what every paper, page and list says."""
        return tuple(finding for finding in self.all_findings if finding.severity is Severity.ERROR)

    @property
    def has_errors(self) -> bool:
        return bool(self.errors)

    @property
    def all_accepted(self) -> tuple[Accepted, ...]:
        """Every finding that somebody accepted, once."""
        found = {each.finding.identity: each for topic in self.accepted.values() for each in topic}
        return tuple(found.values())

    def count(self, topic: Topic, severity: Severity) -> int:
        return sum(finding.severity is severity for finding in self.findings[topic])


_JUDGES: dict[Topic, Callable[[Equipment], Iterator[Finding]]] = {
    Topic.BELONGING: judge_belonging,
    Topic.REDUNDANCY: judge_redundancy,
    Topic.REQUIRED: judge_required,
    Topic.ELECTRICAL: judge_electrical,
    Topic.WEIGHT: judge_balance,
    Topic.COST: judge_cost,
}


def judge(project: Project, option: Option) -> Judgement:
    """Judge an option in all seven ways. Raises `UnknownName` for a list of required equipment nobody has."""
    fitted = equipment(project, option)
    report = check(project, option)
    found = {topic: tuple(judge_one(fitted)) for topic, judge_one in _JUDGES.items()}
    found[Topic.SPACE] = tuple(judge_space(fitted, report))
    sorted_out = {topic: sort_out((f for f in each if not is_of_the_panel(f)), fitted) for topic, each in found.items()}
    return Judgement(
        fitted,
        report,
        findings={topic: _open(found[topic], accepted) for topic, (_, accepted, _) in sorted_out.items()},
        accepted={topic: accepted for topic, (_, accepted, _) in sorted_out.items()},
        lapsed=tuple(word for _, _, lapsed in sorted_out.values() for word in lapsed),
    )


def equipment_errors(project: Project, option: Option) -> tuple[Finding, ...]:
    """The open errors about an option's equipment, each once; its metal is not judged for them.

    They are among `Judgement.errors`, and stop no release. Raises `UnknownName` as `judge` does.
    """
    fitted = equipment(project, option)
    found = (finding for judge_one in _JUDGES.values() for finding in judge_one(fitted))
    still_open, _, _ = sort_out(found, fitted)
    return tuple({each.identity: each for each in still_open if each.severity is Severity.ERROR}.values())


def _open(found: tuple[Finding, ...], accepted: tuple[Accepted, ...]) -> tuple[Finding, ...]:
    """In their order; the panel's own were sorted out by its checks."""
    settled = {each.finding.identity for each in accepted}
    return tuple(finding for finding in found if finding.identity not in settled)
