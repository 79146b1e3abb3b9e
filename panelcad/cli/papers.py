"""Papers: what goes to the machinist and the inspector, and what the owner is shown."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Final

import typer
from rich.markup import escape

from panelcad.cli.base import (
    CAUTION,
    File,
    app,
    out,
    progress,
    today,
)

if TYPE_CHECKING:
    from panelcad.model.project import Project
    from panelcad.outputs.release_papers import ReleaseOptions

DXF_HELP: Final = (
    "A choice for the cutting files; may be given again: R12, R2000, R2010, R2018, mm, in, front, back, datum, corner, "
    "relief, lead-ins, marks, no-cuts, no-drills, no-engraving, no-reference, cutter=LENGTH."
)
PLATE_HELP: Final = "A plate to issue, by id or name; may be given again. All plates that are cut if left out."
LARGEST_HELP: Final = "The largest sheet for the drawing that can be printed: A3 to A0, 'ANSI B' to 'ANSI E'."
SECTION_HELP: Final = (
    "Where a section of the drawing runs: x=3.25in, y=40mm, or pedestal:x=0 for another plate than the first; may be "
    "given again. Through what reaches deepest where it is not given."
)
PAPER_HELP: Final = (
    "The printer's paper for the full-size template: A4 to A0, Letter, Legal, Tabloid, ANSI C to E; "
    "A4 or Letter, as goes with the project's unit, where it is not given."
)


@app.command(epilog="Example: panelcad release tourer.panel.json --option glass --to papers")
def release(
    file: File,
    option: Annotated[str, typer.Option("--option", metavar="NAME", help="The option to release.")],
    to: Annotated[Path, typer.Option("--to", metavar="DIR", help="Folder for the papers; made where missing.")],
    plate: Annotated[list[str] | None, typer.Option("--plate", metavar="NAME", help=PLATE_HELP)] = None,
    by: Annotated[str, typer.Option("--by", metavar="WHO", help="Who releases it, for the release log.")] = "",
    dxf: Annotated[list[str] | None, typer.Option("--dxf", metavar="WORD", help=DXF_HELP)] = None,
    paper: Annotated[str, typer.Option("--paper", metavar="NAME", help=PAPER_HELP)] = "",
    ink: Annotated[str, typer.Option("--ink", metavar="INK", help="The sheets in 'colour' or 'black'.")] = "colour",
    largest: Annotated[str, typer.Option("--largest", metavar="NAME", help=LARGEST_HELP)] = "",
    section: Annotated[list[str] | None, typer.Option("--section", metavar="LINE", help=SECTION_HELP)] = None,
    draft: Annotated[bool, typer.Option("--draft", help="PDF only, marked 'not for cutting'.")] = False,  # noqa: FBT002
) -> None:
    """Write all papers of one option, or of some of its plates: cutting files, drawing, manifest.

    Refuses while errors of the panel are open; those of equipment are told and stop nothing. The release is entered in
    the project's log; the same geometry is issued again under the same letter, each kind of cutting file and each
    choice of plates in a folder of its own.
    """
    from panelcad.outputs.drawing import drawing_options  # noqa: PLC0415 - loads reportlab
    from panelcad.outputs.dxf_choices import chosen_options  # noqa: PLC0415 - loads ezdxf
    from panelcad.outputs.release_papers import ReleaseOptions  # noqa: PLC0415
    from panelcad.outputs.section_choices import chosen_sections  # noqa: PLC0415
    from panelcad.outputs.template import template_options  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    sections = chosen_sections(section or (), project, project.option(option), plate or ())
    options = ReleaseOptions(
        by=by,
        plates=tuple(plate or ()),
        dxf=chosen_options(dxf or (), project.unit),
        drawing=drawing_options(ink, largest, sections),
        template=template_options(paper),
    )
    _tell_equipment_errors(project, option)
    files, said = _drafted(project, option, to, options) if draft else _released(project, option, to, options, file)
    for path in files:
        out.print(str(path))
    out.print(f"{len(files)} files of option [bold]{escape(option)}[/], {said}")
    out.print(CAUTION, style="dim")


def _tell_equipment_errors(project: "Project", option: str) -> None:
    """Before anything is written: a release is about the metal, and nobody should miss them."""
    from panelcad.cli.judging import equipment_lines  # noqa: PLC0415
    from panelcad.planning.judge import equipment_errors  # noqa: PLC0415 - loads shapely

    chosen = project.option(option)
    for line in equipment_lines(project, chosen, equipment_errors(project, chosen)):
        out.print(line)


def _drafted(project: "Project", option: str, to: Path, options: "ReleaseOptions") -> tuple[tuple[Path, ...], str]:
    """The files written, and what to say of them."""
    from panelcad.outputs.release import draft  # noqa: PLC0415 - loads reportlab

    with progress("Writing papers") as tell:
        return draft(project, option, to, replace(options, tell=tell)), "draft, not for cutting"


def _released(
    project: "Project", option: str, to: Path, options: "ReleaseOptions", file: Path
) -> tuple[tuple[Path, ...], str]:
    """Issue it and keep the log in the project's file."""
    from panelcad.outputs.release import release  # noqa: PLC0415 - loads ezdxf and reportlab
    from panelcad.store.project_file import save  # noqa: PLC0415

    with progress("Writing papers") as tell:
        issued = release(project, option, to, today(), replace(options, tell=tell))
        save(issued.project, file)
    again = ", the letter it was released under before" if issued.was_reissued else ""
    return issued.files, f"revision {issued.stamp.revision} of {issued.stamp.on}{again}"


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
    with progress("Drawing") as tell:
        files = write_preview(project, to, PreviewOptions(width_px=width, tell=tell))
    for path in files:
        out.print(str(path))
    out.print(CAUTION, style="dim")
