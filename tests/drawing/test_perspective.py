"""Central projection against similar triangles; a tilted square becomes the trapezoid it must."""

import math

import pytest

from panelcad.drawing.display import Colour, Group, Path, Pen, Text
from panelcad.drawing.perspective import Perspective, projected
from panelcad.geometry.contour import circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot

BLACK = Colour(0, 0, 0)
EYE = Spot(10.0, 20.0, -600.0)
UPRIGHT = Perspective(EYE, PlateFrame(Spot(0, 0, 0)), 600.0)


@pytest.mark.parametrize("point", [Point(0, 0), Point(-300, 120), Point(10, 20)])
def test_an_upright_plate_at_the_picture_plane_is_seen_to_scale(point: Point) -> None:
    assert UPRIGHT.point(point) == pytest.approx(point)
    assert UPRIGHT.scale_at(point) == pytest.approx(1)


def test_what_is_twice_as_far_is_seen_half_as_large() -> None:
    far = Perspective(EYE, PlateFrame(Spot(0, 0, 600.0)), 600.0)
    assert far.point(Point(110, 20)) == pytest.approx((60, 20))
    assert far.scale_at(Point(0, 0)) == pytest.approx(0.5)


def test_the_far_edge_of_a_tilted_plate_is_seen_narrower() -> None:
    """Top edge 100·sin 60° farther: widths as 600 : 600 + 86.6."""
    seen = Perspective(Spot(0, 0, -600), PlateFrame(Spot(0, 0, 0), tilt=60), 600.0)
    left, right = seen.point(Point(-50, 100)), seen.point(Point(50, 100))
    assert right.x - left.x == pytest.approx(100 * 600 / (600 + 100 * math.sin(math.radians(60))))
    assert left.y == pytest.approx(50 * 600 / (600 + 100 * math.sin(math.radians(60))))


def test_a_group_keeps_its_owner_and_moves_what_it_holds() -> None:
    far = Perspective(Spot(0, 0, -600), PlateFrame(Spot(0, 0, 600.0)), 600.0)
    path = Path((circle(Point(100, 0), 40),), pen=Pen(BLACK, 2.0))
    text = Text("ALT", Point(100, 0), 8.0, BLACK)
    seen = projected(Group((path, text), "altimeter", "bezels", placement=Placement(0, 50)), far)
    circle_seen, text_seen = seen.nodes
    assert seen.owner == "altimeter"
    assert seen.placement is None
    assert circle_seen.outlines[0].bounds == pytest.approx((40, 15, 60, 35), abs=0.05)
    assert circle_seen.pen.width == pytest.approx(1.0)
    assert text_seen.at == pytest.approx((50, 25))
    assert text_seen.height == pytest.approx(4.0)


def test_a_clip_is_seen_from_the_same_eye() -> None:
    group = Group((Path((circle(Point(0, 0), 10),), BLACK),), clip=rectangle(Point(0, 0), 20, 10))
    assert projected(group, UPRIGHT).clip.bounds == pytest.approx((-10, -5, 10, 5))
