import pytest

from panelcad.editing.groups import group, lock, ungroup, unlock, with_groups
from panelcad.editing.move import move_by
from panelcad.editing.remove import remove
from panelcad.editing.rename import rename
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.project import Project
from tests import builders
from tests.editing.scenes import one_instrument


def three() -> Project:
    items = tuple(builders.item(name, 100.0 * i, 0.0) for i, name in enumerate("abc"))
    return builders.project(items=items)


def members(project: Project) -> dict[str, tuple[str, ...]]:
    return {one.id: one.members for one in project.option("new").groups}


def test_a_group_is_picked_by_any_member_and_by_its_own_id() -> None:
    grouped, made = group(three(), "new", ["c", "a"])
    assert members(grouped) == {"group": ("a", "c")}
    option = grouped.option("new")
    assert with_groups(option, ["a"]) == with_groups(option, [made]) == {"a", "c"}
    assert with_groups(option, ["b"]) == {"b"}


def test_a_thing_is_in_one_group_only_and_a_group_of_one_is_none() -> None:
    first, _ = group(three(), "new", ["a", "b"])
    second, _ = group(first, "new", ["b", "c"])
    assert members(second) == {"group-2": ("b", "c")}
    assert members(ungroup(second, "new", ["c"])) == {}
    with pytest.raises(EditRefused, match="at least two"):
        group(three(), "new", ["a"])
    with pytest.raises(UnknownName):
        group(three(), "new", ["a", "z"])


def test_what_is_removed_leaves_its_group() -> None:
    grouped, _ = group(three(), "new", ["a", "b", "c"])
    assert members(remove(grouped, "new", ["b"])) == {"group": ("a", "c")}


def test_what_is_locked_neither_moves_nor_goes_nor_does_its_cut() -> None:
    named = rename(one_instrument(), "new", "gauge", "Altimeter")
    locked = lock(named, "new", ["gauge"])
    assert locked.option("new").locked == ("gauge", "hole")
    with pytest.raises(EditRefused, match="'Altimeter' is locked; unlock it first"):
        move_by(locked, "new", ["hole"], 1.0, 0.0)
    with pytest.raises(EditRefused, match="is locked"):
        remove(locked, "new", ["gauge"])
    assert unlock(locked, "new", ["hole"]) == named
