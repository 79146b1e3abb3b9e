"""Functions, single failures and required equipment of an option."""

from typing import Final

from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import findings_grid, paper
from panelcad.planning.failures import Outcome
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.redundancy import FunctionRow, missing_minimums
from panelcad.planning.required import RequirementResult, State
from panelcad.planning.wording import known_names

_TONES = {
    State.MET: Tone.PLAIN,
    State.MISSING: Tone.ERROR,
    State.UNKNOWN: Tone.WARNING,
    State.LOOK: Tone.ADVICE,
    State.NOT_REQUIRED: Tone.FAINT,
}
_INDEPENDENT = (
    "Sources are independent where no single unit's failure takes both away. Failures of wires, connectors, pitot and "
    "static lines that are not entered are not looked at."
)

_TOPICS: Final = (Topic.BELONGING, Topic.REDUNDANCY, Topic.REQUIRED)


def functions_and_failures(judgement: Judgement) -> Document:
    """The paper: function by unit, what each single failure takes away and leaves, and the required equipment."""
    found = [finding for topic in _TOPICS for finding in judgement.findings[topic]]
    accepted = [each for topic in _TOPICS for each in judgement.accepted[topic]]
    blocks: list[Block] = [
        Words(_INDEPENDENT, Tone.FAINT),
        Heading("Functions"),
        _functions(judgement),
        Heading("Single failures"),
        _failures(judgement),
        Heading("Required equipment"),
        *_required(judgement),
        Heading("Findings"),
        *findings_grid(judgement, found, accepted),
    ]
    return paper(judgement, "functions-and-failures", "Functions, failures and required equipment", blocks)


def _functions(judgement: Judgement) -> Grid:
    names = known_names(judgement.equipment.project, judgement.option)
    columns = (Column("function", 28), Column("provided by", 54), Column("independent", 12, is_number=True))
    return Grid("functions", columns, tuple(_function(row, names) for row in judgement.matrix))


def _function(row: FunctionRow, names: dict[str, str]) -> Line:
    providers = ", ".join(names[item] for item in row.providers) or "nothing: its needs are not met"
    return Line((row.function.value, providers, str(row.independent)), Tone.PLAIN if row.providers else Tone.ERROR)


def _failures(judgement: Judgement) -> Grid:
    columns = (
        Column("failure", 22),
        Column("no more", 34),
        Column("fewer sources of", 24),
        Column("leaves too little", 16),
    )
    lines = tuple(_failure(outcome, judgement) for outcome in judgement.outcomes if outcome.losses)
    return Grid("failures", columns, lines)


def _failure(outcome: Outcome, judgement: Judgement) -> Line:
    kind = judgement.equipment.flight
    lacking = [m.name for m in missing_minimums(outcome, kind)] if kind else ["not judged"]
    fewer = [f"{loss.function} ({len(loss.after)} left)" for loss in outcome.losses if not loss.is_total]
    cells = (outcome.failure.name, ", ".join(outcome.gone), ", ".join(fewer), ", ".join(lacking))
    return Line(cells, Tone.WARNING if lacking else Tone.PLAIN)


def _required(judgement: Judgement) -> list[Block]:
    kind = judgement.equipment.flight
    if kind is None:
        return [Words("Not judged: the kind of flight is not stated.", Tone.WARNING)]
    names = known_names(judgement.equipment.project, judgement.option)
    columns = (Column("required", 36), Column("paragraph", 18), Column("", 14), Column("met by", 32))
    lines = tuple(_requirement(result, names) for result in judgement.required)
    return [Words(f"For {kind}."), Grid("required", columns, lines)]


def _requirement(result: RequirementResult, names: dict[str, str]) -> Line:
    met_by = ", ".join(names.get(item, item) for item in result.met_by)
    told = "; ".join(text for text in (met_by, result.note) if text)
    cells = (result.requirement.title, result.requirement.paragraph, result.state.value, told)
    return Line(cells, _TONES[result.state])
