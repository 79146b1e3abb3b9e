import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.display import Along
from panelcad.drawing.inks import INKS, Ink
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.table import Column, Row, run_over, stretched, table_width
from tests import builders
from tests.drawing import papers

INK = INKS[Ink.COLOUR]
COLUMNS = (Column("No.", 12.0), Column("What for", 40.0), Column("X", 20.0, Along.RIGHT))
BOXES = tuple((100.0 * i, 10.0, 100.0 * i + 72.0, 90.0) for i in range(60))


def parts(rows, boxes=BOXES):
    return list(run_over(COLUMNS, rows, boxes, INK))


def words(part) -> list[str]:
    return [text.text for text in papers.texts(part)]


def test_a_long_table_runs_over_and_repeats_its_header():
    rows = [Row((str(i), "screw", "1.00")) for i in range(40)]
    found = parts(rows)
    assert len(found) > 1
    assert all(words(part)[:3] == ["No.", "What for", "X"] for part in found)
    numbers = [text for part in found for text in words(part)[3::3]]
    assert numbers == [str(i) for i in range(40)]


def test_a_heading_never_stands_alone_at_the_foot():
    for count in range(4, 20):
        rows = [*(Row((str(i), "screw", "1")) for i in range(count)), Row(("MORE", "", ""), is_heading=True)]
        rows += [Row((str(i), "bolt", "1")) for i in range(20)]
        for part in parts(rows):
            assert words(part)[-1] != "MORE"


@given(st.lists(st.tuples(st.text(max_size=60), st.text(max_size=200), st.text(max_size=40)), max_size=12))
def test_whatever_is_written_stays_in_its_column_and_covers_nothing(cells):
    rows = [Row(cell) for cell in cells]
    for part, box in zip(parts(rows), BOXES, strict=False):
        sheet = Sheet(box[2] + 50, 120.0, part, "")
        assert papers.overlapping(sheet) == []
        for text in papers.texts(part):
            left, _, right, top = text_bounds(text)
            assert box[0] <= left
            assert right <= box[2] + 1e-6
            assert top <= box[3]


def test_columns_are_stretched_together():
    wide = stretched(COLUMNS, 144.0)
    assert table_width(wide) == 144.0
    assert [column.width for column in wide] == [24.0, 80.0, 40.0]


def test_no_title_is_broken_within_a_word():
    columns = (Column("No.", 12.0), Column("Tolerance", 10.0), Column("What for", 90.0))
    narrow = stretched(columns, 80.0)
    assert table_width(narrow) == pytest.approx(80.0)
    (part,) = run_over(narrow, [Row(("1", "0.1", "screw"))], BOXES, INK)
    assert "Tolerance" in words(part)


@pytest.mark.parametrize("count", [41, 60, 79, 80, 81])
def test_a_row_or_two_too_many_are_shared_out_over_all_sheets(count: int):
    project = builders.project()
    subject = papers.shown(project, project.options[0])
    rows = tuple(Row((str(i), "screw", "1.00")) for i in range(count))
    pages = listing_pages(subject, Listing("List", "Test", (), COLUMNS, rows, abreast=2))
    shown = [sum(word == "screw" for word in words(page.nodes)) for page in pages]

    assert sum(shown) == count
    assert min(shown) >= 0.3 * max(shown)
    assert [word for page in pages for word in words(page.nodes) if word.isdigit()] == [str(i) for i in range(count)]
