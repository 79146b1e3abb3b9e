"""Findings and figures of planning put into words, in the reader's unit."""

from panelcad.checks.wording import names, words
from panelcad.checks.wording import quantity as panel_quantity
from panelcad.model.finding import Finding, Measure
from panelcad.model.project import Option, Project
from panelcad.units import LengthUnit, format_length, format_mass, mass_unit


def sentence(finding: Finding, project: Project, option: Option) -> str:
    """What is wrong, with whom, how much and how much is allowed."""
    if is_of_the_panel(finding):
        return _panel_sentence(finding, project, option)
    known = known_names(project, option)
    who = ", ".join(known.get(item, item) for item in finding.items)
    head = f"{who}: {_lower(finding.problem)}" if who else finding.problem
    return f"{head}{_numbers(finding, project.unit)}."


def cure_words(finding: Finding, project: Project) -> str:
    """What would mend it, as a sentence; '' where nothing simple would."""
    cure = finding.cure
    if cure is None or not cure.advice:
        return ""
    value = "" if cure.value is None else quantity(cure.value, cure.measure, project.unit)
    return f"{capital(cure.advice.format(value=value))}."


def equipment_errors_text(count: int) -> str:
    """'1 error of equipment', '2 errors of equipment': the same words wherever they are counted."""
    return f"{count} error{'' if count == 1 else 's'} of equipment"


def is_of_the_panel(finding: Finding) -> bool:
    """Whether the checks of the panel found it; planning finds nothing on a plate and measures no shapes."""
    return bool(finding.plate) or finding.measure in {Measure.LENGTH, Measure.ANGLE, Measure.RATIO}


def _panel_sentence(finding: Finding, project: Project, option: Option) -> str:
    said = words(finding, project, option)
    who = f"{said.who}: {_lower(said.problem)}" if said.who else said.problem
    numbers = ", ".join(part for part in (said.measured, said.required) if part)
    return f"{who}: {numbers}." if numbers else f"{who}."


def capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def known_names(project: Project, option: Option) -> dict[str, str]:
    """What people call each item, bus, alternator and load, by id."""
    known = names(project, option)
    system = project.electrical(option)
    if system is not None:
        known = {load.id: load.name for load in system.loads} | known
        known = {bus.id: bus.name for bus in system.buses} | known
        known = {alternator.id: alternator.name for alternator in system.alternators} | known
    found = {item.id: item.name for item in project.as_found.items}
    return found | known


def quantity(value: float, measure: Measure, unit: LengthUnit) -> str:
    """A measured or required value as text."""
    makers = {
        Measure.AMPERES: lambda: f"{value:.1f} A",
        Measure.VOLTS: lambda: f"{value:.2f} V",
        Measure.MINUTES: lambda: f"{value:.0f} min",
        Measure.MASS: lambda: format_mass(value, mass_unit(unit), places=1),
        Measure.ARM: lambda: format_length(value, unit, places=2 if unit is LengthUnit.INCH else 0),
    }
    maker = makers.get(measure)
    return maker() if maker else panel_quantity(value, measure, unit)


def _numbers(finding: Finding, unit: LengthUnit) -> str:
    if finding.measured is None:
        return ""
    measured = quantity(finding.measured, finding.measure, unit)
    if finding.required is None:
        return f": {measured}"
    bound = "at most" if finding.more_is_worse else "at least"
    return f": {measured}, {bound} {quantity(finding.required, finding.measure, unit)}"


def _lower(text: str) -> str:
    """The first letter small, as it follows a colon; abbreviations such as COM stay."""
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]
