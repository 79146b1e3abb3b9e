"""What the guide lines say while something moves."""

import pytest

from panelcad.desktop.guides import guides
from panelcad.editing.extents import Axis
from panelcad.editing.snapping.field import AxisLine, Field
from panelcad.editing.snapping.snap import snap
from panelcad.editing.snapping.standing import Standing
from panelcad.geometry.point import Point
from panelcad.units import LengthUnit

PANEL = (-300.0, -150.0, 300.0, 150.0)


def square(name: str, x: float, y: float, width: float = 80.0) -> Standing:
    half = width / 2
    return Standing(name, Point(x, y), (x - half, y - half, x + half, y + half))


def shown(moving: Standing, dx: float, dy: float, field: Field):
    settled = snap(moving, dx, dy, field, reach=2.0)
    return guides(settled, moving.moved(settled.dx, settled.dy), PANEL, LengthUnit.MM)


def test_a_centre_line_gives_the_distance_of_the_centres() -> None:
    (line,) = shown(square("moving", 0, 0), 99.0, 61.0, Field((square("clock", 100, -40, 30),)))
    assert line.label == "centre of clock · 101.00 mm"
    assert (line.start.x, line.end.x) == (100.0, 100.0)


def test_a_line_of_the_panel_gives_where_the_thing_stands_on_it() -> None:
    (line,) = shown(
        square("moving", 0, 0), 51.0, 12.5, Field((), (AxisLine(Axis.ACROSS, 50.0, "pilot's centre line"),))
    )
    assert line.label == "pilot's centre line · y 12.50 mm"
    assert (line.start, line.end) == (Point(50.0, -150.0), Point(50.0, 150.0))


def test_both_equal_gaps_are_measured() -> None:
    field = Field((square("left", -150, 3), square("right", 150, -3)))
    lines = shown(square("moving", 0, 0, 60), 0.5, 20.0, field)
    # From -110 to 110 there are 220 mm; 60 of them taken, 80 are left on either side.
    assert sorted(line.label for line in lines) == ["80.00 mm", "equal gaps · 80.00 mm"]
    assert {(line.start.x, line.end.x) for line in lines} == {(-110.0, -30.0), (30.0, 110.0)}


def test_a_repeated_gap_is_shown_beside_the_one_that_it_repeats() -> None:
    field = Field((square("one", -200, 3), square("two", -100, -3)))
    lines = shown(square("moving", 0, 0, 60), -10.5, 20.0, field)
    assert sorted(line.label for line in lines) == ["20.00 mm", "same gap as left of two · 20.00 mm"]
    assert {(line.start.x, line.end.x) for line in lines} == {(-160.0, -140.0), (-60.0, -40.0)}


def test_the_grid_has_no_line() -> None:
    assert shown(square("moving", 0, 0), 12.0, 13.0, Field(grid=5.0)) == ()


@pytest.mark.parametrize("far", [50.0, -50.0])
def test_what_is_far_has_no_line(far) -> None:
    assert shown(square("moving", 0, 0), far, far, Field((square("clock", 280, 140, 10),))) == ()
