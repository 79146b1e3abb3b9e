from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.field import Field
from panelcad.editing.snapping.standing import OwnLine, Standing
from panelcad.geometry.point import Point

numbers = st.integers(-40, 40).map(float)


@st.composite
def things(draw: st.DrawFn) -> Standing:
    x, y, half = draw(numbers), draw(numbers), draw(st.integers(0, 9))
    lines = tuple(
        OwnLine(axis, draw(numbers), "rail of {}") for axis in draw(st.lists(st.sampled_from(Axis), max_size=2))
    )
    return Standing("one", Point(x, y), (x - half, y - half, x + half, y + half), lines)


@given(st.lists(things(), max_size=12).map(tuple), st.sampled_from(Axis), numbers, st.integers(0, 10))
def test_what_is_near_is_all_that_is_within_reach(others, axis, at, reach) -> None:
    field = Field(others)
    centres = [one.centre[axis.value] for one in others]
    edges = [edge for one in others for edge in one.span(axis)]
    rails = [line.at for one in others for line in one.lines if line.axis is axis]
    for found, known in (
        (field.centres_near(axis, at, reach), centres),
        (field.edges_near(axis, at, reach), edges),
        (field.own_lines_near(axis, at, reach), rails),
    ):
        assert [mark.at for mark in found] == sorted(place for place in known if abs(place - at) <= reach)
