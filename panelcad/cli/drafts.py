"""Before a release: cutting files to be tried in scrap."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Final

import typer
from rich.markup import escape

from panelcad.cli.base import CAUTION, File, app, out, progress
from panelcad.cli.papers import DXF_HELP, PAPER_HELP
from panelcad.model.finding import Severity

if TYPE_CHECKING:
    from panelcad.checks.report import CheckReport

PLATE_HELP: Final = "A plate to write, by id or name; may be given again. All plates that are cut if left out."
AROUND_HELP: Final = (
    "A cut, by its number on the papers, its id or name, for a trial piece that holds it alone; may be given again for "
    "more cuts of the same plate in the same piece."
)


@app.command(epilog="Example: panelcad draft tourer.panel.json --option glass --to trial --around 7")
def draft(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="The option to try.")],
    to: Annotated[Path, typer.Option("--to", metavar="DIR", help="Folder for the files; made where missing.")],
    plate: Annotated[list[str] | None, typer.Option("--plate", metavar="NAME", help=PLATE_HELP)] = None,
    around: Annotated[list[str] | None, typer.Option("--around", metavar="CUT", help=AROUND_HELP)] = None,
    dxf: Annotated[list[str] | None, typer.Option("--dxf", metavar="WORD", help=DXF_HELP)] = None,
    paper: Annotated[str, typer.Option("--paper", metavar="NAME", help=PAPER_HELP)] = "",
) -> None:
    """Write draft cutting files for a trial in scrap, and full-size paper templates. It is no release.

    Files are called and marked draft, even where the option is released. Nothing is entered in the project, and open
    errors do not stop it; they are counted. `release --draft` writes the drawing.
    """
    from panelcad.outputs.dxf_choices import chosen_options  # noqa: PLC0415 - loads ezdxf
    from panelcad.outputs.release import cutting_draft  # noqa: PLC0415 - loads reportlab
    from panelcad.outputs.release_papers import ReleaseOptions  # noqa: PLC0415
    from panelcad.outputs.template import template_options  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    dxf_options, template = chosen_options(dxf or (), project.unit), template_options(paper)
    with progress("Writing drafts") as tell:
        options = ReleaseOptions(plates=tuple(plate or ()), dxf=dxf_options, template=template, tell=tell)
        files, report = cutting_draft(project, option, to, options, around or ())
    for path in files:
        out.print(escape(str(path)))
    out.print(f"{len(files)} files of option [bold]{escape(option)}[/], draft: for a trial in scrap, not released")
    out.print(_open_errors(report))
    out.print(CAUTION, style="dim")


def _open_errors(report: "CheckReport") -> str:
    count = report.count(Severity.ERROR)
    errors = {0: "No error is open", 1: "1 error is open"}.get(count, f"{count} errors are open")
    unjudged = f"; {len(report.not_judged)} rules could not judge it" if report.not_judged else ""
    return f"{errors} in this option{unjudged}."
