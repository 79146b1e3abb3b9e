"""Judgements for a terminal: rich tables and lines, in words and the project's unit."""

from collections.abc import Iterator
from typing import Any, Final

from panelcad.model.finding import Severity
from panelcad.planning.compare import VERDICT, Cell, Comparison, Row, comparison_rows
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.wording import cure_words, sentence

_STYLES: Final = {Severity.ERROR: "bold red", Severity.WARNING: "yellow", Severity.ADVICE: "cyan"}


def comparison_table(comparison: Comparison) -> Any:
    """Options as columns, judgements as rows; rows in which the options differ are bright."""
    return _table(comparison.rows, tuple(judgement.option.name for judgement in comparison.judgements))


def judgement_table(judgement: Judgement) -> Any:
    """The same rows for one option."""
    rows = comparison_rows((judgement,))
    return _table(tuple(row for row in rows if row.title != "More than the least option"), (judgement.option.name,))


def _table(rows: tuple[Row, ...], names: tuple[str, ...]) -> Any:
    from rich.markup import escape  # noqa: PLC0415 - only where a terminal is written to
    from rich.table import Table  # noqa: PLC0415

    table = Table(box=None, padding=(0, 1))
    for heading in ("", *names):
        table.add_column(escape(heading), overflow="fold")
    for topic in Topic:
        of_topic = [row for row in rows if row.topic is topic]
        table.add_row(f"[bold underline]{topic.value}[/]", *("" for _ in names))
        for row in of_topic:
            table.add_row(row.title, *(escape_and_mark(cell) for cell in row.cells), style=_style(row, len(names)))
    return table


def _style(row: Row, options: int) -> str:
    return "" if row.title == VERDICT or options == 1 else ("bold" if row.differs else "dim")


def escape_and_mark(cell: Cell) -> str:
    """A cell's text with the colour of its worst finding."""
    from rich.markup import escape  # noqa: PLC0415 - only where a terminal is written to

    text = escape(cell.text)
    return f"[{_STYLES[cell.mark]}]{text}[/]" if cell.mark else text


def finding_lines(judgement: Judgement) -> Iterator[str]:
    """One line a finding, errors first, with its source; then what was accepted, and whose acceptance lapsed."""
    from rich.markup import escape  # noqa: PLC0415 - only where a terminal is written to

    project, option = judgement.equipment.project, judgement.option
    for finding in judgement.all_findings:
        style = _STYLES[finding.severity]
        text = escape(f"{sentence(finding, project, option)} {cure_words(finding, project)}".strip())
        yield f"  [{style}]{finding.severity.value:8}[/] {text} [dim]({escape(finding.source)})[/]"
    for accepted in judgement.all_accepted:
        text = f"{sentence(accepted.finding, project, option)} ({accepted.acceptance.told})"
        yield f"  [green]accepted[/] {escape(text)}"
    for word in judgement.lapsed:
        yield f"  [yellow]lapsed[/]   {escape(f'the acceptance of {word.finding} ({word.told})')}"
