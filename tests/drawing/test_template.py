"""What a template says to the one who glues it and holds it against the aircraft."""

from collections.abc import Iterator

from panelcad.drawing.display import Path, walk
from panelcad.drawing.sheet import Sheet
from panelcad.model.plate import CutState
from panelcad.outputs.template import template_pages
from tests import builders
from tests.drawing import papers


def pages(state: str) -> list[Sheet]:
    cuts = (builders.cut("a", -100, 20), builders.cut("old", 100, 20, state=CutState.EXISTING))
    project = builders.project(builders.sheet(cuts=cuts, state=state))
    return template_pages(papers.shown(project, project.options[0]), "main")


def written(sheet: Sheet) -> str:
    return " ".join(text.text for text in papers.texts(sheet.nodes))


def widths(sheet: Sheet) -> Iterator[tuple[float, int]]:
    """Each pen's width with how many contours it draws."""
    for node in walk(sheet.nodes):
        if isinstance(node, Path) and node.pen is not None:
            yield node.pen.width, len(node.outlines)


def test_the_first_page_says_what_the_glued_template_must_measure_and_which_face_it_shows():
    words = written(pages("new")[0])
    assert "600.00 mm wide and 300.00 mm high" in words
    assert "Seen from the front, as the pilot sees the panel." in words


def test_each_page_says_that_it_is_the_front():
    assert all("front" in written(sheet) for sheet in pages("new"))


def test_of_a_used_sheet_what_is_to_be_made_is_told_from_what_is_there():
    legend = "Wide lines are to be made, narrow ones are there already."
    assert legend in written(pages("reworked")[0])
    assert legend not in written(pages("new")[0])
    assert (0.35, 1) in widths(pages("reworked")[0])
    assert (0.35, 2) in widths(pages("new")[0])
