"""Eight breakers in a row are spread about their middle; what stands elsewhere, or is another thing, is in no row."""

import itertools

import pytest

from panelcad.editing.label_row import Side, label_row
from panelcad.editing.place import place
from panelcad.editing.row import Row, place_row
from panelcad.editing.spread_row import spread_row
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.like_row import row_with
from panelcad.model.project import Project
from tests import builders

PITCH, WIDER = 19.05, 21.082
"""3/4 in and 0.83 in."""


def breakers(direction: float = 0.0) -> Project:
    cutout = packaged_catalogue().cutout("breaker")
    project = builders.project(builders.sheet(height=600.0))
    return place_row(project, "new", "main", cutout, Row(Point(-66.675, 0.0), 8, PITCH, direction)).project


@pytest.mark.parametrize("direction", [0.0, 90.0])
def test_the_row_is_spread_about_its_middle(direction: float) -> None:
    project = breakers(direction)
    items = project.option("new").items
    row = row_with(project.option("new"), [items[3].cut, items[4].id])
    assert row is not None
    assert (row.ids, row.pitch) == (tuple(item.id for item in items), pytest.approx(PITCH))
    after = spread_row(project, "new", row, WIDER).option("new")
    along = [item.x if direction == 0.0 else item.y for item in after.items]
    assert [b - a for a, b in itertools.pairwise(along)] == pytest.approx([WIDER] * 7)
    was = [item.x if direction == 0.0 else item.y for item in items]
    assert sum(along) == pytest.approx(sum(was))
    cuts = {cut.id: (cut.x, cut.y) for cut in after.plate("main").cuts}
    assert all(cuts[item.cut] == (item.x, item.y) for item in after.items)


def test_two_that_are_no_neighbours_or_of_two_kinds_are_in_no_row() -> None:
    project = breakers()
    items = project.option("new").items
    assert row_with(project.option("new"), [items[0].id, items[2].id]) is None
    assert row_with(project.option("new"), [items[0].id]) is None
    mixed = place(project, "new", "main", packaged_catalogue().cutout("toggle"), 90.0, 0.0)
    assert row_with(mixed.project.option("new"), [items[7].id, mixed.item_id]) is None


def test_labels_go_along_unless_they_are_locked() -> None:
    project = breakers()
    items = project.option("new").items
    project = label_row(project, "new", {item.id: "A" for item in items}, 3.0, Side.BELOW).project
    option = project.option("new")
    first, second = (line.id for line in option.plate("main").engravings[:2])
    locked = project.with_option(option.revised(locked=(second,)))
    row = row_with(option, [items[3].id, items[4].id])
    after = spread_row(locked, "new", row, WIDER).option("new")
    at = {line.id: line.x for line in after.plate("main").engravings}
    assert at[first] == after.items[0].x < items[0].x
    assert at[second] == items[1].x
    assert [line.x for line in after.plate("main").engravings][2:] == [item.x for item in after.items][2:]
