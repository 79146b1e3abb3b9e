import pytest

from panelcad.editing.duplicate import Grid, duplicate, duplicate_in_grid, not_repeated
from panelcad.editing.marks import add_dimension
from panelcad.errors import EditRefused
from panelcad.model.markup import Along, Hold, Hook
from tests.editing.scenes import one_instrument, row, where


def test_once_more_beside() -> None:
    made = duplicate(one_instrument(), "new", ["hole"], 95.25, 0.0)
    assert made.ids == ("gauge-2", "hole-2")
    assert where(made.project)["gauge-2"] == (105.25, 20.0)


def test_a_grid_of_breakers_has_exact_pitches() -> None:
    """1 in across and 3/4 in down, in whole nanometres: no place may drift by adding up."""
    made = duplicate_in_grid(row(0), "new", "a", Grid(columns=12, rows=3, across=25.4, up=-19.05))
    places = set(where(made.project).values())
    assert places == {(round(25.4 * c, 6), round(-19.05 * r, 6)) for c in range(12) for r in range(3)}
    assert len(made.ids) == 35


@pytest.mark.parametrize(
    "grid", [Grid(1), Grid(0, 3), Grid(3, 1, across=0.0), Grid(2, 2, across=10.0), Grid(21, 20, 1.0, 1.0)]
)
def test_a_grid_that_is_none_is_refused(grid: Grid) -> None:
    with pytest.raises(EditRefused):
        duplicate_in_grid(row(0), "new", "a", grid)


def test_a_dimension_within_is_repeated_in_every_row_and_one_to_the_edge_is_told() -> None:
    project, within = add_dimension(
        row(0, 60), "new", "main", Hook(part="a"), Hook(part="b", hold=Hold.LEFT), Along.ACROSS, 40.0
    )
    project, edge = add_dimension(
        project, "new", "main", Hook(part="main", hold=Hold.TOP), Hook(part="a"), Along.UP, 40.0
    )
    option = duplicate_in_grid(project, "new", ["a", "b"], Grid(2, 3, 150.0, -60.0)).project.option("new")
    copies = [one for one in option.dimensions if one.id not in {within, edge}]
    assert len(copies) == 5
    assert {copy.parts for copy in copies} == {(f"a-{n}", f"b-{n}") for n in range(2, 7)}
    assert not_repeated(project, "new", ["a", "b"]) == (edge,)
    assert not_repeated(project, "new", ["a", "b", edge]) == ()
    assert not_repeated(project, "new", ["a"]) == (within, edge)
