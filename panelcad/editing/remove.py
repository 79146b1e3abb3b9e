"""Take things away. Metal that is already cut stays; the item in it goes."""

from collections.abc import Collection
from typing import Any

from panelcad.editing.fixed import is_made, refuse_kept, refuse_locked
from panelcad.editing.lookup import sharers
from panelcad.editing.marks import marks_without
from panelcad.editing.openings import is_opening, remove_openings
from panelcad.editing.parts import AROUND, PLATE_PARTS, all_things, with_parts
from panelcad.editing.refusal import edit
from panelcad.editing.stack import is_stack, settle
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project


@edit
def remove(project: Project, option_id: str, ids: Collection[str]) -> Project:
    """The project without these things and openings of a sheet.

    A cut goes with its items and the last item of a cut takes the cut along; a cut that is already in the metal stays
    and its items go. Raises `EditRefused` where only such a cut was named, `UnknownName` for what is not there.
    """
    own = frozenset(one for one in ids if is_opening(one))
    project = remove_openings(project, option_id, own)
    option = project.option(option_id)
    gone = frozenset(ids) - own
    _refuse_unknown(project, option, gone)
    _refuse_made(option, gone)
    away = _with_what_goes_along(option, gone)
    refuse_locked(option, away)
    plates = tuple(_plate_without(option, plate, away) for plate in option.plates)
    left = option.revised(items=_without(option.items, away), plates=plates, **marks_without(option, away))
    project = _with_stacks_closed_up(project.with_option(left), option, away)
    around = with_parts(project.surroundings, AROUND, lambda kept: _without(kept, gone))
    return project if around is project.surroundings else project.revised(surroundings=around)


def _with_stacks_closed_up(project: Project, before: Option, away: frozenset[str]) -> Project:
    """A stack stays one when a unit is taken out."""
    touched = {item.cut for item in before.items if item.id in away and item.cut is not None} - away
    for cut_id in sorted(touched):
        if is_stack(project, before, cut_id) and is_stack(project, project.option(before.id), cut_id):
            project = settle(project, before.id, cut_id)
    return project


def _with_what_goes_along(option: Option, gone: frozenset[str]) -> frozenset[str]:
    shared = sharers(option)
    items = gone | {item.id for cut, fitted in shared.items() if cut in gone for item in fitted}
    emptied = {cut for cut, fitted in shared.items() if {item.id for item in fitted} <= items}
    made = {cut.id for plate in option.plates for cut in plate.cuts if is_made(option, plate, cut)}
    return (items | emptied) - made


def _refuse_unknown(project: Project, option: Option, gone: frozenset[str]) -> None:
    known = tuple(thing.id for thing in (*all_things(project, option), *option.marks()))
    for one in gone.difference(known):
        raise UnknownName("part", one, known)


def _refuse_made(option: Option, gone: frozenset[str]) -> None:
    """A made cut may be named beside the items it holds, but not alone."""
    shared = sharers(option)
    for plate in option.plates:
        for cut in plate.cuts:
            if cut.id in gone and is_made(option, plate, cut) and cut.id not in shared:
                raise EditRefused(
                    f"The cut '{cut.name}' is already in the metal of plate '{plate.name}'; cover it with a blank, "
                    f"or make the plate new."
                )


def _plate_without(option: Option, plate: Plate, gone: frozenset[str]) -> Plate:
    left = with_parts(plate, PLATE_PARTS, lambda kept: _without(kept, gone))
    if left is not plate:
        refuse_kept(option, plate)
    return left


def _without(kept: tuple[Any, ...], gone: frozenset[str]) -> tuple[Any, ...]:
    left = tuple(thing for thing in kept if thing.id not in gone)
    return kept if len(left) == len(kept) else left
