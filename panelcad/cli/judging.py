"""Check options; list the rules."""

from typing import Any

import typer
from rich.markup import escape

from panelcad.cli.base import (
    CAUTION,
    COLOURS,
    ERRORS_FOUND,
    NOTHING_WRONG,
    AsJson,
    File,
    OptionName,
    app,
    out,
    print_json,
    progress,
)


@app.command(epilog="Example: panelcad check tourer.panel.json --option glass")
def check(file: File, option: OptionName = None, as_json: AsJson = False) -> None:  # noqa: FBT002 - a flag
    """Judge one option or all; exit code 0 nothing wrong, 1 errors found, 2 unusable input.

    Errors of equipment are told and count for the exit code as the panel's do, though only those of the panel stop a
    release; `plan` tells everything about the equipment.
    """
    from panelcad.checks.run import check as judge  # noqa: PLC0415
    from panelcad.outputs.plain import check_as_plain  # noqa: PLC0415
    from panelcad.planning.judge import equipment_errors  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    options = (project.option(option),) if option else project.options or (project.as_found,)
    with progress("Checking"):
        reports = [(each, judge(project, each), equipment_errors(project, each)) for each in options]
    if as_json:
        print_json([check_as_plain(project, *judged) for judged in reports])
    else:
        for judged in reports:
            _print_report(project, *judged)
        out.print(CAUTION, style="dim")
    raise typer.Exit(
        ERRORS_FOUND if any(report.has_errors or of_equipment for _, report, of_equipment in reports) else NOTHING_WRONG
    )


def _print_report(project: Any, option: Any, report: Any, of_equipment: Any) -> None:
    from panelcad.checks.wording import sentence, unknown_sentences  # noqa: PLC0415
    from panelcad.model.finding import Severity  # noqa: PLC0415
    from panelcad.planning.figures import counted  # noqa: PLC0415
    from panelcad.planning.wording import equipment_errors_text  # noqa: PLC0415

    out.print(f"[bold]{escape(project.title)}[/], option [bold]{option.id}[/] ({escape(option.name)})")
    for finding in report.findings:
        style = COLOURS[finding.severity.value]
        out.print(f"  [{style}]{finding.severity.value:8}[/] {escape(sentence(finding, project, option))}")
    for line in equipment_lines(project, option, of_equipment):
        out.print(line)
    for accepted in report.accepted:
        said = accepted.acceptance.told
        out.print(f"  [green]accepted[/] {escape(sentence(accepted.finding, project, option))} ({escape(said)})")
    for broken in report.not_judged:
        out.print(f"  [bold red]not judged[/] {escape(broken.rule)}: {escape(broken.reason)}; do not take it as passed")
    for line in unknown_sentences(report):
        out.print(f"  [yellow]unknown [/] {escape(line)}")
    counts = [counted(report.count(severity), severity.value) for severity in Severity]
    counts += [equipment_errors_text(len(of_equipment))] if of_equipment else []
    accepted = f", {len(report.accepted)} accepted" if report.accepted else ""
    out.print(f"  {' · '.join(counts)}{accepted} · geometry {report.fingerprint}")


def equipment_lines(project: Any, option: Any, errors: Any) -> list[str]:
    """A line for each error of equipment, with its colours."""
    from panelcad.planning.wording import sentence  # noqa: PLC0415

    style = COLOURS["error"]
    return [f"  [{style}]error   [/] of equipment: {escape(sentence(each, project, option))}" for each in errors]


@app.command(epilog="Example: panelcad rules --json")
def rules(as_json: AsJson = False) -> None:  # noqa: FBT002
    """List every rule with what it measures, its default limits and its source."""
    from panelcad.checks.profile_file import title_of  # noqa: PLC0415
    from panelcad.checks.registry import all_rules, listing  # noqa: PLC0415
    from panelcad.checks.rule_page import default_text, severities_text  # noqa: PLC0415
    from panelcad.model.profile import limit_source  # noqa: PLC0415
    from panelcad.outputs.plain import SHAPE  # noqa: PLC0415

    if as_json:
        print_json({"shape": SHAPE, "rules": listing()})
        return
    for each in all_rules():
        out.print(f"[bold]{each.id}[/]  {escape(each.title)} ({severities_text(each)}; {each.scope.value})")
        out.print(f"    measures {escape(each.measures)}")
        for name in each.limits:
            out.print(f"    {name} = {default_text(name)}: {escape(title_of(name))}")
            out.print(f"        {escape(str(limit_source(name)))}", style="dim")
        out.print(f"    source: {escape(each.source)}", style="dim")
