from dataclasses import replace

import pytest

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.field import AxisLine, Field
from panelcad.editing.snapping.snap import Rank, snap, to_reading
from panelcad.editing.snapping.standing import OwnLine, Standing
from panelcad.geometry.point import Point


def box(name: str, x: float, y: float, width: float = 80.0, height: float = 80.0) -> Standing:
    return Standing(name, Point(x, y), (x - width / 2, y - height / 2, x + width / 2, y + height / 2))


MOVING = box("moving", 0, 0)


def test_a_centre_within_reach_catches_and_says_so() -> None:
    caught = snap(MOVING, 101.0, 201.5, Field((box("clock", 100, 500),)), reach=2.0)
    assert caught.dx == 100.0
    assert caught.dy == 201.5
    assert caught.words == "centre of clock"


@pytest.mark.parametrize(("move", "snapped"), [(102.0, 100.0), (102.001, 102.001)])
def test_the_reach_is_kept(move, snapped) -> None:
    narrow = box("clock", 100, 500, width=10)
    assert snap(MOVING, move, 0, Field((narrow,)), reach=2.0).dx == snapped


def test_a_panel_axis_means_more_than_an_edge() -> None:
    field = Field((box("clock", 181, 500),), (AxisLine(Axis.ACROSS, 100.0, "middle of the panel"),))
    caught = snap(MOVING, 100.4, 0, field, reach=2.0)
    assert caught.x is not None
    assert caught.x.rank is Rank.AXIS
    assert caught.dx == 100.0


def test_an_edge_catches_an_edge() -> None:
    caught = snap(MOVING, 60.0, 101.0, Field((box("clock", 0, 170, 60, 60),)), reach=1.5)
    # The clock's lower edge stands at 140, the moving one's upper edge 40 above its centre.
    assert caught.dy == 100.0
    assert caught.words == "lower edge of clock"


@pytest.mark.parametrize(("away", "snapped"), [(100.0, 100.0), (420.0, 101.0)])
def test_an_edge_far_off_catches_only_what_comes_close_to_its_line(away, snapped) -> None:
    clock = box("clock", 0, 170, 60, 60)
    assert snap(MOVING, away, 101.0, Field((clock,)), reach=1.5).dy == snapped
    # At 420 mm across and 69 mm up, 150 of 489 mm are left of the reach: 0.46 mm.
    assert snap(MOVING, away, 100.4, Field((clock,)), reach=1.5).dy == 100.0


def test_equal_gaps_between_two_neighbours() -> None:
    field = Field((box("left", 0, 0, 60), box("right", 300, 30, 90)))
    caught = snap(box("moving", 0, 0, 80), 142.0, 17.0, field, reach=2.0)
    # Free room from 30 to 255: 225 mm less 80 is 72.5 either side, so the centre stands at 142.5.
    assert caught.dx == pytest.approx(142.5)
    assert caught.x is not None
    assert caught.x.rank is Rank.GAP


def test_the_gap_of_the_row_goes_on() -> None:
    field = Field((box("one", 0, 0), box("two", 100, 0)))
    caught = snap(box("moving", 0, 0, 50), 184.0, 3.0, field, reach=2.0)
    # The gap is 20 mm; the next left edge stands at 140 + 20.
    assert caught.dx == pytest.approx(185.0)


def test_below_and_above_are_said_for_a_column() -> None:
    field = Field((box("one", 0, 0), box("two", 0, 100)))
    caught = snap(box("moving", 0, 0, 50, 50), 3.0, 184.0, field, reach=2.0)
    assert caught.dy == pytest.approx(185.0)
    assert caught.y is not None
    assert caught.y.label == "same gap as below two"


def test_a_rail_means_more_than_an_edge_at_the_same_place() -> None:
    rack = replace(box("radios", 0, 0), lines=(OwnLine(Axis.ACROSS, 40.0, "right rack rail of {}"),))
    caught = snap(box("moving", 0, 0, 50, 50), 64.6, 200.0, Field((rack,)), reach=1.0)
    assert caught.dx == 65.0
    assert caught.words == "right rack rail of radios"


def test_rail_comes_to_rail_where_bezels_differ() -> None:
    there = replace(box("upper", 0, 300, 90), lines=(OwnLine(Axis.ACROSS, -38.0, "left rack rail of {}"),))
    moving = replace(box("lower", 0, 0, 80), lines=(OwnLine(Axis.ACROSS, -30.0, "left rack rail of {}"),))
    caught = snap(moving, -7.7, 0.0, Field((there,)), reach=0.5)
    assert caught.dx == pytest.approx(-8.0)
    assert caught.x is not None
    assert caught.x.rank is Rank.OWN_LINE


def test_the_grid_catches_what_nothing_else_does() -> None:
    caught = snap(MOVING, 12.4, -7.6, Field(grid=5.0), reach=1.0)
    assert (caught.dx, caught.dy) == (10.0, -10.0)
    assert caught.words == "grid"


def test_without_anything_near_the_move_stays() -> None:
    assert snap(MOVING, 12.4, -7.6, Field(), reach=1.0) == snap(MOVING, 12.4, -7.6, Field((box("far", 900, 900),)), 1.0)


def test_what_nothing_caught_ends_at_a_figure_people_read() -> None:
    moving = box("moving", 0.0127, 7.00001)
    free = snap(moving, 12.34567, 0.0, Field(), reach=1.0)
    read = to_reading(free, moving, 0.0254)
    assert (moving.centre.x + read.dx) / 0.0254 == pytest.approx(round((moving.centre.x + read.dx) / 0.0254), abs=1e-9)
    assert abs(read.dx - free.dx) <= 0.0127
    assert read.dy == 0.0
    caught = snap(moving, 100.2, 0.0, Field((box("clock", 100.001, 500),)), reach=1.0)
    assert to_reading(caught, moving, 0.0254).dx == caught.dx
