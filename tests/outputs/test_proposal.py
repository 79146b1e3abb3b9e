"""The proposal: every option with its pictures, additions, price and cautions, and lines to sign on."""

import pdfplumber
import pytest

from panelcad.library.samples import sample_file
from panelcad.model.project import AS_FOUND
from panelcad.outputs.proposal import export_proposal
from panelcad.outputs.story import story
from panelcad.store.project_file import load


@pytest.fixture(scope="module")
def project():
    return load(sample_file("tourer"))


@pytest.fixture(scope="module")
def pages(project, tmp_path_factory):
    path = tmp_path_factory.mktemp("proposal") / "proposal.pdf"
    export_proposal(project, path)
    with pdfplumber.open(path) as document:
        return [(_content(page), page.width, page.height, page.chars) for page in document.pages]


def _content(page):
    """The page's text in the order in which it was written: columns stay whole."""
    return "".join(char["text"] for char in page.chars)


def test_every_option_has_its_page(pages, project):
    for option in project.options:
        page = next(text for text, *_ in pages if text.startswith(option.name[:30]))
        told = story(project, option)
        assert told.adds[0] in page
        assert "Total" in page
        assert told.price.split(";")[0].removeprefix("at least ") in page


def test_the_whole_comparison_is_there(pages, project):
    text = "".join(text for text, *_ in pages)

    for option in project.all_options:
        assert story(project, option).load.split(";")[0].split(",")[0] in text


def test_cautions_and_signatures(pages):
    last = pages[-1][0]

    assert "primary structure" in last
    assert "approved data" in last
    assert last.count("signature") == 2
    assert all("Planning aid: approves nothing." in text for text, *_ in pages)


def test_an_option_with_errors_says_so(pages):
    assert any("not to be cut as drawn" in text for text, *_ in pages)


def test_no_word_leaves_the_sheet(pages):
    for text, width, height, chars in pages:
        assert all(c["x0"] >= 0 and c["x1"] <= width and c["top"] >= 0 and c["bottom"] <= height for c in chars), text[
            :40
        ]


def test_story_of_the_panel_as_found(project):
    told = story(project, project.as_found)

    assert told.option.id == AS_FOUND
    assert told.adds == ()
    assert told.takes_out == ()
    assert told.price == "nothing"


def test_story_counts_what_comes_and_goes(project):
    option = project.options[0]
    before = {(i.id, i.unit, i.cutout) for i in project.as_found.items}
    new = [i for i in option.items if (i.id, i.unit, i.cutout) not in before]
    told = story(project, option)

    assert len(told.adds) + told.small_added == len(new)


def test_same_bytes_each_time(project, tmp_path):
    small = project.revised(options=project.options[:1])
    for name in ("a.pdf", "b.pdf"):
        export_proposal(small, tmp_path / name)

    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
