"""What comes along when a person takes hold of things: their groups, and the whole stack of each rack unit."""

from collections.abc import Collection

from panelcad.editing.groups import with_groups
from panelcad.editing.lookup import without_dimensions
from panelcad.editing.stack import is_stack
from panelcad.model.project import Option, Project


def taken_along(project: Project, option: Option, ids: Collection[str]) -> frozenset[str]:
    """These things and all that moves when they are moved; a unit does not leave its rails by being moved."""
    grouped = with_groups(option, without_dimensions(option, ids))
    racks = _racks_of(project, option, grouped)
    return with_groups(option, grouped | racks) if racks else grouped


def _racks_of(project: Project, option: Option, ids: frozenset[str]) -> frozenset[str]:
    cuts = {item.cut for item in option.items if item.id in ids and item.cut is not None and item.cut not in ids}
    return frozenset(cut for cut in cuts if is_stack(project, option, cut))
