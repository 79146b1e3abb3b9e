"""Required equipment: each line of the lists, met by which unit, missing, or not known."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from panelcad.library.requirements import requirement_lists
from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function
from panelcad.model.planning import Fact, FlightKind
from panelcad.model.requirement import Per, Requirement, RequirementList, Substitute
from panelcad.planning.equipment import Equipment, Fitted
from panelcad.planning.power import hang_on_one_source
from panelcad.planning.redundancy import source_groups
from panelcad.planning.report import finding, unknown
from panelcad.planning.working import working

DEFAULT_LISTS: Final = ("us-part-91", "us-part-23-standby")
AIRCRAFT: Final = "the aircraft"
"""What meets a requirement without a listed unit."""
_DISPLAY: Final = frozenset({Function.ATTITUDE, Function.AIRSPEED, Function.ALTITUDE})


class State(StrEnum):
    MET = "met"
    MISSING = "missing"
    UNKNOWN = "not known"
    LOOK = "look in the aircraft"
    NOT_REQUIRED = "not required"


@dataclass(frozen=True)
class RequirementResult:
    """`met_by` are item ids or `AIRCRAFT`; `note` says what is not known or which substitute was taken."""

    requirement: Requirement
    source: str
    state: State
    met_by: tuple[str, ...] = ()
    note: str = ""


def required_equipment(equipment: Equipment, flight: FlightKind) -> tuple[RequirementResult, ...]:
    """Every line that belongs to the flight, of the project's lists. Raises `UnknownName` for a list nobody has."""
    names = equipment.project.planning.requirements or DEFAULT_LISTS
    return tuple(
        _result(requirement, listed, equipment)
        for listed in requirement_lists(names)
        for requirement in listed.required
        if flight in requirement.flights
    )


def judge_required(equipment: Equipment) -> Iterator[Finding]:
    """An error for what is missing, a warning for what is not known."""
    if equipment.flight is None:
        yield unknown("flight-unknown", "The kind of flight is not stated, so required equipment is not judged")
        return
    for result in required_equipment(equipment, equipment.flight):
        if result.state is State.MISSING:
            yield _missing(result)
        if result.state is State.UNKNOWN:
            yield finding(
                "required-unknown",
                Severity.WARNING,
                (),
                f"Not known whether it is required or met: {result.requirement.title}. {result.note}".strip(),
                result.source,
                features=(result.requirement.id,),
            )


def facts(equipment: Equipment) -> dict[Fact, bool]:
    """What is known of the aircraft; that it has electronic displays follows from its equipment where nobody said."""
    stated = {state.fact: state.holds for state in equipment.project.planning.facts}
    has_display = any(_DISPLAY.issubset(fitted.unit.provides) for fitted in equipment.units)
    return {Fact.ELECTRONIC_DISPLAYS: has_display, **stated}


def aircraft_functions(equipment: Equipment) -> frozenset[Function]:
    """The functions the aircraft has without a listed unit."""
    system = equipment.system
    found = set(equipment.project.planning.fitted)
    if system is not None:
        found.update(function for load in system.loads for function in load.provides)
        if any(alternator.rating for alternator in system.alternators):
            found.add(Function.ELECTRICAL_ENERGY)
    return frozenset(found)


def _missing(result: RequirementResult) -> Finding:
    return finding(
        "required",
        Severity.ERROR,
        (),
        f"Required and missing: {result.requirement.title} (paragraph {result.requirement.paragraph})",
        result.source,
        features=(result.requirement.id,),
    )


def _result(requirement: Requirement, listed: RequirementList, equipment: Equipment) -> RequirementResult:
    source = str(requirement.source or listed.source)
    known = facts(equipment)
    if any(known.get(fact) is False for fact in requirement.when):
        return RequirementResult(requirement, source, State.NOT_REQUIRED)
    if not requirement.any_of:
        return RequirementResult(requirement, source, State.LOOK, note=requirement.notes)
    met_by, note = _met_by(requirement, equipment)
    if met_by:
        return RequirementResult(requirement, source, State.MET, met_by, note)
    missing_facts = [fact.value for fact in requirement.when if fact not in known]
    note = "; ".join((*(f"not stated: {fact}" for fact in missing_facts), *([note] if note else [])))
    return RequirementResult(requirement, source, State.UNKNOWN if note else State.MISSING, note=note)


def _met_by(requirement: Requirement, equipment: Equipment) -> tuple[tuple[str, ...], str]:
    """What meets it, and a note; a note alone says what is not known."""
    if aircraft_functions(equipment).intersection(requirement.any_of):
        return (AIRCRAFT,), ""
    wanted = wanted_count(requirement.per, equipment)
    if wanted is None:
        return (), f"the number of {requirement.per}s is not stated"
    now = working(equipment)
    providers = dict.fromkeys(item for function in requirement.any_of for item in now.providers(function))
    served = sum(_serves(equipment.unit(item), requirement.per) for item in providers)
    groups = source_groups(equipment, requirement.any_of)
    if served >= wanted and len(groups) >= requirement.independent:
        return tuple(providers), ""
    return _by_substitute(requirement.substitute, equipment)


def wanted_count(per: Per, equipment: Equipment) -> int | None:
    planning = equipment.project.planning
    return {Per.AIRCRAFT: 1, Per.ENGINE: planning.engines, Per.TANK: planning.tanks}[per]


def _serves(fitted: Fitted, per: Per) -> int:
    return {Per.AIRCRAFT: 1, Per.ENGINE: fitted.unit.engines, Per.TANK: fitted.unit.tanks}[per]


def _by_substitute(substitute: Substitute | None, equipment: Equipment) -> tuple[tuple[str, ...], str]:
    if substitute is None or _is_too_heavy(substitute, equipment):
        return (), ""
    have = working(equipment).all_functions | aircraft_functions(equipment)
    groups = source_groups(equipment, (substitute.function,))
    if len(groups) < substitute.independent or not have.issuperset(substitute.beside):
        return (), ""
    sources = tuple(equipment.unit(item) for group in groups for item in group)
    if substitute.own_power and hang_on_one_source(sources, equipment):
        return (), ""
    return tuple(fitted.id for fitted in sources), f"by substitute: {substitute.source}"


def _is_too_heavy(substitute: Substitute, equipment: Equipment) -> bool:
    sheet = equipment.project.planning.weight
    mass = sheet.most_mass if sheet else None
    return mass is not None and substitute.most_mass is not None and mass > substitute.most_mass
