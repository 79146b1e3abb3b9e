"""Findings put into words, last of all: names instead of ids, and the project's unit."""

from collections.abc import Callable
from typing import Final, NamedTuple

from panelcad.checks.cures import rounded_up
from panelcad.checks.report import CheckReport
from panelcad.model.finding import Cure, Finding, Measure
from panelcad.model.kept import kept_lately
from panelcad.model.project import Option, Project
from panelcad.units import LengthUnit, format_angle, format_length, format_number

_MOST_NAMES: Final = 3


class Words(NamedTuple):
    """A finding in words, part by part; '' where there is nothing to say."""

    problem: str
    who: str
    measured: str
    required: str
    where: str
    why: str
    cure: str


def sentence(finding: Finding, project: Project, option: Option) -> str:
    """One line: what is wrong with whom, measured and required, and what would cure it."""
    cure = words(finding, project, option).cure
    return " ".join(part for part in (fault(finding, project, option), cure) if part)


def fault(finding: Finding, project: Project, option: Option) -> str:
    """The same without the cure, for papers by which metal is cut: there 'move it' would read as an order."""
    said = words(finding, project, option)
    numbers = f": {said.measured}" if said.measured else ""
    bound = f", {said.required} required" if said.required else ""
    who = f": {said.who}" if said.who else ""
    return f"{said.problem}{who}{numbers}{bound}."


def words(finding: Finding, project: Project, option: Option) -> Words:
    """The finding in the project's unit."""
    known = names(project, option)
    unit = project.unit
    return Words(
        problem=finding.problem,
        who=_listed(_who(finding, known)),
        measured="" if finding.measured is None else quantity(finding.measured, finding.measure, unit),
        required=_required(finding, unit),
        where=_where(finding, unit),
        why=finding.source,
        cure="" if finding.cure is None else _cure(finding.cure, known, unit),
    )


def unknown_sentences(report: CheckReport) -> tuple[str, ...]:
    """What could not be judged because something is not known, one line for each thing that is missing."""
    return tuple(sentence for sentence, _, _ in unknown_things(report))


def unknown_things(report: CheckReport) -> tuple[tuple[str, tuple[str, ...], str], ...]:
    """The same with the ids of what each sentence speaks of, and the id of the rule that could not judge it."""
    known = names(report.project, report.option)
    missing: dict[tuple[str, str], list[str]] = {}
    for unknown in report.unknown:
        missing.setdefault((unknown.rule, unknown.missing), []).extend(unknown.items)
    return tuple(
        (f"Not known of {_listed([known.get(item, item) for item in items])}: {what}.", tuple(items), rule_id)
        for (rule_id, what), items in missing.items()
    )


def quantity(value: float, measure: Measure, unit: LengthUnit) -> str:
    """A measured or required value as text."""
    return _AS_TEXT.get(measure, _plain)(value, unit)


def names(project: Project, option: Option) -> dict[str, str]:
    """What people call each plate, cut, item, screw, mark and thing around the panel, by id."""
    return kept_lately("names", (project.surroundings, option), lambda: _names(project, option))


def _names(project: Project, option: Option) -> dict[str, str]:
    known = {thing.id: thing.name for thing in project.surroundings.things}
    for plate in option.plates:
        known |= {screw.id: f"attach screw {screw.id}" for screw in plate.attach_screws}
        known |= {cut.id: cut.name for cut in plate.cuts}
        known |= {engraving.id: f"‘{engraving.text}’" for engraving in plate.engravings}
        known[plate.id] = plate.name
    known |= {note.id: f"note ‘{note.text}’" for note in option.drawing_notes}
    known |= {dimension.id: dimension.id.replace("-", " ") for dimension in option.dimensions}
    return known | {item.id: item.name for item in option.items}


def _listed(who: list[str]) -> str:
    """All of a few names, or the first of many and how many more there are."""
    if len(who) <= _MOST_NAMES:
        return " and ".join(who)
    return f"{', '.join(who[: _MOST_NAMES - 1])} and {len(who) - _MOST_NAMES + 1} more"


def _required(finding: Finding, unit: LengthUnit) -> str:
    if finding.required is None:
        return ""
    bound = "at most" if finding.more_is_worse else "at least"
    return f"{bound} {quantity(finding.required, finding.measure, unit)}"


def _where(finding: Finding, unit: LengthUnit) -> str:
    if not finding.where:
        return ""
    x, y = finding.where[0]
    return f"at x {format_number(x, unit)}, y {format_length(y, unit)}"


def _who(finding: Finding, known: dict[str, str]) -> list[str]:
    parts: dict[str, list[str]] = {}
    for feature in finding.features:
        owner, _, part = feature.rpartition("/")
        parts.setdefault(owner, []).append(part)
    return [_named(known.get(item, item), parts.get(item, [])) for item in finding.items]


def _named(name: str, parts: list[str]) -> str:
    return f"{name} ({', '.join(parts)})" if parts else name


def _cure(cure: Cure, known: dict[str, str], unit: LengthUnit) -> str:
    if cure.pitch is not None:
        return f"Spread {row_of(cure, known, unit)}."
    if not cure.advice:
        return f"Move {known.get(cure.item, cure.item)} {steps_of(cure, unit)}."
    text = cure.advice if cure.value is None else cure.advice.format(value=quantity(cure.value, cure.measure, unit))
    return f"{text[:1].upper()}{text[1:]}."


def row_of(cure: Cure, known: dict[str, str], unit: LengthUnit) -> str:
    """'the row of 8 (Fuel to Spare) to a pitch of 0.83 in', for a cure that spreads a row."""
    ends = f"({known.get(cure.row[0], cure.row[0])} to {known.get(cure.row[-1], cure.row[-1])})"
    return f"the row of {len(cure.row)} {ends} to a pitch of {_move(cure.pitch or 0.0, unit)}"


def steps_of(cure: Cure, unit: LengthUnit) -> str:
    """'0.25 in left and 0.10 in up', for a cure that moves something."""
    return " and ".join(f"{_move(abs(length), unit)} {way}" for length, way in _ways(cure))


def _ways(cure: Cure) -> list[tuple[float, str]]:
    across = (cure.dx, "left" if cure.dx < 0 else "right")
    along = (cure.dy, "down" if cure.dy < 0 else "up")
    return [way for way in (across, along) if way[0]]


def _move(length: float, unit: LengthUnit) -> str:
    places = 2 if unit is LengthUnit.INCH else 1
    return f"{rounded_up(length, unit) / unit.mm:.{places}f} {unit.value}"


def _plain(value: float, _: LengthUnit) -> str:
    return f"{value:g}"


_AS_TEXT: Final[dict[Measure, Callable[[float, LengthUnit], str]]] = {
    Measure.LENGTH: format_length,
    Measure.ANGLE: lambda value, _: format_angle(value),
    Measure.RATIO: lambda value, _: f"{value * 100:.1f}".removesuffix(".0") + "%",
}
