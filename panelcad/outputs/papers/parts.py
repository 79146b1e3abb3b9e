"""What all planning papers share: who they belong to, findings as lines, cautions."""

from collections.abc import Iterable

from panelcad.checks.report import Accepted
from panelcad.drawing.cautions import BEFORE_FLIGHT
from panelcad.model.finding import Finding, Severity
from panelcad.model.fingerprint import option_fingerprint
from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.planning.figures import arm_number
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.wording import cure_words, sentence
from panelcad.units import LengthUnit, format_mass_number, format_moment_number, mass_unit, moment_unit

TONES = {Severity.ERROR: Tone.ERROR, Severity.WARNING: Tone.WARNING, Severity.ADVICE: Tone.ADVICE}


def paper(judgement: Judgement, name: str, title: str, blocks: Iterable[Block]) -> Document:
    """A paper about one option, marked with the aircraft, the option and the fingerprint of its geometry."""
    project, option = judgement.equipment.project, judgement.option
    aircraft = project.aircraft
    return Document(
        name=name,
        title=title,
        subtitle=f"{aircraft.registration}, {aircraft.type_name}. {project.title}, option: {option.name}",
        marking=f"{aircraft.registration}, option {option.id}, geometry {option_fingerprint(project, option)}",
        blocks=tuple(blocks),
    )


def findings_grid(
    judgement: Judgement, findings: Iterable[Finding], accepted: Iterable[Accepted] = (), name: str = "findings"
) -> list[Block]:
    """The findings as a grid with their sources, then those that were accepted; one line of words where all is well."""
    lines = [Line((f.severity.value, _told(f, judgement), f.source), TONES[f.severity]) for f in findings]
    lines += [_accepted(each, judgement) for each in accepted]
    if not lines:
        return [Words("Nothing was found in what was entered.", Tone.GOOD)]
    return [Grid(name, (Column("", 12), Column("finding", 58), Column("source", 30)), tuple(lines))]


def findings_of(judgement: Judgement, topic: Topic) -> list[Block]:
    """All of one topic, as a grid."""
    return findings_grid(judgement, judgement.findings[topic], judgement.accepted[topic])


def _accepted(each: Accepted, judgement: Judgement) -> Line:
    said = sentence(each.finding, judgement.equipment.project, judgement.option)
    word = each.acceptance
    return Line(("accepted", f"{said} Accepted by {word.initials} on {word.on}: {word.reason}", each.finding.source))


def _told(finding: Finding, judgement: Judgement) -> str:
    """The finding and what would mend it."""
    project = judgement.equipment.project
    return f"{sentence(finding, project, judgement.option)} {cure_words(finding, project)}".strip()


def cautions() -> list[Block]:
    return [Heading("Before the aircraft flies", 2), *(Words(text, Tone.FAINT) for text in BEFORE_FLIGHT)]


def known(text: str | None) -> str:
    """The text, or that it is not known."""
    return text or "not known"


def mass_columns(unit: LengthUnit, shares: tuple[int, int, int]) -> tuple[Column, Column, Column]:
    """Columns of weight, arm and moment, headed with their units so that cells are plain numbers."""
    titles = (f"weight {mass_unit(unit)}", f"arm {unit.value}", f"moment {moment_unit(unit)}")
    first, second, third = (Column(title, share, is_number=True) for title, share in zip(titles, shares, strict=True))
    return first, second, third


def mass_cells(kg: float | None, arm: float | None, unit: LengthUnit) -> tuple[str, str, str]:
    """Weight, arm and moment as numbers in the reader's unit, or that they are not known."""
    moment = None if kg is None or arm is None else format_moment_number(kg * arm, unit)
    return (
        known(None if kg is None else format_mass_number(kg, mass_unit(unit))),
        known(None if arm is None else arm_number(arm, unit)),
        known(moment),
    )
