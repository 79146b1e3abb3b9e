"""Open the window, begin a project, list what is in one, search the library."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from rich.markup import escape
from rich.table import Table

from panelcad.cli.base import (
    AsJson,
    File,
    app,
    command_names,
    err,
    make_folder,
    out,
    print_json,
)
from panelcad.errors import UnknownName, UnusableInput
from panelcad.units import LengthUnit, format_length, format_number

if TYPE_CHECKING:
    from panelcad.model.project import Project


@app.command(name="open", epilog="Example: panelcad tourer.panel.json")
def open_window(
    files: Annotated[list[Path] | None, typer.Argument(metavar="[FILE]", help="Project files to open.")] = None,
) -> None:
    """Open the window."""
    for file in files or []:
        if not file.exists() and not file.suffix:
            raise UnknownName("file or command", str(file), tuple(command_names()))
    from panelcad.desktop.start import run  # noqa: PLC0415 - Qt is needed for the window alone

    raise typer.Exit(run(files or []))


@app.command(epilog="Example: panelcad new my.panel.json --sample tourer")
def new(
    file: File,
    sample: Annotated[str | None, typer.Option("--sample", metavar="NAME", help="Copy a sample aircraft.")] = None,
    unit: Annotated[LengthUnit, typer.Option("--unit", help="The unit of an empty project.")] = LengthUnit.INCH,
    outline: Annotated[
        Path | None, typer.Option("--outline", metavar="DXF", help="Take outline and openings from a drawing.")
    ] = None,
) -> None:
    """Begin a project: empty, or a copy of a sample. Never overwrites a file."""
    from panelcad.editing.blank import blank_project  # noqa: PLC0415
    from panelcad.library.samples import sample_file  # noqa: PLC0415
    from panelcad.store.project_file import load, save  # noqa: PLC0415

    if file.exists():
        raise UnusableInput(str(file), "", "it is there already", "the name of a new file")
    project = load(sample_file(sample)) if sample else blank_project(unit)
    if outline is not None:
        project = _with_drawing(project, outline, unit)
    make_folder(file.parent)
    save(project, file)
    out.print(f"Made {file}; open it with: panelcad {file}")


def _with_drawing(project: "Project", outline: Path, unit: LengthUnit) -> "Project":
    """The drawing's sheet as found and in every option; `unit` is meant where the drawing states none."""
    from panelcad.editing.take_in import TakenOpening, TakenSheet, take_in_sheet  # noqa: PLC0415
    from panelcad.intake.dxf_outline import read_panel  # noqa: PLC0415 - loads ezdxf

    read = read_panel(outline, unit)
    openings = tuple(TakenOpening(each.shape, each.x, each.y) for each in read.openings)
    sheet = TakenSheet(read.outline, openings, outline.name)
    for option in project.all_options:
        project = take_in_sheet(project, option.id, option.plates[0].id, sheet)
    return project


@app.command(name="list", epilog="Example: panelcad list tourer.panel.json")
def list_contents(file: File, as_json: AsJson = False) -> None:  # noqa: FBT002
    """List the options, plates and items of a project."""
    from panelcad.model.layout import layout  # noqa: PLC0415
    from panelcad.model.revision import release_lines  # noqa: PLC0415
    from panelcad.outputs.plain import listing_as_plain  # noqa: PLC0415
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    if as_json:
        print_json(listing_as_plain(project))
        return
    out.print(f"[bold]{escape(project.title)}[/] · {escape(project.aircraft.registration)} · {project.unit.value}")
    for option in project.all_options:
        out.print(f"\n[bold]{escape(option.name)}[/] ({option.id})")
        for laid in layout(project, option).plates:
            out.print(f"  {_plate_line(project.unit, laid)}")
        out.print(_items_table(project, option) if option.items else "  nothing fitted")
        for line in release_lines(project, option):
            out.print(f"  {escape(line)}")


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
        print_json(cutouts_as_plain(found))
        return
    table = Table(box=None)
    for heading in ("name", "title", "family"):
        table.add_column(heading, overflow="fold")
    for cutout in found:
        table.add_row(cutout.name, escape(cutout.title), cutout.family)
    out.print(table if found else f"Nothing in the library answers to '{' '.join(text or [])}'.")
