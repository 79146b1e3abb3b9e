"""Markdown as HTML whose headings have anchors, named as the sites that show Markdown name them.

Qt reads Markdown by itself, but gives headings no anchors.
"""

import re
from collections import Counter
from itertools import pairwise
from typing import Final

from markdown_it import MarkdownIt
from markdown_it.token import Token

_PICTURES: Final = {"image", "softbreak"}


def page_html(markdown: str, beside: str = "") -> str:
    """The body of the page; its pictures are looked for `beside` it where the URL of its folder is given.

    A paragraph that is nothing but pictures is of the class 'picture'.
    """
    reader = _reader()
    tokens = reader.parse(markdown)
    for heading, anchor in _anchored(tokens):
        heading.attrSet("id", anchor)
    for opening, inline in pairwise(tokens):
        for child in inline.children or ():
            if beside and child.type == "image":
                child.attrSet("src", f"{beside}/{child.attrs['src']}")
        if opening.type == "paragraph_open" and {child.type for child in inline.children or ()} <= _PICTURES:
            opening.attrSet("class", "picture")
    return str(reader.renderer.render(tokens, reader.options, {}))


def anchors(markdown: str) -> tuple[str, ...]:
    """The anchors of the page's headings, in their order."""
    return tuple(anchor for anchor, _ in headings(markdown))


def headings(markdown: str) -> tuple[tuple[str, str], ...]:
    """(anchor, words) of the page's headings, in their order."""
    tokens = _reader().parse(markdown)
    words = {id(heading): _words(text) for heading, text in pairwise(tokens) if heading.type == "heading_open"}
    return tuple((anchor, words[id(heading)]) for heading, anchor in _anchored(tokens))


def links(markdown: str) -> tuple[str, ...]:
    """Where the page's links and pictures lead, as they are written."""
    inline = [child for token in _reader().parse(markdown) for child in token.children or ()]
    return tuple(str(one.attrs[key]) for one in inline for key in ("href", "src") if key in one.attrs)


def title(markdown: str) -> str:
    """The words of the first heading; '' where there is none."""
    tokens = _reader().parse(markdown)
    return next((_words(text) for heading, text in pairwise(tokens) if heading.type == "heading_open"), "")


def _reader() -> MarkdownIt:
    return MarkdownIt("commonmark").enable("table")


def _anchored(tokens: list[Token]) -> list[tuple[Token, str]]:
    headings = [
        (heading, _anchor(_words(text))) for heading, text in pairwise(tokens) if heading.type == "heading_open"
    ]
    before: Counter[str] = Counter()
    named = []
    for heading, anchor in headings:
        named.append((heading, f"{anchor}-{before[anchor]}" if before[anchor] else anchor))
        before[anchor] += 1
    return named


def _words(inline: Token) -> str:
    return "".join(child.content for child in inline.children or () if child.type in {"text", "code_inline"})


def _anchor(words: str) -> str:
    """In small letters, without signs, spaces as hyphens.

    >>> _anchor("The basic T, stacks and rows")
    'the-basic-t-stacks-and-rows'
    """
    return re.sub(r"[^\w\- ]", "", words.lower()).replace(" ", "-")
