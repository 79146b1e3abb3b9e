import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath

from panelcad.drawing.display import (
    Across,
    Along,
    Colour,
    Group,
    LinearGradient,
    Measured,
    Node,
    Path,
    Pen,
    Stop,
    Text,
)
from panelcad.drawing.lettering import text_bounds
from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.outputs.qt_glyphs import text_path
from panelcad.outputs.qt_painter import outline_path, paint, placement_transform

RED, BLUE = Colour(255, 0, 0), Colour(0, 0, 255)
WHITE = "#ffffff"


def painted(*nodes: Node, scale: float = 2.0, ratio: float = 1.0) -> QImage:
    """A sheet of 100 × 100 mm, its lower left corner at the origin, `scale` logical pixels to the mm."""
    image = QImage(round(100 * scale * ratio), round(100 * scale * ratio), QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor(WHITE))
    painter = QPainter(image)
    painter.translate(0, 100 * scale)
    painter.scale(scale, -scale)
    paint(painter, nodes)
    painter.end()
    return image


def at(image: QImage, x: float, y: float) -> str:
    """The colour at a place in mm."""
    scale = image.width() / 100
    return image.pixelColor(int(x * scale), int((100 - y) * scale)).name()


def test_a_path_has_no_specks_between_arcs_that_meet(qapp) -> None:
    first, between, last = Vertex(213.647102, 237.716307, 0.121197903), Vertex(-457.2, 177.8), Vertex(-457.2, 0.0)
    bowed = closed_chain((first, between, last, Vertex(457.2, 0.0), Vertex(457.2, 177.8, 0.044568496)))
    path = outline_path((bowed,))
    kinds = [path.elementAt(i).type for i in range(path.elementCount())]
    assert kinds.count(QPainterPath.ElementType.LineToElement) == 3


@pytest.mark.parametrize("ratio", [1.0, 1.25, 2.0])
def test_y_runs_up_and_a_hole_stays_open(qapp, ratio) -> None:
    plate = Path((rectangle(Point(50, 70), 80, 40), circle(Point(50, 80), 10)), RED)
    image = painted(plate, ratio=ratio)
    assert at(image, 20, 70) == RED.text
    assert at(image, 50, 80) == WHITE
    assert at(image, 50, 30) == WHITE


def test_arcs_bulge_to_the_side_the_model_says(qapp) -> None:
    chain = closed_chain((Vertex(20, 20), Vertex(80, 20), Vertex(80, 50, 1.0), Vertex(20, 50)))
    image = painted(Path((chain,), RED))
    assert at(image, 50, 75) == RED.text
    assert at(image, 21, 79) == WHITE


def test_painted_arcs_have_the_bounds_of_the_geometry(qapp) -> None:
    chain = closed_chain((Vertex(0, 0), Vertex(60, 0, 0.3), Vertex(60, 40, -0.2), Vertex(0, 40)))
    box = outline_path((chain,)).boundingRect()
    # Qt draws a quarter circle as one cubic, which strays by 0.027 % of the radius.
    assert (box.left(), box.top(), box.right(), box.bottom()) == pytest.approx(chain.bounds, abs=0.05)


@pytest.mark.parametrize("mirrored", [False, True])
def test_a_placement_maps_as_the_model_does(qapp, mirrored) -> None:
    placement = Placement(12, -7, 33, mirrored)
    mapped = placement_transform(placement).map(5.0, 9.0)
    assert mapped == pytest.approx(placement.point(Point(5, 9)))


def test_pens_in_pixels_keep_their_width_at_any_zoom(qapp) -> None:
    pen = Pen(RED, 6, Measured.PIXELS)
    for scale in (1.0, 4.0):
        image = painted(Path((line(Point(0, 50), Point(100, 50)),), pen=pen), scale=scale)
        column = [image.pixelColor(image.width() // 2, y).name() for y in range(image.height())]
        assert column.count(RED.text) == 6


def test_gradients_run_from_start_to_end(qapp) -> None:
    fill = LinearGradient(Point(0, 0), Point(100, 0), (Stop(0, RED), Stop(1, BLUE)))
    image = painted(Path((rectangle(Point(50, 50), 100, 100),), fill))
    left, right = QColor(at(image, 3, 50)), QColor(at(image, 97, 50))
    assert left.red() > 240
    assert right.blue() > 240


def test_a_group_clips_and_places(qapp) -> None:
    inner = Path((rectangle(Point(0, 0), 60, 60),), RED)
    group = Group((inner,), clip=circle(Point(0, 0), 20), placement=Placement(50, 50))
    image = painted(group)
    assert at(image, 50, 50) == RED.text
    assert at(image, 70, 50) == WHITE


def test_lettering_fills_the_box_that_lettering_measured(qapp) -> None:
    text = Text("HEIM", Point(50, 50), 10, RED, Along.CENTRE, Across.MIDDLE)
    box = text_path(text.text, text.height, text.face).boundingRect()
    x1, _, x2, _ = text_bounds(text)
    assert box.height() == pytest.approx(10, abs=0.4)
    assert box.width() == pytest.approx(x2 - x1, rel=0.1)


def test_lettering_in_pixels_keeps_its_size(qapp) -> None:
    text = Text("I", Point(50, 50), 20, RED, Along.CENTRE, measured=Measured.PIXELS)
    for scale in (1.0, 5.0):
        image = painted(text, scale=scale)
        column = [image.pixelColor(image.width() // 2, y).name() for y in range(image.height())]
        assert column.count(RED.text) in range(18, 22)


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0])
def test_a_line_of_so_many_pixels_is_as_wide_on_a_finer_screen(ratio: float) -> None:
    level = Path((line(Point(0.0, 50.0), Point(100.0, 50.0)),), pen=Pen(RED, 4.0, measured=Measured.PIXELS))
    picture = painted(level, ratio=ratio)
    x = picture.width() // 2
    reds = sum(picture.pixelColor(x, y).green() < 128 for y in range(picture.height()))
    assert reds == pytest.approx(4.0 * ratio, abs=1.0)


@pytest.mark.parametrize("measured", [Measured.MM, Measured.PIXELS])
def test_a_rim_keeps_letters_clear_of_what_lies_below(qapp, measured) -> None:
    """A bar of 'I' of 20 mm: its rim is a fifth of that wide, and the letter is painted over it."""
    height = 20.0 if measured is Measured.MM else 40.0
    ground = Path((rectangle(Point(50.0, 50.0), 90.0, 90.0),), BLUE)
    middle = {"along": Along.CENTRE, "across": Across.MIDDLE, "measured": measured}
    plain = painted(ground, Text("I", Point(50.0, 50.0), height, Colour(0, 0, 0), **middle))
    image = painted(ground, Text("I", Point(50.0, 50.0), height, Colour(0, 0, 0), **middle, rim=RED))
    assert at(plain, 50.0, 61.5) == "#0000ff"
    assert at(image, 50.0, 50.0) == "#000000"
    assert at(image, 50.0, 61.5) == at(image, 50.0, 63.0) == "#ff0000"
    assert at(image, 50.0, 65.5) == "#0000ff"
