"""Every link of README, DEVELOPERS and docs leads somewhere, every rule is explained, and pages are read with ease."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from panelcad.checks.registry import all_rules
from panelcad.desktop.cautions import FULL
from panelcad.desktop.help.page_html import anchors, links, page_html, title

ROOT = Path(__file__).parent.parent
PAGES = sorted([ROOT / "README.md", ROOT / "DEVELOPERS.md", *(ROOT / "docs").rglob("*.md")])
LONGEST_SENTENCE = 40
"""Words. What people read while they work is said in short sentences."""
WIDEST = 130
"""Letters of a line of text, so that a change of one sentence shows as one."""


def read(page: Path) -> str:
    return page.read_text(encoding="utf-8")


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_every_link_leads_somewhere(page: Path) -> None:
    for link in links(read(page)):
        file, _, anchor = link.partition("#")
        assert ":" not in file, f"{link} leads out of the clone"
        target = (page.parent / file).resolve() if file else page
        assert target.is_file(), f"{link}: no such file"
        if anchor:
            assert anchor in anchors(read(target)), f"{link}: no such section"


def test_a_dead_link_would_be_found() -> None:
    assert links("[a](b.md#c) ![d](e.png) <f>") == ("b.md#c", "e.png")
    assert anchors("# One\n\ntext\n\n## Two `three`, four\n\n## One\n") == ("one", "two-three-four", "one-1")


def test_every_page_of_docs_is_reached_from_another_page() -> None:
    reached = {
        (page.parent / link.partition("#")[0]).resolve()
        for page in PAGES
        for link in links(read(page))
        if link.partition("#")[0]
    }
    assert [page for page in PAGES if page not in reached and page.name != "README.md"] == []


def test_every_picture_of_docs_is_shown_on_a_page() -> None:
    shown = {(page.parent / link).resolve() for page in PAGES for link in links(read(page))}
    pictures = {*(ROOT / "docs" / "help" / "pictures").iterdir()}
    assert pictures - shown == set()


def test_each_rule_has_a_section_of_its_own() -> None:
    sections = anchors(read(ROOT / "docs" / "rules.md"))
    assert [rule.id for rule in all_rules() if rule.id not in sections] == []


def test_headings_become_anchors_and_tables_become_tables() -> None:
    html = page_html("# Web between cuts\n\n| a | b |\n| --- | --- |\n| 1 | 2 |\n")
    assert '<h1 id="web-between-cuts">Web between cuts</h1>' in html
    assert "<td>2</td>" in html
    assert title("# Web between cuts") == "Web between cuts"


@pytest.mark.parametrize("page", ["README.md", "docs/help/README.md"])
def test_the_cautions_are_those_of_the_first_screen(page: str) -> None:
    words = " ".join(read(ROOT / page).split())
    assert [caution for caution in FULL if f"- {caution}" not in words] == []


def paragraphs(text: str) -> Iterator[str]:
    """Paragraphs and entries of lists in one line each, without tables, headings, pictures and blocks of code."""
    text = re.sub(r"```.*?```", "", text, flags=re.DOTALL)
    for block in re.split(r"\n\s*\n|\n(?= *(?:- |\d+\. ))", text):
        if block.strip() and not block.lstrip().startswith(("|", "#", "!")):
            yield " ".join(block.split())


def sentences(text: str) -> Iterator[str]:
    for paragraph in paragraphs(text):
        shown = re.sub(r"\]\([^)]*\)", "]", paragraph)
        yield from re.split(r"(?<=[.!?:;]) +", shown)


@pytest.mark.parametrize("page", [ROOT / "README.md", *sorted((ROOT / "docs" / "help").glob("*.md"))], ids=str)
def test_what_is_read_while_one_works_is_said_in_short_sentences(page: Path) -> None:
    assert [one for one in sentences(read(page)) if len(one.split()) > LONGEST_SENTENCE] == []


def test_a_long_sentence_would_be_found() -> None:
    assert list(sentences("# Head\n\nOne [two](three.md).\nFour\n\n| a |\n\n- five\n- six; seven\n")) == [
        "One [two].",
        "Four",
        "- five",
        "- six;",
        "seven",
    ]


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_lines_of_text_are_not_too_wide(page: Path) -> None:
    if page.name == "rules.md":
        return  # made from the rules
    text = re.sub(r"```.*?```", "", read(page), flags=re.DOTALL)
    lines = (line for line in text.splitlines() if not line.startswith(("|", "!", "#")))
    assert [line for line in lines if len(line) > WIDEST] == []
