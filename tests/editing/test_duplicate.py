import pytest

from panelcad.editing.duplicate import Grid, duplicate, duplicate_in_grid
from panelcad.errors import EditRefused
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
