import pytest

from panelcad.drawing.display import Colour, Group, Measured, Path, Pen, Text
from panelcad.drawing.extent import extent
from panelcad.drawing.scaling import scaled
from panelcad.geometry.contour import circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

BLACK = Colour(0, 0, 0)


def test_geometry_lettering_and_pens_in_mm_scale_and_move():
    path = Path((circle(Point(10, 20), 8), line(Point(0, 0), Point(1, 1))), pen=Pen(BLACK, 0.5, dashes=(12.0, 3.0)))
    text = Text("A", Point(10, 20), 5.0, BLACK)
    moved, words = scaled((path, text), 0.5, Point(100, 0))
    assert moved.outlines[0] == circle(Point(105, 10), 4)
    assert moved.pen == Pen(BLACK, 0.25, dashes=(6.0, 1.5))
    assert (words.at, words.height) == (Point(105, 10), 2.5)


def test_pens_and_letters_in_pixels_stay():
    path = Path((circle(Point(0, 0), 8),), pen=Pen(BLACK, 2.0, Measured.PIXELS))
    text = Text("A", Point(0, 0), 12.0, BLACK, measured=Measured.PIXELS)
    small, words = scaled((path, text), 0.1)
    assert (small.pen.width, words.height) == (2.0, 12.0)


@pytest.mark.parametrize("placement", [None, Placement(30, 40, 90.0), Placement(30, 40, 30.0, mirrored=True)])
def test_scaling_a_placed_group_is_scaling_what_it_shows(placement):
    shown = Group((Path((rectangle(Point(5, 6), 10, 4),)),), placement=placement)
    low_x, low_y, high_x, high_y = extent((shown,))
    scaled_box = extent(scaled((shown,), 2.0, Point(7, 9)))
    assert scaled_box == pytest.approx((7 + 2 * low_x, 9 + 2 * low_y, 7 + 2 * high_x, 9 + 2 * high_y))
