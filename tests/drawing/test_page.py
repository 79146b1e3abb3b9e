from panelcad.drawing.inks import INKS, PLAIN, Ink
from panelcad.drawing.page import heading
from panelcad.drawing.paper import PAPERS, Series
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.table import Column, Row
from tests import builders
from tests.drawing import papers


def test_no_word_of_a_heading_is_lost():
    paper = PAPERS[Series.ISO][0]
    lines = [f"line {n}: " + "ordinates from the datum " * 12 for n in range(4)]

    written = " ".join(text.text for text in papers.texts(heading(paper, INKS[Ink.COLOUR], "PANEL, FRONT", *lines)))

    assert written.split() == " ".join(("PANEL, FRONT", *lines)).split()


def test_a_table_begins_below_a_long_heading():
    project = builders.project()
    subject = papers.shown(project, project.options[0])
    words = tuple(f"line {n}: " + "ordinates from the datum " * 12 for n in range(4))
    columns = (Column("No.", 12.0), Column("Note", 80.0))
    (page,) = listing_pages(subject, Listing("Notes", "Test", words, columns, (Row(("1", "a note")),)))

    texts = list(papers.texts(page.nodes))
    lowest = min(text.at.y for text in texts if "datum" in text.text)
    (head,) = [text for text in texts if text.text == "No."]
    assert head.at.y < lowest - PLAIN
