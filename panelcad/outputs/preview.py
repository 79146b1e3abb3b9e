"""Everything an owner is shown, written to a folder: pictures of every option, the proposal, the page."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Final

from panelcad.drawing.appearance import Look
from panelcad.drawing.appearance_light import DAY, LIGHTS, Hour, Lighting
from panelcad.drawing.appearance_panel import ground, panel_view
from panelcad.drawing.box import grown
from panelcad.drawing.display import Bounds, Group
from panelcad.drawing.extent import extent
from panelcad.errors import UnusableInput
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project
from panelcad.outputs.page.build import write_owner_page
from panelcad.outputs.png import checked_height, write_png
from panelcad.outputs.proposal import export_proposal
from panelcad.outputs.svg_painter import svg
from panelcad.store.atomic import files_together, write_atomically

USUAL_WIDTH: Final = 1920
MARGIN: Final = 12.0
"""Around the panel in a picture, in mm."""


class PictureKind(StrEnum):
    PNG = "png"
    SVG = "svg"


def _silent(_words: str) -> None:
    """Nobody wants to hear."""


@dataclass(frozen=True)
class PreviewOptions:
    """Width of the pictures in pixels, and the light they are shown in; `tell` hears what is being written."""

    width_px: int = USUAL_WIDTH
    lights: tuple[str, ...] = ("day", "night")
    kinds: tuple[PictureKind, ...] = tuple(PictureKind)
    tell: Callable[[str], None] = _silent


_DEFAULTS: Final = PreviewOptions()


def write_preview(project: Project, folder: Path | str, options: PreviewOptions = _DEFAULTS) -> tuple[Path, ...]:
    """Write PNG and SVG pictures of every option, `proposal.pdf` and `panel.html`; return what was written, in order.

    An older set stays until the new one is complete. Raises `UnusableInput` for a folder that cannot be made or a size
    that cannot be painted.
    """
    checked_height(picture_of(project, project.as_found)[1], options.width_px)
    place = _made(Path(folder))
    with files_together(place) as beside:
        written = tuple(_all(project, beside, options))
    return tuple(place / file.name for file in written)


def _all(project: Project, folder: Path, options: PreviewOptions) -> Iterator[Path]:
    for option in project.all_options:
        options.tell(f"Drawing {option.name}")
        yield from _pictures(project, option, folder, options)
    options.tell("Writing the proposal")
    export_proposal(project, folder / "proposal.pdf")
    yield folder / "proposal.pdf"
    options.tell("Writing the page")
    write_owner_page(project, folder / "panel.html")
    yield folder / "panel.html"


def picture_of(project: Project, option: Option, lighting: Lighting = DAY) -> tuple[tuple[Group, ...], Bounds]:
    """An option's picture in mm, and the box that shows it with a margin: by day on no ground, else on a dark one."""
    nodes = panel_view(layout(project, option), Look(lighting=lighting))
    bounds = grown(extent(nodes), MARGIN)
    return (nodes if lighting.hour is Hour.DAY else (ground(bounds, lighting), *nodes)), bounds


def write_svg(
    project: Project, option: Option, path: Path, lighting: Lighting = DAY, width_px: int | None = None
) -> None:
    """Write an option's picture as SVG: at true size where no width is given."""
    nodes, bounds = picture_of(project, option, lighting)
    if width_px is not None:
        checked_height(bounds, width_px)
    write_atomically(path, svg(nodes, bounds, f"{project.title}: {option.name}", width_px).encode())


def _pictures(project: Project, option: Option, place: Path, options: PreviewOptions) -> Iterator[Path]:
    for light in options.lights:
        stem = f"{option.id}-{light}"
        if PictureKind.PNG in options.kinds:
            nodes, bounds = picture_of(project, option, LIGHTS[light])
            write_png(nodes, bounds, options.width_px, place / f"{stem}.png")
            yield place / f"{stem}.png"
        if PictureKind.SVG in options.kinds:
            write_svg(project, option, place / f"{stem}.svg", LIGHTS[light], options.width_px)
            yield place / f"{stem}.svg"


def _made(folder: Path) -> Path:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnusableInput(
            str(folder), "", f"it cannot be made ({error.strerror})", "a folder one may write in"
        ) from error
    return folder
