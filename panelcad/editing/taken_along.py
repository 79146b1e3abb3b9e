"""What comes along when a person takes hold of things: their groups, the whole stack of a rack unit, and labels."""

from collections.abc import Collection

from panelcad.editing.groups import with_groups
from panelcad.editing.labels_along import labels_of, move_labelled
from panelcad.editing.lookup import without_dimensions
from panelcad.editing.move import standing
from panelcad.editing.stack import is_stack
from panelcad.model.project import Option, Project


def taken_along(project: Project, option: Option, ids: Collection[str]) -> frozenset[str]:
    """These things and all that moves when they are moved; a unit does not leave its rails by being moved."""
    grouped = with_groups(option, without_dimensions(option, ids))
    racks = _racks_of(project, option, grouped)
    return with_groups(option, grouped | racks) if racks else grouped


def moved_with(project: Project, option: Option, ids: Collection[str]) -> frozenset[str]:
    """These things, what is taken along with them, and the labels of all controls among them that are not locked."""
    whole = taken_along(project, option, ids)
    return whole.union(labels_of(project, option, whole).values())


def bring_to(project: Project, option_id: str, part_id: str, x: float, y: float) -> Project:
    """One thing, its label and its stack, moved so that its own origin stands at x, y of its plate in mm."""
    option = project.option(option_id)
    here = standing(project, option, (part_id,))[part_id]
    whole = {part_id} | _racks_of(project, option, frozenset({part_id}))
    return move_labelled(project, option_id, whole, x - here.x, y - here.y)


def _racks_of(project: Project, option: Option, ids: frozenset[str]) -> frozenset[str]:
    cuts = {item.cut for item in option.items if item.id in ids and item.cut is not None and item.cut not in ids}
    return frozenset(cut for cut in cuts if is_stack(project, option, cut))
