"""Groups, that are picked as one, and locks, that hold things where they are."""

from collections.abc import Collection, Iterable

from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.lookup import together, without_dimensions
from panelcad.editing.parts import all_things
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.markup import Group
from panelcad.model.project import Option, Project


@edit
def group(project: Project, option_id: str, ids: Collection[str], name: str = "Group") -> tuple[Project, str]:
    """The project with these things grouped, and the group's id. Each thing is in one group at most.

    Raises `EditRefused` for fewer than two things, `UnknownName`.
    """
    option = project.option(option_id)
    ids = without_dimensions(option, ids)
    _refuse_unknown(project, option, ids)
    members = in_order(project, option, together(option, ids))
    if len(members) < 2:
        raise EditRefused("A group needs at least two things.")
    label = fresh_name(name, {other.name for other in option.groups})
    made = Group(id=fresh_id(label, ids_in(project, option)), name=label, members=members)
    return project.with_option(option.revised(groups=(*_groups_without(option, members), made))), made.id


def ungroup(project: Project, option_id: str, ids: Collection[str]) -> Project:
    """The project without the groups that are named, or that hold one of these things."""
    option = project.option(option_id)
    kept = tuple(g for g in option.groups if g.id not in ids and not set(g.members) & set(ids))
    return project.with_option(option.revised(groups=kept))


def with_groups(option: Option, ids: Collection[str]) -> frozenset[str]:
    """These things and all that is grouped with one of them."""
    wanted = set(ids)
    for one in option.groups:
        if not wanted.isdisjoint((one.id, *one.members)):
            wanted |= set(one.members)
    return frozenset(wanted - {one.id for one in option.groups})


@edit
def lock(project: Project, option_id: str, ids: Collection[str]) -> Project:
    """The project with these things, and what moves with them, held where they are. Raises `UnknownName`."""
    option = project.option(option_id)
    _refuse_unknown(project, option, without_dimensions(option, ids))
    held = frozenset(option.locked) | together(option, ids)
    return project.with_option(option.revised(locked=in_order(project, option, held)))


def unlock(project: Project, option_id: str, ids: Collection[str]) -> Project:
    """The project with these things, and what moves with them, free again."""
    option = project.option(option_id)
    free = together(option, ids)
    return project.with_option(option.revised(locked=tuple(one for one in option.locked if one not in free)))


def in_order(project: Project, option: Option, ids: Iterable[str]) -> tuple[str, ...]:
    """The ids in the order in which their things stand in the project, so that files change little."""
    wanted = frozenset(ids)
    return tuple(thing.id for thing in all_things(project, option) if thing.id in wanted)


def _groups_without(option: Option, members: tuple[str, ...]) -> tuple[Group, ...]:
    left = ((one, tuple(m for m in one.members if m not in members)) for one in option.groups)
    return tuple(one.revised(members=kept) for one, kept in left if len(kept) > 1)


def _refuse_unknown(project: Project, option: Option, ids: Collection[str]) -> None:
    known = tuple(thing.id for thing in all_things(project, option))
    for one in ids:
        if one not in known:
            raise UnknownName("part", one, known)
