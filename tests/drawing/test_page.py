from panelcad.drawing.inks import INKS, Ink
from panelcad.drawing.page import heading
from panelcad.drawing.paper import PAPERS, Series
from tests.drawing import papers


def test_no_word_of_a_heading_is_lost():
    paper = PAPERS[Series.ISO][0]
    lines = [f"line {n}: " + "ordinates from the datum " * 12 for n in range(4)]

    written = " ".join(text.text for text in papers.texts(heading(paper, INKS[Ink.COLOUR], "PANEL, FRONT", *lines)))

    assert written.split() == " ".join(("PANEL, FRONT", *lines)).split()
