import math

import pytest

from panelcad.editing.outline import (
    add_corner,
    bow_by,
    bow_by_radius,
    bow_through,
    chamfer_corner,
    edges,
    move_corner,
    outline_of,
    remove_corner,
    set_outline,
)
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc
from panelcad.model.shape import Circle, Outline, Rectangle
from tests import builders

SHEET = outline_of(Rectangle(width=400.0, height=200.0))
"""Corners 0 to 3 from the lower left, counter-clockwise."""


def area(outline: Outline) -> float:
    return outline.contour().area


def test_any_shape_becomes_an_outline_of_the_same_area() -> None:
    for shape in (Circle(diameter=80.0), Rectangle(width=30.0, height=20.0, corner_radius=4.0), SHEET):
        assert area(outline_of(shape)) == pytest.approx(shape.contour().area, rel=1e-9)


def test_corners_are_moved_added_and_removed() -> None:
    assert area(move_corner(SHEET, 2, 300.0, 100.0)) == 80_000.0 + 100.0 * 200.0 / 2
    added = add_corner(SHEET, 0, Point(30.0, -120.0))
    assert [(c.x, c.y) for c in added.corners][:3] == [(-200.0, -100.0), (30.0, -100.0), (200.0, -100.0)]
    assert remove_corner(added, 1) == SHEET
    assert area(remove_corner(SHEET, 0)) == 40_000.0


def test_a_corner_added_on_an_arc_leaves_its_course() -> None:
    bowed = bow_by(SHEET, 2, 60.0)
    split = add_corner(bowed, 2, Point(40.0, 500.0))
    assert area(split) == pytest.approx(area(bowed), abs=1e-3)
    assert len(split.corners) == 5


def test_an_edge_bowed_by_a_rise_or_through_a_point_is_the_same_arc() -> None:
    bowed = bow_by(SHEET, 2, 60.0)
    top = edges(bowed)[2]
    assert isinstance(top, Arc)
    assert top.bounds[3] == pytest.approx(160.0, abs=1e-9)
    assert top.radius == pytest.approx((200.0**2 + 60.0**2) / (2 * 60.0), abs=1e-6)
    through = bow_through(SHEET, 2, Point(0.0, 160.0))
    assert through.corners[2].bulge == pytest.approx(bowed.corners[2].bulge, abs=1e-12)
    assert bow_by(through, 2, 0.0) == SHEET


def test_a_chamfer_is_straight() -> None:
    assert area(chamfer_corner(SHEET, 3, 10.0)) == 80_000.0 - 50.0


def test_an_edge_is_bowed_by_a_radius_on_the_side_it_is_bowed_to() -> None:
    """Rise of an arc over its chord: r - sqrt(r^2 - (c / 2)^2)."""
    rise = 250.0 - math.sqrt(250.0**2 - 200.0**2)
    assert bow_by_radius(SHEET, 2, 250.0).contour().bounds[3] == pytest.approx(100.0 + rise, abs=1e-6)
    inward = bow_by_radius(bow_by(SHEET, 2, -20.0), 2, 250.0)
    assert area(inward) < area(SHEET)
    with pytest.raises(EditRefused, match="at least half the distance"):
        bow_by_radius(SHEET, 2, 199.0)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(EditRefused, match="would cross itself"):
        bow_by(SHEET, 2, -210.0)
    with pytest.raises(EditRefused, match="too short for that chamfer"):
        chamfer_corner(SHEET, 1, 201.0)
    with pytest.raises(EditRefused, match="two corners"):
        remove_corner(outline_of(Circle(diameter=10.0)), 0)
    with pytest.raises(EditRefused, match="is kept as it is"):
        set_outline(builders.project(builders.sheet(state="kept")), "new", "main", SHEET)


def test_the_plate_takes_a_new_outline() -> None:
    changed = set_outline(builders.project(), "new", "main", bow_by(SHEET, 2, 60.0))
    assert changed.option("new").plates[0].outline == bow_by(SHEET, 2, 60.0)
