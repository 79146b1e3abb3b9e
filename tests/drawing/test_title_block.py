from dataclasses import replace

import pytest

from panelcad.drawing.display import Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.paper import PAPERS, named_paper
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.title_block import HEIGHT, WIDTH, Heading, qr_text, title_block
from panelcad.model.project import Aircraft
from panelcad.model.revision import Stamp
from tests import builders
from tests.drawing import papers

HEADING = Heading("Main panel", "Panel front", "1:2", "2024-T3, 2.00 mm", 1, 7)


def subject(**fields: object):
    project = builders.project(shop="The shop", drawn_by="A. Drafter", **fields)
    return papers.shown(project, project.options[0])


def words(nodes) -> list[str]:
    return [node.text for node in walk(tuple(nodes)) if isinstance(node, Text)]


def test_it_has_the_eight_mandatory_fields_of_iso_7200_and_what_a_machinist_looks_for():
    shown = replace(subject(), stamp=Stamp("AAAA-BBBB-CCCC-DDDD", "B", "2026-05-01"))
    written = words(title_block(shown, named_paper("A3"), HEADING))
    mandatory = {
        "Legal owner": "The shop",
        "Identification number": "TEST-1 / new",
        "Date of issue": "2026-05-01",
        "Sheet": "1 / 7",
        "Title": "Main panel",
        "Creator": "A. Drafter",
        "Document type": "Panel front",
    }
    for label, value in mandatory.items():
        assert written[written.index(label) + 1] == value
    assert "Approved by (signature)" in written
    for value in ("1:2", "mm", "2024-T3, 2.00 mm", "B", "AAAA-BBBB-CCCC-DDDD", "±0.127 mm"):
        assert value in written


@pytest.mark.parametrize(
    "paper", [paper for papers in PAPERS.values() for paper in papers], ids=lambda paper: paper.name
)
def test_it_is_180_mm_wide_in_the_lower_right_corner_of_the_frame(paper):
    box = extent(title_block(subject(), paper, HEADING))
    right, bottom = paper.frame[2], paper.frame[1]
    assert box == pytest.approx((right - WIDTH, bottom, right, bottom + HEIGHT), abs=0.3)


def test_the_longest_names_stay_in_their_cells_and_cover_nothing():
    long = "Ŵhéel-höuse " * 16
    project = builders.project(
        title=long, shop=long, drawn_by=long, aircraft=Aircraft(registration=long, type_name=long, datum=long)
    )
    option = project.options[0].revised(name=long)
    shown = papers.shown(project.with_option(option), option)
    paper = named_paper("A3")
    heading = replace(HEADING, title=long, document=long, material=long)
    sheet = Sheet(paper.width, paper.height, title_block(shown, paper, heading), "")
    assert papers.overlapping(sheet) == []
    assert papers.outside(sheet, 10.0) == []
    assert sum(text.text.endswith("…") for text in papers.texts(sheet.nodes)) >= 6


def test_a_draft_says_so_and_has_no_date():
    written = words(title_block(subject(), named_paper("A3"), HEADING))
    assert written[written.index("Revision") + 1] == "draft"
    assert written[written.index("Date of issue") + 1] == "not issued"
    assert qr_text(subject()).endswith("DRAFT")
