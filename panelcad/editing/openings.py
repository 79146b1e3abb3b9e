"""The sheet's own openings, such as that of the control column: each goes by the name of its plate and its number."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

from panelcad.editing.plates import remove_inner_opening, revise_inner_opening
from panelcad.errors import UnknownName
from panelcad.model.cutout import Opening
from panelcad.model.layout import inner_opening_name
from panelcad.model.project import Option, Project

_PARTS_OF_A_PLATE = "/"
"""No id holds it; what a plate's own features go by does."""


@dataclass(frozen=True)
class SheetOpening:
    """An opening, its plate and its number there, 0 for the first."""

    plate_id: str
    number: int
    opening: Opening


def is_opening(part_id: str) -> bool:
    """Whether this is what an opening of a sheet goes by, and no id."""
    return _PARTS_OF_A_PLATE in part_id


def openings(option: Option) -> dict[str, SheetOpening]:
    """Every opening of every sheet, by what it goes by: as the features of the layout do."""
    return {
        f"{plate.id}{_PARTS_OF_A_PLATE}{inner_opening_name(number)}": SheetOpening(plate.id, number, opening)
        for plate in option.plates
        for number, opening in enumerate(plate.inner_openings)
    }


def revise_opening(project: Project, option_id: str, part_id: str, **changes: Any) -> Project:
    """The opening with some fields changed. Raises `EditRefused` on a kept plate, `UnknownName`."""
    one = _opening(project.option(option_id), part_id)
    return revise_inner_opening(project, option_id, one.plate_id, one.number, **changes)


def move_openings(project: Project, option_id: str, shifts: Mapping[str, tuple[float, float]]) -> Project:
    """Each opening moved by its own dx, dy in mm. Raises `EditRefused` on a kept plate, `UnknownName`."""
    for part_id, (dx, dy) in shifts.items():
        here = _opening(project.option(option_id), part_id).opening
        project = revise_opening(project, option_id, part_id, x=here.x + dx, y=here.y + dy)
    return project


def remove_openings(project: Project, option_id: str, part_ids: Collection[str]) -> Project:
    """The sheets without these openings. Raises `EditRefused` on a kept plate, `UnknownName`."""
    gone = [_opening(project.option(option_id), part_id) for part_id in part_ids]
    for one in sorted(gone, key=lambda each: each.number, reverse=True):
        project = remove_inner_opening(project, option_id, one.plate_id, one.number)
    return project


def _opening(option: Option, part_id: str) -> SheetOpening:
    known = openings(option)
    if part_id not in known:
        raise UnknownName("opening of a sheet", part_id, tuple(known))
    return known[part_id]
