"""Options side by side: a row a judgement, a cell an option, and whether the options differ in it."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from panelcad.model.base import Record
from panelcad.model.finding import Severity
from panelcad.model.function import Function
from panelcad.model.project import Option, Project
from panelcad.planning import figures
from panelcad.planning.judge import Judgement, Topic, judge

VERDICT: Final = "Verdict"
"""The title of the rows that say how many findings there are."""


@dataclass(frozen=True)
class Cell:
    """What an option says to a row. `reasons` are the identities of findings that explain it."""

    text: str
    mark: Severity | None = None
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True)
class Row:
    topic: Topic
    title: str
    cells: tuple[Cell, ...]

    @property
    def differs(self) -> bool:
        return len({cell.text for cell in self.cells}) > 1


@dataclass(frozen=True)
class Comparison:
    """Judgements of some options, in the order given, and the rows that set them side by side."""

    project: Project
    judgements: tuple[Judgement, ...]
    rows: tuple[Row, ...]

    @property
    def has_errors(self) -> bool:
        """Whether an option has an error; those of the panel as found are not counted beside options."""
        offered = [j for j in self.judgements if not figures.is_as_found(j)] or self.judgements
        return any(judgement.has_errors for judgement in offered)

    def rows_of(self, topic: Topic) -> tuple[Row, ...]:
        return tuple(row for row in self.rows if row.topic is topic)


def compare(project: Project, options: tuple[Option, ...] | None = None, kept: Comparison | None = None) -> Comparison:
    """The options of a project beside the panel as found, or those given.

    Judgements of `kept` are taken over for options that are the same records on the same ground, so that a change of
    one option judges only that one again.
    """
    old = {id(j.option): j for j in kept.judgements} if kept and _same_ground(kept.project, project) else {}
    judgements = tuple(old.get(id(option)) or judge(project, option) for option in options or project.all_options)
    return Comparison(project, judgements, comparison_rows(judgements))


def _same_ground(a: Project, b: Project) -> bool:
    """Whether all that options are judged by is the very same."""
    single = ("planning", "as_found", "surroundings", "profile", "unit")
    return all(getattr(a, name) is getattr(b, name) for name in single) and all(
        _same_records(getattr(a, name), getattr(b, name)) for name in ("units", "cutouts")
    )


def _same_records(a: tuple[Record, ...], b: tuple[Record, ...]) -> bool:
    return len(a) == len(b) and all(one is other for one, other in zip(a, b, strict=True))


def comparison_rows(judgements: tuple[Judgement, ...]) -> tuple[Row, ...]:
    """The rows over these judgements; a count of functions stands where any option has the function."""
    rows = [_verdict_row(topic, judgements) for topic in Topic]
    rows += [_function_row(function, judgements) for function in _shown_functions(judgements)]
    rows += [Row(topic, title, tuple(Cell(text(j)) for j in judgements)) for topic, title, text in _FIGURES]
    rows.append(_difference_row(judgements))
    order = {topic: i for i, topic in enumerate(Topic)}
    return tuple(sorted(rows, key=lambda row: order[row.topic]))


def _verdict_row(topic: Topic, judgements: tuple[Judgement, ...]) -> Row:
    return Row(topic, VERDICT, tuple(_verdict(topic, judgement) for judgement in judgements))


def _verdict(topic: Topic, judgement: Judgement) -> Cell:
    found = judgement.findings[topic]
    counts = [(severity, judgement.count(topic, severity)) for severity in Severity]
    worst = next((severity for severity, count in counts if count), None)
    text = ", ".join(figures.counted(count, severity.value) for severity, count in counts if count)
    return Cell(text or "nothing found", worst, tuple(f.identity for f in found))


def _shown_functions(judgements: tuple[Judgement, ...]) -> tuple[Function, ...]:
    made = {row.function for judgement in judgements for row in judgement.matrix}
    return tuple(function for function in Function if function in made)


def _function_row(function: Function, judgements: tuple[Judgement, ...]) -> Row:
    cells = []
    for judgement in judgements:
        row = next((row for row in judgement.matrix if row.function is function), None)
        none = "none known" if judgement.equipment.nameless else "none"
        text = none if row is None or not row.providers else figures.sources(len(row.providers), row.independent)
        cells.append(Cell(text))
    return Row(Topic.REDUNDANCY, figures.capital(function.value), tuple(cells))


def _difference_row(judgements: tuple[Judgement, ...]) -> Row:
    totals = [judgement.cost.total for judgement in judgements]
    offered = [total for j, total in zip(judgements, totals, strict=True) if not figures.is_as_found(j)]
    least = min(offered, default=Decimal(0))
    is_open = any(judgement.change.nameless for judgement in judgements)
    cells = []
    for judgement, total in zip(judgements, totals, strict=True):
        text = "" if figures.is_as_found(judgement) else figures.money_difference(total - least, judgement.cost)
        cells.append(Cell(figures.UNKNOWN if text and is_open else text))
    return Row(Topic.COST, "More than the least option", tuple(cells))


_FIGURES: tuple[tuple[Topic, str, Callable[[Judgement], str]], ...] = (
    (Topic.BELONGING, "Units of equipment", figures.unit_count),
    (Topic.REDUNDANCY, "Functions not known of", figures.not_known_of),
    (Topic.REDUNDANCY, "Single failures that leave too little", figures.bad_failures),
    (Topic.REQUIRED, "Kind of flight", figures.flight),
    (Topic.REQUIRED, "Required and missing", figures.missing),
    (Topic.ELECTRICAL, "Heaviest continuous load", figures.worst_load),
    (Topic.ELECTRICAL, "Share of the alternator", figures.alternator_share),
    (Topic.ELECTRICAL, "Battery alone lasts", figures.battery),
    (Topic.ELECTRICAL, "Heat behind the panel", figures.heat),
    (Topic.WEIGHT, "Change of empty weight", figures.weight_difference),
    (Topic.WEIGHT, "New empty weight", figures.new_weight),
    (Topic.WEIGHT, "New CG", figures.new_cg),
    (Topic.WEIGHT, "Useful load", figures.useful_load),
    (Topic.COST, "Equipment", figures.equipment_cost),
    (Topic.COST, "Labour", figures.labour),
    (Topic.COST, "Total", figures.total),
    (Topic.SPACE, "Fits", figures.fits),
    (Topic.SPACE, "Faces on the panel, before and after", figures.faces),
    (Topic.SPACE, "Panel covered", figures.covered),
    (Topic.SPACE, "Depth used", figures.depth),
    (Topic.SPACE, "Free width", figures.free_width),
    (Topic.SPACE, "Stack height left", figures.stack_left),
    (Topic.SPACE, "Free places left", figures.room),
)
