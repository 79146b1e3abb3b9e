"""The proposal: every option with its pictures, additions, price and cautions, and lines to sign on."""

import pytest
from pypdfium2 import PdfDocument

from panelcad.drawing.appearance_light import DAY
from panelcad.drawing.display import Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.paper import PAPERS, usual_series
from panelcad.library.samples import sample_file
from panelcad.model.project import AS_FOUND
from panelcad.outputs.proposal import export_proposal
from panelcad.outputs.proposal_pages import option_page, overview, picture, room
from panelcad.outputs.story import stories
from panelcad.planning.judge import judge
from panelcad.store.project_file import load
from tests.drawing.panels import small_panel


@pytest.fixture(scope="module")
def project():
    return load(sample_file("tourer"))


@pytest.fixture(scope="module")
def told(project):
    return stories(project)


@pytest.fixture(scope="module")
def pages(project, tmp_path_factory):
    path = tmp_path_factory.mktemp("proposal") / "proposal.pdf"
    export_proposal(project, path)
    return [(_content(page), _strays(page)) for page in PdfDocument(path)]


def _content(page):
    """The page's text in the order in which it was written, in one line."""
    return " ".join(page.get_textpage().get_text_range().split())


def _strays(page):
    """How many letters reach beyond the sheet."""
    text, (width, height) = page.get_textpage(), page.get_size()
    boxes = (text.get_charbox(i) for i in range(text.count_chars()))
    return sum(x1 < 0 or y1 < 0 or x2 > width or y2 > height for x1, y1, x2, y2 in boxes)


def test_every_option_has_its_page(pages, told):
    for each in told[1:]:
        page = next(text for text, *_ in pages if text.startswith(each.option.name[:30]))
        assert each.adds[0] in page
        assert "Total" in page
        assert each.price.split(";")[0].removeprefix("at least ") in page


def test_the_first_page_offers_every_option(pages, told):
    for each in told[1:]:
        assert each.option.name in pages[0][0]


def test_more_options_than_the_first_page_holds_run_on(project, told):
    paper = PAPERS[usual_series(project.unit)][0]
    many = (told[0], *told[1:] * 3)

    bodies = overview(project, many, paper)

    offered = [n.text for body in bodies for n in walk(body.nodes) if isinstance(n, Text)]
    assert len(bodies) > 1
    assert offered.count("Option") == len(bodies)
    assert sum(text.startswith("USD 47,410.13") for text in offered) == 3


def test_a_price_that_stands_alone_is_no_sentence(pages, told):
    sound = [each for each in told if not each.is_as_found and not each.open_errors]
    assert sound
    for each in sound:
        assert f"{each.price}." not in pages[0]


def test_every_function_is_counted(pages, told):
    text = " ".join(text for text, _ in pages if text.startswith("How many of each function"))
    functions = {function.value for each in told for function in each.functions}

    assert functions
    assert [name for name in functions if name not in text] == []


def test_the_whole_comparison_is_there(pages, told):
    text = "".join(text for text, *_ in pages)

    for each in told:
        assert all(figure.split(",")[0] in text for _, figure in each.figures)


def test_cautions_and_signatures(pages):
    last = pages[-1][0]

    assert "primary structure" in last
    assert "approved data" in last
    assert last.count("signature") == 2
    assert all("Planning aid: approves nothing." in text for text, *_ in pages)


def test_an_option_with_errors_says_so(pages):
    assert any("not to be cut as drawn" in text for text, *_ in pages)


def test_each_error_and_each_failure_that_leaves_too_little_is_told(pages, told):
    text = " ".join(text for text, *_ in pages)

    for each in told:
        assert [s for s in (*each.fit_errors, *each.plan_errors, *each.failures) if s not in text] == []


def test_an_option_with_errors_is_not_offered_for_choice(pages):
    assert pages[-1][0].count("Not to be chosen before its errors are mended") == 1


def test_errors_are_counted_alike_everywhere(project, pages, told):
    for each, option in zip(told, project.all_options, strict=True):
        count = len(judge(project, option).errors)
        assert len(each.fit_errors) + len(each.plan_errors) == count
        assert each.open_errors.startswith(f"{count} error") == (count > 0)
    assert any(told[-1].open_errors in text for text, *_ in pages)


def test_what_does_not_fit_the_list_is_counted_and_the_page_named_has_it(pages, told):
    page = next(text for text, *_ in pages if text.startswith(told[-1].option.name))
    changes = next(text for text, *_ in pages if text.startswith("What each option changes"))
    shown = sum(f"· {name}" in page for name in told[-1].adds)

    assert f"and {len(told[-1].adds) - shown} more: see the page" in page
    assert all(name in changes for name in (*told[-1].adds, *told[-1].small_added))


def test_what_is_seen_and_dear_comes_first_and_replacements_say_so(told):
    glass = told[2]
    assert glass.adds[0] == "Navigator"
    assert glass.adds.index("Map display") < glass.adds.index("Roll servo")
    assert "Audio panel (replaces the old one)" in glass.adds
    assert "Audio panel (replaced)" in glass.takes_out


def test_a_pedestal_stands_beside_the_panel():
    twin = load(sample_file("twin"))
    box = room(PAPERS[usual_series(twin.unit)][0])
    x1, y1, x2, y2 = extent((picture(twin, twin.as_found, box, DAY),))

    assert x2 - x1 > 0.97 * (box[2] - box[0])
    assert (x2 - x1) / (y2 - y1) > 2.5


def test_no_word_leaves_the_sheet(pages):
    assert [strays for _, strays in pages] == [0] * len(pages)


def test_everything_stands_above_the_footer(project, told):
    paper = PAPERS[usual_series(project.unit)][0]
    x1, y1, x2, y2 = room(paper)
    for each in told[1:]:
        left, low, right, top = extent(option_page(project, each, paper).nodes)
        assert (left >= x1 - 0.5, low >= y1 - 1.0, right <= x2 + 0.5, top <= y2 + 0.5) == (True,) * 4, each.option.name


def test_story_of_the_panel_as_found(told):
    found = told[0]

    assert found.option.id == AS_FOUND
    assert found.adds == ()
    assert found.takes_out == ()
    assert found.price == "nothing"


def test_story_counts_what_comes_and_goes(project, told):
    option = project.options[0]
    before = {(i.id, i.unit, i.cutout) for i in project.as_found.items}
    new = [i for i in option.items if (i.id, i.unit, i.cutout) not in before]

    assert len(told[1].adds) + len(told[1].small_added) == len(new)


def test_an_overloaded_option_is_not_ready(told):
    assert told[-1].plan_errors
    assert "104%" in dict(told[-1].figures)["Electrical load"]


def test_same_bytes_each_time(tmp_path):
    small = small_panel()
    for name in ("a.pdf", "b.pdf"):
        export_proposal(small, tmp_path / name)

    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
