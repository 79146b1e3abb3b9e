import pytest

from panelcad.editing.duplicate import Grid, duplicate, duplicate_in_grid, least_pitches, not_repeated
from panelcad.editing.label_row import Side, label_row
from panelcad.editing.marks import add_dimension
from panelcad.editing.row import Row, place_row
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.engraved import engraving_box
from panelcad.model.layout import layout
from panelcad.model.markup import Along, Hold, Hook
from panelcad.model.shape import Circle
from tests import builders
from tests.checks.made import body, fitted, instrument, panel
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
    assert not_repeated(project, "new", ["a", "b", edge]) == (edge,)
    assert not_repeated(project, "new", ["a"]) == (within, edge)


def test_the_least_pitch_keeps_the_web_in_front_and_the_bodies_behind_apart() -> None:
    """A bezel of 82.55 mm and a case of 70 mm, or of 90: the web is 6.35 mm, bodies stand 3.175 mm apart."""
    for case, pitch in ((70.0, 82.55 + 6.35), (90.0, 90.0 + 3.175)):
        cutout = instrument(bodies=(body(shape=Circle(diameter=case)),))
        project = panel(fitted("a", 0, 0), cutouts=(cutout,))
        (plate,) = layout(project, project.option("new")).plates
        assert least_pitches(plate, ["a"], project.profile) == pytest.approx((pitch, pitch))


def test_a_label_below_makes_the_pitch_up_larger() -> None:
    cutout = packaged_catalogue().cutout("breaker")
    project = place_row(builders.project(builders.sheet()), "new", "main", cutout, Row(Point(0.0, 0.0), 1, 0.0)).project
    (item,) = project.option("new").items
    made = label_row(project, "new", {item.id: "NAV"}, 12.0, Side.BELOW)
    (plate,) = layout(made.project, made.project.option("new")).plates
    (line,) = plate.plate.engravings
    top, low = plate.items[0].face.bounds[3], engraving_box(line).bounds[1]
    assert least_pitches(plate, [item.id, line.id], project.profile)[1] == pytest.approx(top - low + 6.35)
