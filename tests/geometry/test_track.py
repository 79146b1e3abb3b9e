import pytest

from panelcad.geometry.contour import Vertex
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line, polyline


def test_a_track_stays_open() -> None:
    assert len(polyline(Point(0, 0), Point(1, 0), Point(1, 1)).segments) == 2


def test_the_box_of_a_track_holds_its_bows() -> None:
    assert Track((Vertex(10, 0, 1.0), Vertex(-10, 0))).bounds == pytest.approx((-10, 0, 10, 10))
    assert line(Point(3, 4), Point(1, 8)).bounds == (1, 4, 3, 8)
