"""Photographs set straight and to scale by points whose places are known."""

import base64
from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageDraw

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point, distance
from panelcad.intake.photograph import PIXELS_PER_MM, KnownPoint, homography, pixel_of, rectified

OUTLINE = rectangle(Point(0.0, 0.0), 400.0, 200.0)
CAMERA = np.array([[2.1, 0.12, 620.0], [-0.08, -1.9, 410.0], [2.0e-4, 1.5e-4, 1.0]])
"""A camera that looks at the panel from one side: takes mm to pixels."""
CORNERS = (Point(-180.0, -90.0), Point(180.0, -90.0), Point(180.0, 90.0), Point(-180.0, 90.0))


def _seen(place: Point) -> Point:
    return pixel_of(CAMERA, place)


def _known(places=CORNERS):
    return [KnownPoint(_seen(place), place) for place in places]


def test_map_is_the_camera():
    matrix = homography(_known())
    others = [Point(x, y) for x in (-200.0, 13.0, 170.0) for y in (-100.0, 7.0, 95.0)]

    assert max(distance(pixel_of(matrix, place), _seen(place)) for place in others) < 1e-6


def test_more_points_are_fitted():
    """A pixel of error in one of eight points moves the middle by less than one pixel."""
    places = (*CORNERS, Point(0.0, 90.0), Point(0.0, -90.0), Point(-180.0, 0.0), Point(180.0, 0.0))
    points = _known(places)
    points[5] = KnownPoint(points[5].pixel.moved(1.0, 0.0), points[5].place)

    assert distance(pixel_of(homography(points), Point(0.0, 0.0)), _seen(Point(0.0, 0.0))) < 1.0


def _photo_of(spots, file):
    """A photograph of white dots of 8 mm on black, seen by the camera."""
    image = Image.new("RGB", (1300, 850), "black")
    draw = ImageDraw.Draw(image)
    for spot in spots:
        ring = [_seen(Point(spot.x + 4 * np.cos(a), spot.y + 4 * np.sin(a))) for a in np.linspace(0, 2 * np.pi, 60)]
        draw.polygon([tuple(p) for p in ring], fill="white")
    image.save(file)
    return file


@pytest.mark.parametrize("spot", [Point(0.0, 0.0), Point(-150.0, 60.0), Point(120.0, -70.0)])
def test_a_dot_comes_out_where_it_is(tmp_path, spot):
    """The centre of mass of the bright pixels is the dot's place, to a quarter of a millimetre."""
    photo = rectified(_photo_of([spot], tmp_path / "ü panel.png"), "main", OUTLINE, _known())
    bright = np.asarray(Image.open(BytesIO(photo.bytes)).convert("L")).astype(float)
    bright[bright < 128] = 0
    rows, columns = np.indices(bright.shape) + 0.5
    x = photo.x + (columns * bright).sum() / bright.sum() * photo.width / bright.shape[1]
    y = photo.y + photo.height - (rows * bright).sum() / bright.sum() * photo.height / bright.shape[0]

    assert (x, y) == (pytest.approx(spot.x, abs=0.25), pytest.approx(spot.y, abs=0.25))
    assert bright.shape[1] == pytest.approx(photo.width * PIXELS_PER_MM, abs=1)


def test_it_covers_the_plate(tmp_path):
    photo = rectified(_photo_of([], tmp_path / "p.png"), "main", OUTLINE, _known())

    assert photo.x < -200
    assert photo.x + photo.width > 200
    assert photo.plate == "main"
    assert base64.b64decode(photo.content).startswith(b"\xff\xd8\xff")


@pytest.mark.parametrize(
    ("points", "words"),
    [
        (_known()[:3], "at least four"),
        ([KnownPoint(_seen(p), p) for p in (Point(0, 0), Point(10, 0), Point(20, 0), Point(0, 9))], "on one line"),
        ([*_known()[:3], _known()[0]], "on one line"),
    ],
)
def test_points_that_settle_nothing_are_refused(tmp_path, points, words):
    with pytest.raises(UnusableInput, match=words):
        rectified(_photo_of([], tmp_path / "p.png"), "main", OUTLINE, points)


def test_what_is_no_picture_is_refused(tmp_path):
    (tmp_path / "p.png").write_bytes(b"no picture")
    with pytest.raises(UnusableInput, match="cannot be read as a picture"):
        rectified(tmp_path / "p.png", "main", OUTLINE, _known())
