"""Centre a thing between two others without naming them in figures."""

from collections.abc import Collection

from panelcad.editing.align import centre_between
from panelcad.editing.extents import Axis, Body, bodies
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.rows import Rows
from panelcad.editing.snapping.standing import Standing, around
from panelcad.errors import EditRefused
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project


def centre_in_row(project: Project, option_id: str, ids: Collection[str], axis: Axis) -> Project:
    """What is named, as one, moved midway between its neighbours in the row or column that it stands in.

    Of three things or more the last named is centred between the first two. Raises `EditRefused`.
    """
    option = project.option(option_id)
    chosen = bodies(project, option, ids)
    if len(chosen) > 2:
        first, second, last = chosen[0], chosen[1], chosen[-1]
        return centre_between(project, option_id, last.ids, (min(first.ids), min(second.ids)), axis)
    return centre_between(project, option_id, ids, _neighbours(project, option, chosen, axis), axis)


def _neighbours(project: Project, option: Option, chosen: tuple[Body, ...], axis: Axis) -> tuple[str, str]:
    """The things nearest on either side in the same row or column; screws that hold the plate are no neighbours."""
    mine = {one for body in chosen for one in body.ids}
    known, screws = _things_beside(project, option, mine)
    others = {one: standing for one, standing in known.items() if one not in mine | screws}
    beside = Rows(tuple(others.values()), axis).beside(around((known[one] for one in known if one in mine), ""))
    if not beside.before or not beside.after:
        raise EditRefused("A neighbour on either side is needed; or choose two things, then the one to stand between.")
    return _name_of(others, beside.before[0]), _name_of(others, beside.after[0])


def _things_beside(project: Project, option: Option, mine: set[str]) -> tuple[dict[str, Standing], set[str]]:
    """What stands on the plate of these things, and the screws among it."""
    laid = layout(project, option)
    for plate in option.plates:
        known = standings(laid, plate.id)
        if not mine.isdisjoint(known):
            return known, {screw.id for screw in plate.attach_screws}
    raise EditRefused("Only what is cut or fitted stands in a row with neighbours.")


def _name_of(things: dict[str, Standing], wanted: Standing) -> str:
    return next(one for one, standing in things.items() if standing is wanted)
