"""A sheet taken in from somebody's drawing: its outline, and the openings inside it as cuts of their own."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.editing.fixed import new_cut_state, refuse_kept
from panelcad.editing.found_outline import is_just_begun, with_outline
from panelcad.editing.ids import fresh_id, ids_in
from panelcad.editing.options import reworked
from panelcad.editing.outline import refuse_crossing
from panelcad.editing.place import with_plate
from panelcad.editing.refusal import edit
from panelcad.model.cutout import Opening
from panelcad.model.plate import Cut
from panelcad.model.project import AS_FOUND, Option, Project
from panelcad.model.shape import Shape
from panelcad.model.source import Source, Standing


@dataclass(frozen=True)
class TakenOpening:
    """A contour about its own middle, and where that is on the plate, in mm."""

    shape: Shape
    x: float
    y: float


@dataclass(frozen=True)
class TakenSheet:
    """An outline in the drawing's own axes, openings inside it, and what the drawing is called."""

    outline: Shape
    openings: tuple[TakenOpening, ...] = ()
    read_from: str = "a drawing"


@edit
def take_in_sheet(project: Project, option_id: str, plate_id: str, sheet: TakenSheet) -> Project:
    """The plate with this outline, and a cut more for each opening: existing on the panel as found, else new.

    The panel as found takes the outline too, where it is still the sheet that was begun with. Raises `EditRefused` for
    a kept plate or an outline that crosses itself, `UnknownName`.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    refuse_crossing(sheet.outline)
    cut = with_plate(option, plate.revised(cuts=(*plate.cuts, *_cuts(project, option, sheet))))
    outlined = with_outline(project, option, plate_id, sheet.outline)
    return outlined.with_option(with_plate(cut, cut.plate(plate_id).revised(outline=sheet.outline)))


@edit
def take_in_found(project: Project, plate_id: str, sheet: TakenSheet) -> Project:
    """The panel in the aircraft with this outline, each opening cut already.

    An option of which nothing but the outline was decided starts from it, as every later option does. Raises as
    `take_in_sheet` does.
    """
    begun = [option for option in project.options if is_just_begun(project, option, plate_id)]
    project = take_in_sheet(project, AS_FOUND, plate_id, sheet)
    for option in begun:
        project = project.with_option(with_plate(option, reworked(project.as_found.plate(plate_id))))
    return project


def _cuts(project: Project, option: Option, sheet: TakenSheet) -> Iterator[Cut]:
    taken = set(ids_in(project, option))
    source = Source(standing=Standing.USER, text=f"read from {sheet.read_from}")
    for number, each in enumerate(sheet.openings, 1):
        cut_id = fresh_id(f"drawn-{number}", taken)
        taken.add(cut_id)
        opening = Opening(shape=each.shape, source=source)
        name, state = f"Drawn opening {number}", new_cut_state(option)
        yield Cut(id=cut_id, name=name, x=each.x, y=each.y, state=state, openings=(opening,))
