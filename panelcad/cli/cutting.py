"""After a release: hold a file or a paper against the project, and open the next revision."""

from pathlib import Path
from typing import Annotated, Final

import typer
from rich.markup import escape

from panelcad.cli.base import AsJson, File, app, exit_for, out, print_json, progress, today
from panelcad.units import LengthUnit

PAPER_HELP: Final = "A DXF, another paper, a release's folder, or the text of a paper's code."


@app.command(epilog="Example: panelcad verify tourer.panel.json from-the-machinist.dxf")
def verify(
    file: File,
    held: Annotated[Path, typer.Argument(metavar="PAPER", help=PAPER_HELP)],
    option: Annotated[str | None, typer.Option("--option", metavar="NAME", help="Where the DXF names none.")] = None,
    unit: Annotated[LengthUnit | None, typer.Option("--unit", help="Where the DXF states none.")] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Hold a DXF against the project: exit code 0 the same, 1 differs, 2 unusable. Notes alone do not make it 1.

    Of any other paper, or of what its scanned code says, it tells which revision it is of; of a folder, whether it is
    as its manifest says.
    """
    from panelcad.outputs.verify import VerifyOptions  # noqa: PLC0415 - loads ezdxf
    from panelcad.outputs.verify_held import hold  # noqa: PLC0415
    from panelcad.outputs.verify_plain import verify_as_plain  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    wanted = project.option(option).id if option else None
    with progress("Verifying"):
        outcome = hold(project, str(held), VerifyOptions(option=wanted, unit=unit))
    if as_json and outcome.report is not None:
        print_json(verify_as_plain(outcome.report))
    else:
        out.print(escape(outcome.text), end="")
    exit_for(not outcome.is_same)


@app.command(epilog="Example: panelcad revise tourer.panel.json --option glass --reason 'second display added'")
def revise(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="The released option.")],
    reason: Annotated[str, typer.Option("--reason", metavar="TEXT", help="Why it changes.")],
    by: Annotated[str, typer.Option("--by", metavar="WHO", help="Who opens the revision.")] = "",
) -> None:
    """Open the next revision of a released option, which is locked until then."""
    from panelcad.editing.revision import open_revision  # noqa: PLC0415
    from panelcad.store.project_file import load, save  # noqa: PLC0415

    project = open_revision(load(file), option, reason, today(), by)
    save(project, file)
    opened = project.opened_revisions[-1]
    out.print(f"Revision {opened.revision} of option [bold]{escape(opened.option)}[/] is open.")
