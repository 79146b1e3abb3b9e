"""A label goes with its control, however that is moved: it stands as far from it as before."""

from collections.abc import Callable

import pytest

from panelcad.editing.align import Line, align, distribute, equal_gaps, set_gaps
from panelcad.editing.extents import Axis
from panelcad.editing.groups import group, lock
from panelcad.editing.label_row import Side, label_row, labels
from panelcad.editing.mirror import mirror
from panelcad.editing.move import move_by
from panelcad.editing.plates import add_engraving
from panelcad.editing.rotate import turn_as_one, turn_each
from panelcad.editing.row import Row, place_row
from panelcad.editing.taken_along import bring_to, moved_with
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from tests import builders

PITCH = 40.0


def labelled() -> tuple[Project, list[str], list[str]]:
    """Three labelled toggle switches, the middle one out of line; the ids of the switches, and of their labels."""
    project = builders.project(builders.sheet(height=600.0))
    cutout = packaged_catalogue().cutout("toggle")
    project = place_row(project, "new", "main", cutout, Row(Point(0.0, 0.0), 3, PITCH)).project
    ids = [item.id for item in project.option("new").items]
    project = move_by(project, "new", [ids[1]], 7.0, 9.0)
    made = label_row(project, "new", dict.fromkeys(ids, "A"), 3.0, Side.BELOW)
    return made.project, ids, list(made.ids)


def from_control(project: Project, ids: list[str], words: list[str]) -> list[tuple[float, float]]:
    """How far each label is from its control."""
    option = project.option("new")
    lines = {line.id: line for line in option.plate("main").engravings}
    pairs = zip((option.item(one) for one in ids), (lines[one] for one in words), strict=True)
    return [(round(line.x - item.x, 6), round(line.y - item.y, 6)) for item, line in pairs]


MOVES: dict[str, Callable[[Project, list[str]], Project]] = {
    "dragged": lambda p, ids: move_by(p, "new", moved_with(p, p.option("new"), ids), 15.24, -3.0),
    "typed": lambda p, ids: bring_to(p, "new", ids[1], 55.0, 21.0),
    "aligned": lambda p, ids: align(p, "new", ids, Line.LEVEL),
    "aligned at an edge": lambda p, ids: align(p, "new", ids, Line.BOTTOM),
    "spread": lambda p, ids: distribute(p, "new", ids, Axis.ACROSS),
    "with equal gaps": lambda p, ids: equal_gaps(p, "new", ids, Axis.ACROSS),
    "with a gap": lambda p, ids: set_gaps(p, "new", ids, Axis.ACROSS, 20.0),
    "mirrored": lambda p, ids: mirror(p, "new", ids, Axis.UP, 30.0),
    "turned as one": lambda p, ids: turn_as_one(p, "new", ids, 90.0),
    "turned": lambda p, ids: turn_each(p, "new", ids, 90.0),
}


@pytest.mark.parametrize("move", MOVES)
def test_a_label_stands_from_its_control_as_before(move: str) -> None:
    project, ids, words = labelled()
    after = MOVES[move](project, ids)
    assert after != project
    assert from_control(after, ids, words) == from_control(project, ids, words)
    known = labels(after, after.option("new"))
    if "turned" not in move:
        assert [known[one].words.id for one in ids] == words
    assert {line.rotation for line in after.option("new").plate("main").engravings} == {0.0}


def test_a_locked_label_stays() -> None:
    project, ids, words = labelled()
    locked = lock(project, "new", [words[1]])
    after = bring_to(locked, "new", ids[1], 147.0, 9.0)
    assert from_control(after, ids, words)[1][0] == -100.0


def test_a_label_that_is_moved_itself_leaves_its_control_where_it_is() -> None:
    project, _, words = labelled()
    after = bring_to(project, "new", words[1], 50.0, -30.0)
    assert [(item.x, item.y) for item in after.option("new").items] == [
        (item.x, item.y) for item in project.option("new").items
    ]
    assert moved_with(project, project.option("new"), [words[1]]) == {words[1]}


def test_a_label_that_is_chosen_too_goes_where_it_is_told() -> None:
    project, ids, words = labelled()
    after = align(project, "new", [ids[0], words[1]], Line.LEVEL)
    lines = {line.id: line for line in after.option("new").plate("main").engravings}
    assert lines[words[1]].y == 0.0
    assert lines[words[0]].y == project.option("new").plate("main").engravings[0].y


def test_the_labels_of_a_whole_group_go_along_and_other_lettering_stays() -> None:
    project, ids, words = labelled()
    far = Engraving(id="lettering-1", text="FAR", x=0.0, y=200.0, height=3.0)
    project = add_engraving(project, "new", "main", far).project
    project = group(project, "new", ids)[0]
    option = project.option("new")
    assert moved_with(project, option, [ids[0]]).isdisjoint({option.plate("main").engravings[-1].id})
    assert moved_with(project, option, [ids[0]]) >= {*ids, *words}
