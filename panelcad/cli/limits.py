"""The limits of a project: show them, take a shop's own from a file, write them to one."""

from pathlib import Path
from typing import Annotated, Any

import typer
from rich.markup import escape

from panelcad.cli.base import AsJson, File, app, make_folder, out, print_json
from panelcad.errors import UnusableInput


@app.command(epilog="Example: panelcad limits my.panel.json --take our-shop.toml")
def limits(
    file: File,
    take: Annotated[
        Path | None, typer.Option("--take", metavar="TOML", help="Take the limits from this file and save the project.")
    ] = None,
    write: Annotated[
        Path | None, typer.Option("--write", metavar="TOML", help="Write all limits to a new file, to edit there.")
    ] = None,
    as_json: AsJson = False,  # noqa: FBT002
) -> None:
    """Show in which limits a project differs from the defaults; take a shop's own, or write them down."""
    from panelcad.store.project_file import load  # noqa: PLC0415

    project = load(file)
    if take is not None:
        project = _taken(file, project, take)
    if write is not None:
        _written(project, write)
    if as_json:
        _print_json(project)
    else:
        _print(project)


def _taken(file: Path, project: Any, take: Path) -> Any:
    from panelcad.checks.profile_file import read_profile  # noqa: PLC0415
    from panelcad.editing.limits import with_limits  # noqa: PLC0415
    from panelcad.store.project_file import save  # noqa: PLC0415

    changed = with_limits(project, read_profile(take))
    save(changed, file)
    return changed


def _written(project: Any, file: Path) -> None:
    from panelcad.checks.profile_file import profile_text  # noqa: PLC0415
    from panelcad.store.atomic import write_atomically  # noqa: PLC0415

    if file.exists():
        raise UnusableInput(str(file), "", "it is there already", "the name of a new file")
    make_folder(file.parent)
    write_atomically(file, profile_text(project.profile, project.unit).encode())


def _print(project: Any) -> None:
    from panelcad.checks.profile_file import differences  # noqa: PLC0415

    out.print(f"[bold]{escape(project.title)}[/]: limits '{escape(project.profile.name)}'")
    found = differences(project.profile)
    for each in found:
        out.print(f"  {escape(each.text(project.unit))}")
    if not found:
        out.print("  as the defaults; `panelcad rules` lists them")


def _print_json(project: Any) -> None:
    from panelcad.checks.profile_file import differences, limit_names  # noqa: PLC0415
    from panelcad.model.view_zones import ViewZone, functions_in  # noqa: PLC0415
    from panelcad.outputs.plain import SHAPE  # noqa: PLC0415

    profile = project.profile
    print_json(
        {
            "shape": SHAPE,
            "name": profile.name,
            "limits": {name: getattr(profile, name) for name in limit_names()},
            "zones": {f.value: zone.value for zone in ViewZone for f in sorted(functions_in(zone, profile.zones))},
            "differing": [each.name for each in differences(profile)],
        }
    )
