"""Move things on their plate; an item and its cut go as one."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from panelcad.editing.lookup import together
from panelcad.editing.openings import is_opening, move_openings
from panelcad.editing.places import places, places_among, stand
from panelcad.editing.refusal import edit
from panelcad.errors import UnknownName
from panelcad.geometry.placement import Placement
from panelcad.model.project import Option, Project


def move_by(project: Project, option_id: str, ids: Collection[str], dx: float, dy: float) -> Project:
    """Everything named, and what belongs to it, moved by mm. Raises `EditRefused`, `UnknownName`."""
    return move_each(project, option_id, dict.fromkeys(ids, (dx, dy)))


def move_to(project: Project, option_id: str, part_id: str, x: float, y: float) -> Project:
    """One thing, and what belongs to it, moved so that its own origin stands at x, y of its plate in mm."""
    here = standing(project, project.option(option_id), (part_id,))[part_id]
    return move_by(project, option_id, (part_id,), x - here.x, y - here.y)


@edit
def move_each(project: Project, option_id: str, shifts: Mapping[str, tuple[float, float]]) -> Project:
    """Each thing, and what belongs to it, and each opening of a sheet moved by its own dx, dy in mm."""
    own = {one: shift for one, shift in shifts.items() if is_opening(one)}
    project = move_openings(project, option_id, own)
    option = project.option(option_id)
    all_shifts: dict[str, tuple[float, float]] = {}
    for shift in dict.fromkeys(shifts.values()):
        named = [one for one, own_shift in shifts.items() if own_shift == shift and one not in own]
        all_shifts |= dict.fromkeys(together(option, named), shift)
    here = standing(project, option, all_shifts)
    where = {
        one: replace(here[one], x=here[one].x + dx, y=here[one].y + dy)
        for one, (dx, dy) in all_shifts.items()
        if (dx, dy) != (0.0, 0.0)
    }
    return stand(project, option.id, where)


def standing(project: Project, option: Option, ids: Collection[str]) -> dict[str, Placement]:
    """Where these things stand. Raises `UnknownName` for what has no place."""
    known = places_among(project, option, frozenset(ids))
    for one in ids:
        if one not in known:
            raise UnknownName("placed part", one, tuple(places(project, option)))
    return {one: known[one] for one in ids}
