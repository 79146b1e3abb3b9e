"""Findings put into words, last of all: names instead of ids, and the project's unit."""

from panelcad.model.finding import Finding, Measure
from panelcad.model.project import Option, Project
from panelcad.units import LengthUnit, format_angle, format_length


def sentence(finding: Finding, project: Project, option: Option) -> str:
    """What is wrong, with whom, measured and required: 'Bezels overlap: Altimeter and Compass: -0.020 in, …'."""
    who = " and ".join(_names(finding, project, option))
    return f"{finding.problem}: {who}{_numbers(finding, project.unit)}."


def quantity(value: float, measure: Measure, unit: LengthUnit) -> str:
    """A measured or required value as text."""
    if measure is Measure.LENGTH:
        return format_length(value, unit)
    if measure is Measure.ANGLE:
        return format_angle(value)
    return f"{value:.0%}" if measure is Measure.RATIO else f"{value:g}"


def _numbers(finding: Finding, unit: LengthUnit) -> str:
    if finding.measured is None:
        return ""
    measured = quantity(finding.measured, finding.measure, unit)
    if finding.required is None:
        return f": {measured}"
    bound = "at most" if finding.more_is_worse else "at least"
    return f": {measured}, {bound} {quantity(finding.required, finding.measure, unit)} required"


def _names(finding: Finding, project: Project, option: Option) -> list[str]:
    known = names(project, option)
    parts = {feature.rpartition("/")[0]: feature.rpartition("/")[2] for feature in finding.features}
    return [_named(known.get(item, item), parts.get(item)) for item in finding.items]


def _named(name: str, part: str | None) -> str:
    return f"{name} ({part})" if part else name


def names(project: Project, option: Option) -> dict[str, str]:
    """What people call each plate, cut, item, screw and thing around the panel, by id."""
    around = project.surroundings
    known = {thing.id: thing.name for thing in around.things}
    for plate in option.plates:
        known |= {screw.id: f"attach screw {screw.id}" for screw in plate.attach_screws}
        known |= {cut.id: cut.name for cut in plate.cuts}
        known[plate.id] = plate.name
    return known | {item.id: item.name for item in option.items}
