"""The rows are held against the same question asked of the whole panel, one thing after the other."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.rows import Rows
from panelcad.editing.snapping.standing import Standing
from panelcad.geometry.point import Point

places = st.integers(-30, 30).map(lambda n: n * 12.5)
sizes = st.sampled_from((0.0, 1.0, 12.5, 25.0, 83.0, 600.0))


@st.composite
def things(draw: st.DrawFn, name: str) -> Standing:
    x, y, width, height = draw(places), draw(places), draw(sizes), draw(sizes)
    return Standing(name, Point(x, y), (x - width / 2, y - height / 2, x + width / 2, y + height / 2))


@st.composite
def panels(draw: st.DrawFn) -> tuple[Standing, ...]:
    return tuple(draw(things(f"thing {i}")) for i in range(draw(st.integers(0, 14))))


def asked_of_all(panel: tuple[Standing, ...], moving: Standing, along: Axis) -> tuple[list[str], list[str]]:
    across = Axis.UP if along is Axis.ACROSS else Axis.ACROSS
    low, high = moving.span(across)
    row = [thing for thing in panel if thing.span(across)[0] < high and low < thing.span(across)[1]]
    row.sort(key=lambda thing: thing.middle(along))
    before = [thing.name for thing in row if thing.middle(along) <= moving.middle(along)]
    return before[::-1][:2], [thing.name for thing in row if thing.middle(along) > moving.middle(along)][:2]


@given(panels(), things("moving"), st.sampled_from(Axis))
def test_neighbours_are_those_of_the_whole_panel(panel, moving, along) -> None:
    beside = Rows(panel, along).beside(moving)
    found = [thing.name for thing in beside.before], [thing.name for thing in beside.after]
    assert found == asked_of_all(panel, moving, along)


class Counted(Standing):
    looks = 0

    def span(self, axis: Axis) -> tuple[float, float]:
        Counted.looks += 1
        return super().span(axis)


def grid_of(columns: int, rows: int) -> tuple[Standing, ...]:
    spots = [(100.0 * column, 100.0 * row) for column in range(columns) for row in range(rows)]
    return tuple(Counted("one", Point(x, y), (x - 40, y - 40, x + 40, y + 40)) for x, y in spots)


@pytest.mark.parametrize("along", Axis)
def test_a_look_costs_no_more_on_a_large_panel(along) -> None:
    costs = []
    for size in (4, 40):
        rows = Rows(grid_of(size, size), along)
        Counted.looks = 0
        rows.beside(Standing("moving", Point(150.0, 150.0), (110.0, 110.0, 190.0, 190.0)))
        costs.append(Counted.looks)
    assert 0 < costs[1] <= costs[0] + 4
