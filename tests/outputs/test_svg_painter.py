"""The SVG painter writes what the display list says, in mm, y down."""

import re
import xml.etree.ElementTree as ET

import pytest

from panelcad.drawing.display import (
    Along,
    Cap,
    Colour,
    Face,
    Group,
    LinearGradient,
    Measured,
    Path,
    Pen,
    Picture,
    Stop,
    Text,
)
from panelcad.drawing.lettering import text_width
from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.outputs.svg_painter import svg

RED = Colour(255, 0, 0)
BOUNDS = (0.0, 0.0, 100.0, 50.0)
NS = "{http://www.w3.org/2000/svg}"


def _tree(*nodes, width=None):
    return ET.fromstring(svg(nodes, BOUNDS, "a <title> & more", width))  # noqa: S314 - we wrote it


def test_size_and_box():
    root = _tree()

    assert (root.get("width"), root.get("height")) == ("100mm", "50mm")
    assert root.get("viewBox") == "0 -50 100 50"
    assert root.find(f"{NS}title").text == "a <title> & more"
    assert _tree(width=400).get("height") == "200"


def test_circle():
    found = _tree(Path((circle(Point(10.0, 20.0), 7.5),), RED)).find(f"{NS}circle")

    assert (found.get("cx"), found.get("cy"), found.get("r"), found.get("fill")) == ("10", "-20", "3.75", "#ff0000")


def test_arcs_are_true_and_turn_the_right_way():
    """A half disc above the x axis, counter-clockwise in the list, sweeps with flag 0 once y points down."""
    half = closed_chain((Vertex(10.0, 0.0, 1.0), Vertex(-10.0, 0.0)))
    data = _tree(Path((half,), RED)).find(f"{NS}path").get("d")

    assert data == "M10 0A10 10 0 0 0 -10 0L10 0Z"


def test_open_tracks_stay_open_and_pens_keep_their_unit():
    pen = Pen(RED, 2.0, Measured.PIXELS, dashes=(3.0, 1.5), cap=Cap.ROUND)
    found = _tree(Path((line(Point(0.0, 0.0), Point(5.0, 5.0)),), None, pen)).find(f"{NS}path")

    assert found.get("d") == "M0 0L5 -5"
    assert found.get("fill") == "none"
    assert found.get("vector-effect") == "non-scaling-stroke"
    assert found.get("stroke-dasharray") == "3 1.5"
    assert found.get("stroke-linecap") == "round"


def test_holes_are_cut_by_the_even_odd_rule():
    frame = Path((rectangle(Point(0, 0), 20, 10), rectangle(Point(0, 0), 10, 5)), RED)

    assert _tree(frame).find(f"{NS}path").get("fill-rule") == "evenodd"


def test_translucent_colours_and_groups():
    root = _tree(Group((Path((circle(Point(0, 0), 1),), RED.faded(0.4)),), opacity=0.5, owner="x", title="An item"))
    group = root.find(f"{NS}g")

    assert group.get("opacity") == "0.5"
    assert group.get("data-owner") == "x"
    assert group.find(f"{NS}title").text == "An item"
    assert group.find(f"{NS}circle").get("fill-opacity") == "0.4"


def test_gradients_and_clips_are_defined_once():
    fill = LinearGradient(Point(0, 0), Point(0, 10), (Stop(0.0, RED), Stop(1.0, Colour(0, 0, 255))))
    square = rectangle(Point(0, 0), 10, 10)
    boxes = tuple(Group((Path((square,), fill),), clip=square, owner=f"g{i}") for i in range(3))
    root = _tree(*boxes)

    assert len(root.findall(f"{NS}defs/{NS}linearGradient")) == 1
    assert len(root.findall(f"{NS}defs/{NS}clipPath")) == 1
    assert root.find(f"{NS}defs/{NS}linearGradient").get("y2") == "-10"


def test_a_group_that_stands_twice_is_written_once():
    face = Group(tuple(Path((circle(Point(i, 0), 1),), RED) for i in range(5)))
    twice = tuple(Group((face,), placement=Placement(10.0 * i, 5.0, 30.0), owner=f"i{i}") for i in range(2))
    root = _tree(*twice)

    assert len(root.findall(f".//{NS}circle")) == 5
    assert len(root.findall(f".//{NS}use")) == 2
    assert root.findall(f"{NS}g")[1].get("transform") == "translate(10 -5)rotate(-30)"


@pytest.mark.parametrize("along", list(Along))
def test_letters_are_outlines_placed_by_the_packaged_font(along):
    height, text = 5.0, "HHH"
    root = _tree(Text(text, Point(50.0, 10.0), height, RED, along, face=Face.BOLD))
    found = root.find(f"{NS}path")
    moved = [float(v) for v in re.findall(r"translate\((\S+) (\S+)\)", found.get("transform"))[1]]
    width = text_width(text, height, Face.BOLD)
    ys = [float(y) for y in re.findall(r"[MHV]\S*?(?:[ ,]|V)(-?\d+\.?\d*)", found.get("d"))]

    assert moved[0] == pytest.approx({Along.LEFT: 0, Along.CENTRE: -width / 2, Along.RIGHT: -width}[along], abs=1e-3)
    assert min(ys) == pytest.approx(-height, abs=0.01)


def test_pictures_travel_inside():
    root = _tree(Picture(b"\x89PNG....", Point(1.0, 2.0), 30.0, 20.0))
    image = root.find(f"{NS}image")

    assert image.get("href").startswith("data:image/png;base64,")
    assert (image.get("x"), image.get("y")) == ("1", "-22")
