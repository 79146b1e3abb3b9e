"""The comparison report for the owner: options side by side in plain words, with charts."""

from collections.abc import Iterator
from decimal import Decimal

from panelcad.drawing.charts.bars import bars_chart, named_bars
from panelcad.drawing.charts.envelope import envelope_chart
from panelcad.drawing.charts.frame import ON_PAPER, Chart
from panelcad.drawing.charts.load import load_chart
from panelcad.model.planning import LineKind
from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import TONES, cautions, findings_grid
from panelcad.planning import figures
from panelcad.planning.compare import VERDICT, Comparison, Row
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.owner import failure_sentences, sentences
from panelcad.units import MassUnit, format_money, mass_unit

_TITLES = {
    Topic.BELONGING: "Do the boxes belong together?",
    Topic.REDUNDANCY: "What can it do, and what is left when something fails?",
    Topic.REQUIRED: "Is everything aboard that the rules want?",
    Topic.ELECTRICAL: "Does the electrical system carry it?",
    Topic.WEIGHT: "What does it weigh?",
    Topic.COST: "What does it cost?",
    Topic.SPACE: "Does it fit on the panel?",
}


def comparison_report(comparison: Comparison) -> Document:
    """The paper about all options of a comparison. Rows in which the options differ are set strong."""
    project = comparison.project
    options = ", ".join(judgement.option.name for judgement in comparison.judgements)
    return Document(
        name="comparison",
        title="Options for your panel",
        subtitle=f"{project.aircraft.registration}, {project.aircraft.type_name}. {project.title}. {options}",
        marking=f"{project.aircraft.registration}, {len(comparison.judgements)} options",
        blocks=tuple(_blocks(comparison)),
    )


def _blocks(comparison: Comparison) -> Iterator[Block]:
    yield Words("Strong lines are those in which the options differ. 'Not known' means that nobody entered it.")
    found = next((j for j in comparison.judgements if figures.is_as_found(j)), None)
    for judgement in comparison.judgements:
        yield from _in_short(judgement, found or judgement)
    yield from summary_charts(comparison)
    for topic in Topic:
        yield Heading(_TITLES[topic])
        yield _topic_grid(topic, comparison)
    for judgement in comparison.judgements:
        yield from _findings_only(judgement) if figures.is_as_found(judgement) else _in_full(judgement)
    yield from cautions()


def _in_short(judgement: Judgement, found: Judgement) -> Iterator[Block]:
    yield Heading(judgement.option.name, 2)
    if judgement.option.summary:
        yield Words(judgement.option.summary)
    yield Words(" ".join(sentences(judgement, found)))
    if judgement.has_errors:
        errors = len(judgement.errors)
        lacks = "It lacks something" if figures.is_as_found(judgement) else "It does not hold together yet"
        yield Words(f"{lacks}: {figures.counted(errors, 'error')}, listed below.", Tone.ERROR)


def summary_charts(comparison: Comparison) -> Iterator[Chart]:
    """Cost and change of weight of each option as bars; the panel as found is in neither."""
    offered = [j for j in comparison.judgements if not figures.is_as_found(j)]
    if not offered:
        return
    unit = mass_unit(comparison.project.unit)
    names = tuple(judgement.option.name for judgement in offered)
    totals = tuple(float(judgement.cost.total) for judgement in offered)
    texts = {float(j.cost.total): figures.total(j) for j in offered}
    yield bars_chart("Total cost", named_bars(names, totals, lambda value: texts[value]), ON_PAPER)
    changes = tuple(_in_unit(figures.mass_change(judgement), unit) for judgement in offered)
    yield bars_chart(
        f"Change of empty weight, {unit}", named_bars(names, changes, lambda v: f"{v:+.1f} {unit}"), ON_PAPER
    )


def _in_unit(kg: float | None, unit: MassUnit) -> float | None:
    return None if kg is None else kg / unit.kg


def _topic_grid(topic: Topic, comparison: Comparison) -> Grid:
    names = [judgement.option.name for judgement in comparison.judgements]
    columns = (Column("", 26), *(Column(name, 74 / len(names)) for name in names))
    lines = tuple(_row(row) for row in comparison.rows_of(topic))
    return Grid(topic.value.replace(" ", "-"), columns, lines)


def _row(row: Row) -> Line:
    texts = (row.title, *(cell.text for cell in row.cells))
    if row.title == VERDICT:
        tones = (Tone.PLAIN, *(TONES[cell.mark] if cell.mark else Tone.GOOD for cell in row.cells))
        return Line(texts, tones=tones)
    return Line(texts, Tone.TOTAL if row.differs else Tone.FAINT)


def _findings_only(judgement: Judgement) -> Iterator[Block]:
    yield Heading(f"{judgement.option.name}: findings")
    yield from findings_grid(
        judgement, judgement.all_findings, judgement.all_accepted, f"findings-{judgement.option.id}"
    )


def _in_full(judgement: Judgement) -> Iterator[Block]:
    yield Heading(f"{judgement.option.name}: in full")
    if judgement.electrical is not None:
        yield load_chart(judgement.electrical, f"{judgement.option.name}: load in each phase of flight", ON_PAPER)
    unit = judgement.equipment.project.unit
    chart = envelope_chart(judgement.balance, f"{judgement.option.name}: CG envelope", unit, ON_PAPER)
    if chart is not None:
        yield chart
    yield Heading("If one thing fails", 2)
    failures = list(failure_sentences(judgement))
    yield from (Words(text, Tone.WARNING if "That leaves no" in text else Tone.PLAIN) for text in failures)
    if not failures:
        yield Words("No single failure takes the last source of anything away.", Tone.GOOD)
    yield Heading("Cost", 2)
    yield cost_grid(judgement)
    yield Heading("Findings", 2)
    yield from findings_grid(
        judgement, judgement.all_findings, judgement.all_accepted, f"findings-{judgement.option.id}"
    )


def cost_grid(judgement: Judgement) -> Grid:
    """The quote: equipment line by line, labour by task, then shares, tax and total."""
    cost = judgement.cost
    currency = cost.currency
    lines = [
        Line(
            (line.name, line.kind.value, "not known" if line.amount is None else format_money(line.amount, currency)),
            Tone.WARNING if line.amount is None else Tone.PLAIN,
        )
        for line in cost.lines
        if line.kind is not LineKind.LABOUR
    ]
    rate = "rate not known" if cost.hourly_rate is None else f"at {format_money(cost.hourly_rate, currency)}"
    lines += [
        Line((f"{task.value}, {hours:f} h {rate}", "labour", _amount(hours, judgement)))
        for task, hours in cost.hours_by_task().items()
    ]
    sums = (
        ("Labour in all", cost.sum_of(LineKind.LABOUR)),
        ("Discount on equipment", -cost.discount),
        ("Contingency", cost.contingency),
        ("Tax", cost.tax),
    )
    lines += [Line((name, "", format_money(amount, currency)), Tone.FAINT) for name, amount in sums]
    lines.append(Line(("Total", "", figures.total(judgement)), Tone.TOTAL))
    columns = (Column("", 56), Column("", 22), Column(currency, 22, is_number=True))
    return Grid(f"cost-{judgement.option.id}", columns, tuple(lines))


def _amount(hours: Decimal, judgement: Judgement) -> str:
    rate = judgement.cost.hourly_rate
    return "not known" if rate is None else format_money(hours * rate, judgement.cost.currency)
