"""The commands. Each one reads its arguments, calls the same functions a script would, and prints what came of it."""

import json
import sys
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import Annotated, Any, Final

import typer
from rich.console import Console
from rich.markup import escape
from rich.table import Table

from panelcad.errors import PanelcadError, ReleaseRefused, UnknownName, UnusableInput
from panelcad.units import LengthUnit, format_length, format_number
from panelcad.version import __version__

NOTHING_WRONG: Final = 0
ERRORS_FOUND: Final = 1
UNUSABLE: Final = 2
FAULT: Final = 3

out = Console(soft_wrap=True, highlight=False)
err = Console(stderr=True, soft_wrap=True, highlight=False)
_COLOURS: Final = {"error": "bold red", "warning": "yellow", "advice": "cyan"}

CAUTION: Final = (
    "A planning aid; it approves nothing. Check every dimension against the equipment maker's installation manual and "
    "the aircraft, and try a paper or scrap template, before anything is cut."
)

PLANNING_CAUTION: Final = (
    "Arithmetic on what was entered; unknown is never safe. Built-in equipment is generic; its weights, currents and "
    "prices are invented. A planning aid; it approves nothing."
)


class _OpensFiles(typer.core.TyperGroup):
    """`panelcad` and `panelcad FILE` open the window."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        opens = not args or (not args[0].startswith("-") and args[0] not in self.commands)
        rest: list[str] = super().parse_args(ctx, ["open", *args] if opens else args)
        return rest


app = typer.Typer(
    cls=_OpensFiles,
    add_completion=False,
    rich_markup_mode="rich",
    pretty_exceptions_enable=False,
    no_args_is_help=False,
    invoke_without_command=True,
    help="Lay out a light aircraft's new instrument panel, check it, and release it to the machinist. "
    "`panelcad FILE` opens the window. " + CAUTION,
)


@app.callback()
def common(
    version: Annotated[bool, typer.Option("--version", help="Say which panelcad this is.", is_eager=True)] = False,  # noqa: FBT002
) -> None:
    """Options before any command."""
    if version:
        out.print(f"panelcad {__version__}")
        raise typer.Exit


File = Annotated[Path, typer.Argument(metavar="FILE", help="A panelcad project file.", show_default=False)]
OptionName = Annotated[
    str | None, typer.Option("--option", metavar="NAME", help="Which option; all of them if left out.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print JSON (docs/json.md) instead of text.")]


@app.command(name="open", epilog="Example: panelcad tourer.panel.json")
def open_window(
    files: Annotated[list[Path] | None, typer.Argument(metavar="[FILE]", help="Project files to open.")] = None,
) -> None:
    """Open the window."""
    for file in files or []:
        if not file.exists() and not file.suffix:
            raise UnknownName("file or command", str(file), tuple(_command_names()))
    from panelcad.desktop.start import run  # noqa: PLC0415 - Qt is needed for the window alone

    raise typer.Exit(run(files or []))


def _command_names() -> Iterator[str]:
    for command in app.registered_commands:
        yield command.name or str(getattr(command.callback, "__name__", ""))


@app.command(epilog="Example: panelcad check tourer.panel.json --option glass")
def check(file: File, option: OptionName = None, as_json: AsJson = False) -> None:  # noqa: FBT002 - a flag
    """Judge one option or all; exit code 0 nothing wrong, 1 errors found, 2 unusable input."""
    from panelcad.checks.run import check as judge  # noqa: PLC0415
    from panelcad.outputs.plain import check_as_plain  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    options = (project.option(option),) if option else project.options or (project.as_found,)
    with _progress("Checking"):
        reports = [(each, judge(project, each)) for each in options]
    if as_json:
        _print_json([check_as_plain(project, each, report) for each, report in reports])
    else:
        for each, report in reports:
            _print_report(project, each, report)
        out.print(CAUTION, style="dim")
    raise typer.Exit(ERRORS_FOUND if any(report.has_errors for _, report in reports) else NOTHING_WRONG)


def _print_report(project: Any, option: Any, report: Any) -> None:
    from panelcad.checks.wording import sentence  # noqa: PLC0415
    from panelcad.model.finding import Severity  # noqa: PLC0415

    out.print(f"[bold]{escape(project.title)}[/], option [bold]{option.id}[/] ({escape(option.name)})")
    for finding in report.findings:
        style = _COLOURS[finding.severity.value]
        out.print(f"  [{style}]{finding.severity.value:8}[/] {escape(sentence(finding, project, option))}")
    for accepted in report.accepted:
        said = f"{accepted.acceptance.initials}: {accepted.acceptance.reason}"
        out.print(f"  [green]accepted[/] {escape(sentence(accepted.finding, project, option))} ({escape(said)})")
    for broken in report.not_judged:
        out.print(f"  [bold red]not judged[/] {escape(broken.rule)}: {escape(broken.reason)}; do not take it as passed")
    counts = [f"{report.count(severity)} {severity.value}" for severity in Severity]
    accepted = f", {len(report.accepted)} accepted" if report.accepted else ""
    out.print(f"  {' · '.join(counts)}{accepted} · geometry {report.fingerprint}")


@app.command(epilog="Example: panelcad release tourer.panel.json --option glass --to papers")
def release(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="The option to release.")],
    to: Annotated[Path, typer.Option("--to", metavar="DIR", help="Folder for the papers; made where missing.")],
    by: Annotated[str, typer.Option("--by", metavar="WHO", help="Who releases it, for the release log.")] = "",
    draft: Annotated[bool, typer.Option("--draft", help="PDF only, marked 'not for cutting'.")] = False,  # noqa: FBT002
) -> None:
    """Write all papers of one option: cutting files, drawing, manifest. Refuses while errors are open.

    The release is entered in the project's log; the same geometry is issued again under the same letter.
    """
    from panelcad.outputs import release as releasing  # noqa: PLC0415 - loads ezdxf and reportlab
    from panelcad.outputs.release_papers import ReleaseOptions  # noqa: PLC0415
    from panelcad.store.project_file import load, save  # noqa: PLC0415

    project = load(file)
    with _progress("Writing papers") as tell:
        if draft:
            files = releasing.draft(project, option, to, ReleaseOptions(tell=tell))
            said = "draft, not for cutting"
        else:
            today = datetime.now().astimezone().date().isoformat()
            issued = releasing.release(project, option, to, today, ReleaseOptions(by=by, tell=tell))
            save(issued.project, file)
            files, again = issued.files, ", as issued before" if issued.was_reissued else ""
            said = f"revision {issued.stamp.revision} of {issued.stamp.on}{again}"
    for path in files:
        out.print(str(path))
    out.print(f"{len(files)} files of option [bold]{escape(option)}[/], {said}")
    out.print(CAUTION, style="dim")


@app.command(epilog="Example: panelcad preview tourer.panel.json --to for-the-owner")
def preview(
    file: File,
    to: Annotated[Path, typer.Option("--to", metavar="DIR", help="Folder for the pictures; made where missing.")],
    width: Annotated[int, typer.Option("--width", metavar="PX", help="Width of the pictures in pixels.")] = 1920,
) -> None:
    """Show the owner: pictures of every option by day and night, the proposal (PDF), and one page (HTML)."""
    from panelcad.outputs.preview import PreviewOptions, write_preview  # noqa: PLC0415 - loads Qt and reportlab
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    with _progress("Drawing"):
        files = write_preview(project, to, PreviewOptions(width_px=width))
    for path in files:
        out.print(str(path))
    out.print(CAUTION, style="dim")


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
    with _progress("Judging"):
        found = set_side_by_side(project, options)
        if to is not None:
            write_comparison(found, to)
    if as_json:
        _print_json(comparison_as_plain(found))
    else:
        out.print(comparison_table(found))
        out.print(f"Wrote {to}" if to else PLANNING_CAUTION, style="dim")
    _exit_for(found.has_errors)


@app.command(epilog="Example: panelcad plan tourer.panel.json --option glass --to papers")
def plan(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="Which option.", show_default=False)],
    to: Annotated[Path | None, typer.Option("--to", metavar="DIR", help="Write its planning papers there.")] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Judge one option's equipment; write load analysis, schedules, weight and balance revision, equipment list."""
    from datetime import UTC, datetime  # noqa: PLC0415

    from panelcad.outputs.papers.write import write_option_papers  # noqa: PLC0415
    from panelcad.outputs.planning_plain import judgement_as_plain  # noqa: PLC0415
    from panelcad.outputs.planning_text import finding_lines, judgement_table  # noqa: PLC0415
    from panelcad.planning.judge import judge  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    with _progress("Judging"):
        found = judge(project, project.option(option))
        today = datetime.now(UTC).astimezone().date().isoformat()
        written = write_option_papers(found, to, today) if to is not None else ()
    if as_json:
        _print_json(judgement_as_plain(found))
    else:
        out.print(judgement_table(found))
        for line in finding_lines(found):
            out.print(line)
        for path in written:
            out.print(f"Wrote {path}")
        out.print(PLANNING_CAUTION, style="dim")
    _exit_for(found.has_errors)


def _exit_for(has_errors: bool) -> None:  # noqa: FBT001 - private
    raise typer.Exit(ERRORS_FOUND if has_errors else NOTHING_WRONG)


@app.command(epilog="Example: panelcad new my.panel.json --sample tourer")
def new(
    file: File,
    sample: Annotated[str | None, typer.Option("--sample", metavar="NAME", help="Copy a sample aircraft.")] = None,
    unit: Annotated[LengthUnit, typer.Option("--unit", help="The unit of an empty project.")] = LengthUnit.INCH,
) -> None:
    """Begin a project: empty, or a copy of a sample. Never overwrites a file."""
    from panelcad.editing.blank import blank_project  # noqa: PLC0415
    from panelcad.library.samples import sample_file  # noqa: PLC0415
    from panelcad.store.project_file import load, save  # noqa: PLC0415

    if file.exists():
        raise UnusableInput(str(file), "", "it is there already", "the name of a new file")
    project = load(sample_file(sample)) if sample else blank_project(unit)
    _make_folder(file.parent)
    save(project, file)
    out.print(f"Made {file}; open it with: panelcad {file}")


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        problem = f"the folder cannot be made ({error.strerror})"
        raise UnusableInput(str(folder), "", problem, "a folder one may write in") from error


@app.command(name="list", epilog="Example: panelcad list tourer.panel.json")
def list_contents(file: File, as_json: AsJson = False) -> None:  # noqa: FBT002
    """List the options, plates and items of a project."""
    from panelcad.model.layout import layout  # noqa: PLC0415
    from panelcad.outputs.plain import listing_as_plain  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    if as_json:
        _print_json(listing_as_plain(project))
        return
    out.print(f"[bold]{escape(project.title)}[/] · {escape(project.aircraft.registration)} · {project.unit.value}")
    for option in project.all_options:
        out.print(f"\n[bold]{escape(option.name)}[/] ({option.id})")
        for laid in layout(project, option).plates:
            out.print(f"  {_plate_line(project.unit, laid)}")
        out.print(_items_table(project, option) if option.items else "  nothing fitted")


def _plate_line(unit: LengthUnit, laid: Any) -> str:
    left, bottom, right, top = laid.outline.bounds
    size = f"{format_number(right - left, unit)} × {format_length(top - bottom, unit)}"
    sheet = f"{format_length(laid.plate.thickness, unit)} {laid.plate.alloy}"
    return escape(
        f"{laid.plate.id}: {laid.plate.name}, {size}, {sheet}, {laid.plate.state.value}, {len(laid.cuts)} cuts"
    )


def _items_table(project: Any, option: Any) -> Table:
    table = Table(box=None)
    for heading in ("plate", "item", "cutout", "x", "y"):
        table.add_column(heading, justify="right" if heading in {"x", "y"} else "left", overflow="fold")
    for item in option.items:
        places = [format_length(value, project.unit) if item.plate else "" for value in (item.x, item.y)]
        table.add_row(item.plate or _whereabouts(item), escape(item.name), item.cutout or "", *places)
    return table


def _whereabouts(item: Any) -> str:
    return "not placed" if item.cutout else "elsewhere"


@app.command(epilog="Example: panelcad cutouts round altimeter")
def cutouts(
    text: Annotated[list[str] | None, typer.Argument(metavar="[TEXT]", help="Words to look for.")] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Search the library of cutouts, your own among them."""
    from panelcad.library.catalogue import whole_catalogue  # noqa: PLC0415
    from panelcad.outputs.plain import cutouts_as_plain  # noqa: PLC0415

    library = whole_catalogue()
    for fault in library.faults:
        err.print(escape(str(fault)))
    found = library.search(" ".join(text or []))
    if as_json:
        _print_json(cutouts_as_plain(found))
        return
    table = Table(box=None)
    for heading in ("name", "title", "family"):
        table.add_column(heading, overflow="fold")
    for cutout in found:
        table.add_row(cutout.name, escape(cutout.title), cutout.family)
    out.print(table if found else f"Nothing in the library answers to '{' '.join(text or [])}'.")


@app.command(epilog="Example: panelcad rules --json")
def rules(as_json: AsJson = False) -> None:  # noqa: FBT002
    """List every rule with what it measures, its default limits and its source."""
    from panelcad.checks.registry import listing  # noqa: PLC0415
    from panelcad.outputs.plain import SHAPE  # noqa: PLC0415

    listed = listing()
    if as_json:
        _print_json({"shape": SHAPE, "rules": listed})
        return
    for each in listed:
        out.print(f"[bold]{each['id']}[/]  {escape(each['title'])} ({', '.join(each['severities'])}; {each['scope']})")
        out.print(f"    measures {escape(each['measures'])}")
        for name, value in each["limits"].items():
            out.print(f"    {name} = {value:g}")
        out.print(f"    source: {escape(each['source'])}", style="dim")


def _print_json(value: Any) -> None:
    sys.stdout.write(json.dumps(value, indent=2, ensure_ascii=False) + "\n")


@contextmanager
def _progress(what: str) -> Iterator[Callable[[str], None]]:
    """A turning mark on a terminal's error stream while the work lasts, told of each step; nothing elsewhere."""
    if err.is_terminal:
        with err.status(f"{what} …") as status:
            yield lambda step: status.update(f"{what}: {step} …")
    else:
        yield lambda _: None


def main() -> None:
    """Run a command; what panelcad cannot use becomes one sentence on the error stream and exit code 2."""
    try:
        app()
    except ReleaseRefused as refusal:
        err.print(escape(str(refusal)))
        sys.exit(ERRORS_FOUND)
    except (PanelcadError, OSError) as error:
        err.print(f"[bold red]panelcad:[/] {escape(str(error))}")
        sys.exit(UNUSABLE)
    except Exception:  # noqa: BLE001 - shown in full; its own exit code keeps it apart from 'errors found'
        traceback.print_exc()
        err.print(
            "[bold red]panelcad:[/] this is a fault of the program; nothing it printed before should be relied on"
        )
        sys.exit(FAULT)
