import math
from io import BytesIO

import pdfplumber
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.drawing.display import (
    Across,
    Along,
    Colour,
    Face,
    Group,
    LinearGradient,
    Node,
    Path,
    Pen,
    Picture,
    RadialGradient,
    Stop,
    Text,
)
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.sheet import Sheet
from panelcad.geometry.contour import circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc
from panelcad.geometry.track import line
from panelcad.outputs.pdf import Properties, write_pdf, write_pdf_to
from panelcad.outputs.pdf_painter import CURVE_ERROR, curves

BLACK = Colour(0, 0, 0)
PEN = Pen(BLACK, 0.25)
MM = 25.4 / 72


def made(*nodes: Node, width: float = 210.0, height: float = 297.0) -> bytes:
    stream = BytesIO()
    write_pdf_to(stream, [Sheet(width, height, nodes, "Sheet")], Properties("Test", on="2026-03-01"))
    return stream.getvalue()


def page(*nodes: Node):
    return pdfplumber.open(BytesIO(made(*nodes))).pages[0]


def box(shape) -> tuple[float, ...]:
    """A pdfplumber shape's box in mm, y up."""
    return tuple(shape[key] * MM for key in ("x0", "y0", "x1", "y1"))


SWEEPS = st.floats(-2 * math.pi, 2 * math.pi).filter(lambda sweep: abs(sweep) > 1e-3)


@given(radius=st.floats(0.5, 2000), start=st.floats(-3.1, 3.1), sweep=SWEEPS)
@settings(max_examples=60, deadline=None)
def test_curves_run_within_the_stated_error_of_the_arc(radius, start, sweep):
    centre = Point(10.0, -20.0)
    ends = [Point(centre.x + radius * math.cos(a), centre.y + radius * math.sin(a)) for a in (start, start + sweep)]
    arc = Arc(ends[0], ends[1], centre, radius, start, sweep)
    at = arc.start
    for first, second, end in curves(arc):
        for share in (0.1, 0.211, 0.5, 0.789, 0.9):
            spot = _bezier(at, first, second, end, share)
            assert abs(distance(spot, centre) - radius) <= CURVE_ERROR
        at = end
    assert at == arc.end


def _bezier(a: Point, b: Point, c: Point, d: Point, t: float) -> Point:
    weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
    return Point(*(sum(w * p[i] for w, p in zip(weights, (a, b, c, d), strict=True)) for i in (0, 1)))


def test_shapes_have_their_size_and_place_for_an_independent_reader():
    shown = page(
        Path((rectangle(Point(100, 150), 79.375, 41.275),), pen=PEN),
        Path((circle(Point(60, 60), 79.375),), pen=PEN),
        Path((line(Point(20, 20), Point(120, 20)),), pen=PEN),
    )
    assert (shown.width * MM, shown.height * MM) == pytest.approx((210, 297))
    rect = next(s for s in shown.rects + shown.curves if box(s)[1] > 120)
    assert box(rect) == pytest.approx((60.3125, 129.3625, 139.6875, 170.6375), abs=1e-3)
    round_ = next(s for s in shown.curves if box(s)[1] < 30)
    assert box(round_) == pytest.approx((20.3125, 20.3125, 99.6875, 99.6875), abs=1e-3)
    assert box(shown.lines[0]) == pytest.approx((20, 20, 120, 20), abs=1e-3)


def test_a_group_moves_turns_and_mirrors_what_it_holds():
    shown = page(
        Group((Path((line(Point(0, 0), Point(10, 0)),), pen=PEN),), placement=Placement(50, 50, 90.0, mirrored=True))
    )
    assert box(shown.lines[0]) == pytest.approx((50, 40, 50, 50), abs=1e-3)


@pytest.mark.parametrize("rotation", [0.0, 90.0, 30.0])
@pytest.mark.parametrize("face", Face)
def test_text_stands_where_it_was_measured(rotation, face):
    text = Text("Höhenmesser 12", Point(90, 90), 3.5, BLACK, Along.CENTRE, Across.MIDDLE, rotation, face)
    chars = page(text).chars
    assert "".join(c["text"] for c in chars) == "Höhenmesser 12"
    assert all(("OpenSans" in c["fontname"]) for c in chars)
    low_x, low_y, high_x, high_y = text_bounds(text)
    middles = [((c["x0"] + c["x1"]) / 2 * MM, (c["y0"] + c["y1"]) / 2 * MM) for c in chars]
    assert all(low_x - 1 < x < high_x + 1 and low_y - 1 < y < high_y + 1 for x, y in middles)
    if rotation == 0.0:
        assert min(c["x0"] for c in chars) * MM == pytest.approx(low_x, abs=0.01)
        assert max(c["x1"] for c in chars) * MM == pytest.approx(high_x, abs=0.01)


def test_no_font_but_the_packaged_one_is_named_in_the_file():
    from pypdfium2 import PdfDocument

    content = made(Text("Only ours", Point(20, 20), 3.5, BLACK))
    assert b"Helvetica" not in content
    assert b"/FontFile2" in content
    assert PdfDocument(content)[0].get_textpage().get_text_bounded().strip() == "Only ours"


def test_colours_gradients_pictures_and_clips_show():
    from pypdfium2 import PdfDocument

    red, blue = Colour(255, 0, 0), Colour(0, 0, 255)
    stops = (Stop(0.0, red), Stop(1.0, blue))
    nodes = (
        Path((rectangle(Point(50, 250), 80, 40),), fill=LinearGradient(Point(10, 250), Point(90, 250), stops)),
        Path((circle(Point(150, 250), 40),), fill=RadialGradient(Point(150, 250), 20, stops)),
        Path((rectangle(Point(50, 150), 40, 40), rectangle(Point(50, 150), 20, 20)), fill=red),
        Group((Path((rectangle(Point(150, 150), 60, 60),), fill=blue),), clip=circle(Point(150, 150), 20), opacity=0.5),
        Picture(_png(), Point(10, 10), 30, 30),
    )
    bitmap = PdfDocument(made(*nodes))[0].render(scale=1).to_pil().convert("RGB")

    def at(x: float, y: float) -> tuple[int, int, int]:
        return bitmap.getpixel((round(x / MM), round((297 - y) / MM)))

    assert at(12, 250)[0] > 230
    assert at(88, 250)[2] > 230
    assert at(150, 250)[0] > 200
    assert at(50, 165) == (255, 0, 0)
    assert at(50, 150) == (255, 255, 255)
    assert at(150, 150) == pytest.approx((127, 127, 255), abs=3)
    assert at(150, 165) == (255, 255, 255)
    assert at(25, 25) == (0, 255, 0)


def _png() -> bytes:
    from PIL import Image

    stream = BytesIO()
    Image.new("RGB", (4, 4), (0, 255, 0)).save(stream, "PNG")
    return stream.getvalue()


def test_a_file_made_twice_is_the_same_to_the_byte_and_bears_the_given_date(tmp_path):
    nodes = (Text("once", Point(20, 20), 3.5, BLACK), Path((circle(Point(60, 60), 20),), pen=PEN))
    path = tmp_path / "sheet.pdf"
    write_pdf(path, [Sheet(210, 297, nodes, "Sheet")], Properties("Test", on="2026-03-01"))
    assert path.read_bytes() == made(*nodes)
    about = pdfplumber.open(BytesIO(made(*nodes))).metadata
    assert about["Title"] == "Test"
    assert about["CreationDate"].startswith("D:20260301")
