import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.tiles import PRINTERS, Printer, row_name, tiling
from panelcad.errors import UnusableInput

OVERLAP = 12.0


@given(
    width=st.floats(50, 1500),
    height=st.floats(50, 900),
    name=st.sampled_from(sorted(PRINTERS)),
)
def test_the_pages_show_the_whole_part_and_overlap_as_stated(width, height, name):
    part = (-width / 2, 0.0, width / 2, height)
    cut = tiling(part, PRINTERS[name], OVERLAP)
    tiles = list(cut.tiles())
    assert len(tiles) == cut.columns * cut.rows
    assert min(tile.window[0] for tile in tiles) <= part[0] - OVERLAP / 2 + 1e-6
    assert max(tile.window[2] for tile in tiles) >= part[2] + OVERLAP / 2 - 1e-6
    assert min(tile.window[1] for tile in tiles) <= part[1] - OVERLAP / 2 + 1e-6
    assert max(tile.window[3] for tile in tiles) >= part[3] + OVERLAP / 2 - 1e-6
    by_place = {(tile.row, tile.column): tile for tile in tiles}
    for (row, column), tile in by_place.items():
        right = by_place.get((row, column + 1))
        below = by_place.get((row + 1, column))
        assert right is None or tile.window[2] - right.window[0] == pytest.approx(OVERLAP)
        assert below is None or below.window[3] - tile.window[1] == pytest.approx(OVERLAP)


def test_each_page_has_four_marks_and_neighbours_share_theirs():
    cut = tiling((0.0, 0.0, 400.0, 300.0), PRINTERS["A4"], OVERLAP)
    for tile in cut.tiles():
        x1, y1, x2, y2 = tile.window
        inside = [mark for mark in cut.marks() if x1 < mark.x < x2 and y1 < mark.y < y2]
        assert len(inside) == 4


def test_the_paper_lies_or_stands_whichever_takes_fewer_pages():
    assert tiling((0, 0, 240, 110), PRINTERS["A4"], OVERLAP).printer.width > 290
    assert tiling((0, 0, 160, 215), PRINTERS["A4"], OVERLAP).printer.width < 220


def test_paper_too_small_for_a_template_is_refused():
    assert tiling((0, 0, 100, 100), Printer("A5", 148, 210), OVERLAP).printer.width == 210
    with pytest.raises(UnusableInput, match="too small"):
        tiling((0, 0, 100, 100), Printer("stamp", 60, 80), OVERLAP)


def test_rows_are_lettered_from_the_top():
    assert [row_name(i) for i in (0, 25, 26, 27)] == ["A", "Z", "AA", "AB"]
