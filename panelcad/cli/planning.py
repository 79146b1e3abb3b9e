"""Set options side by side; judge one option's equipment."""

from datetime import UTC, datetime
from pathlib import Path
from typing import Annotated

import typer

from panelcad.cli.base import (
    PLANNING_CAUTION,
    AsJson,
    File,
    app,
    exit_for,
    out,
    print_json,
    progress,
)


@app.command(epilog="Example: panelcad compare tourer.panel.json --to comparison.pdf")
def compare(
    file: File,
    option: Annotated[
        list[str] | None, typer.Option("--option", metavar="NAME", help="Which options; all of them if left out.")
    ] = None,
    to: Annotated[Path | None, typer.Option("--to", metavar="PDF", help="Write the owner's report there.")] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Set options side by side: what each does, draws, weighs and costs; exit code 1 where one has errors."""
    from panelcad.outputs.papers.write import write_comparison  # noqa: PLC0415
    from panelcad.outputs.planning_plain import comparison_as_plain  # noqa: PLC0415
    from panelcad.outputs.planning_text import comparison_table  # noqa: PLC0415
    from panelcad.planning.compare import compare as set_side_by_side  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    options = tuple(project.option(name) for name in option) if option else None
    with progress("Judging"):
        found = set_side_by_side(project, options)
        if to is not None:
            write_comparison(found, to)
    if as_json:
        print_json(comparison_as_plain(found))
    else:
        out.print(comparison_table(found))
        out.print(f"Wrote {to}" if to else PLANNING_CAUTION, style="dim")
    exit_for(found.has_errors)


@app.command(epilog="Example: panelcad plan tourer.panel.json --option glass --to papers")
def plan(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="Which option.", show_default=False)],
    to: Annotated[Path | None, typer.Option("--to", metavar="DIR", help="Write its planning papers there.")] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Judge one option's equipment; write load analysis, schedules, weight and balance revision, equipment list."""
    from panelcad.outputs.papers.write import write_option_papers  # noqa: PLC0415
    from panelcad.outputs.planning_plain import judgement_as_plain  # noqa: PLC0415
    from panelcad.outputs.planning_text import finding_lines, judgement_table  # noqa: PLC0415
    from panelcad.planning.judge import judge  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    with progress("Judging"):
        found = judge(project, project.option(option))
        today = datetime.now(UTC).astimezone().date().isoformat()
        written = write_option_papers(found, to, today) if to is not None else ()
    if as_json:
        print_json(judgement_as_plain(found))
    else:
        out.print(judgement_table(found))
        for line in finding_lines(found):
            out.print(line)
        for path in written:
            out.print(f"Wrote {path}")
        out.print(PLANNING_CAUTION, style="dim")
    exit_for(found.has_errors)
