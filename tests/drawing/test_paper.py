from itertools import pairwise

import pytest

from panelcad.drawing.border import LETTERS, border, fields
from panelcad.drawing.display import Text, walk
from panelcad.drawing.inks import INKS, Ink
from panelcad.drawing.paper import PAPERS, STANDARD_SCALES, Scale, Series, fitting_scale, named_paper, usual_series
from panelcad.units import LengthUnit


def test_sheets_have_the_sizes_of_the_standards():
    """ISO 216: A0 is a square metre with sides as 1 to the root of 2; ASME Y14.1 sizes in inches."""
    a0 = named_paper("A0")
    assert a0.width * a0.height == pytest.approx(1e6, rel=1e-3)
    assert a0.width / a0.height == pytest.approx(2**0.5, abs=2e-3)
    b = named_paper("ANSI B")
    assert (b.width, b.height) == pytest.approx((17 * 25.4, 11 * 25.4))


def test_iso_frames_leave_room_for_filing():
    assert named_paper("A3").frame == (20, 10, 410, 287)


def test_inches_go_on_asme_sheets_and_millimetres_on_iso_sheets():
    assert usual_series(LengthUnit.INCH) is Series.ANSI
    assert usual_series(LengthUnit.MM) is Series.ISO


@pytest.mark.parametrize(
    ("size", "scale"),
    [((390, 100), "1:1"), ((390.1, 100), "1:2"), ((1000, 400), "1:5"), ((20, 10), "2:1"), ((4000, 100), "1:20")],
)
def test_the_largest_standard_scale_that_fits_is_taken(size, scale):
    assert str(fitting_scale(size, (390, 200))) == scale


def test_nothing_fits_where_even_the_smallest_scale_is_too_large():
    assert fitting_scale((100_000, 1), (390, 200)) is None


def test_scales_are_those_of_iso_5455():
    standard = {1, 2, 5, 10, 20, 50, 100}
    assert all(1 in {s.paper, s.real} and {s.paper, s.real} <= standard for s in STANDARD_SCALES)
    assert Scale(1, 5).factor == 0.2


@pytest.mark.parametrize(
    "paper", [paper for papers in PAPERS.values() for paper in papers], ids=lambda paper: paper.name
)
def test_grid_fields_are_whole_from_the_middle_and_the_letters_leave_out_i_and_o(paper):
    columns = fields(paper.frame[0], paper.frame[2])
    lengths = [b - a for a, b in pairwise(columns)]
    assert lengths[1:-1] == pytest.approx([50.0] * (len(lengths) - 2))
    assert all(24.0 <= length <= 76.0 for length in lengths)
    assert len(lengths) % 2 == 0
    written = {node.text for node in walk(border(paper, INKS[Ink.COLOUR])) if isinstance(node, Text)}
    assert not {"I", "O"} & (written | set(LETTERS))
