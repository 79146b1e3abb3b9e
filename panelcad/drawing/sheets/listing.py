"""Tables that fill as many sheets as they need, in columns side by side."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import count
from typing import Final

from panelcad.drawing.display import Bounds, Node
from panelcad.drawing.page import MARGIN, NO_MATERIAL, Page, columns_of, head_of, heading
from panelcad.drawing.paper import Paper
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row, boxes_filled, run_over, stretched

GAP: Final = 6.0
_NEARLY_EMPTY: Final = 0.35
"""A last sheet with less than this share of an even number of rows is filled up from the others."""
_HALVINGS: Final = 12


@dataclass(frozen=True)
class Listing:
    """A table with what its sheets are called and how many stand side by side on one."""

    document: str
    title: str
    words: tuple[str, ...]
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    abreast: int = 1
    material: str = NO_MATERIAL


def listing_pages(subject: Subject, listing: Listing) -> list[Page]:
    """The table on sheets of the usual size; none where it has no rows."""
    paper = list_paper(subject)
    columns, boxes = _set_out(paper, listing)
    boxes = _balanced(columns, listing.rows, boxes)
    parts = list(run_over(columns, listing.rows, (box for _ in count() for box in boxes), subject.inks))
    sheets = [parts[i : i + len(boxes)] for i in range(0, len(parts), len(boxes))]
    return [_page(subject, listing, paper, sheet, number) for number, sheet in enumerate(sheets)]


def _balanced(columns: Sequence[Column], rows: Sequence[Row], boxes: list[Bounds]) -> list[Bounds]:
    """The boxes made lower where the last sheet would be nearly empty, so that all sheets are filled alike."""
    filled = boxes_filled(columns, rows, boxes)
    sheets = math.ceil(len(filled) / len(boxes))
    last = sum(filled[(sheets - 1) * len(boxes) :])
    if sheets < 2 or last >= _NEARLY_EMPTY * len(rows) / sheets:
        return boxes
    low, high = 1.0 / sheets, 1.0
    for _ in range(_HALVINGS):
        share = (low + high) / 2
        fits = math.ceil(len(boxes_filled(columns, rows, _lower(boxes, share))) / len(boxes)) <= sheets
        low, high = (low, share) if fits else (share, high)
    return _lower(boxes, high)


def _lower(boxes: list[Bounds], share: float) -> list[Bounds]:
    """The boxes with this share of their height, from the top."""
    return [(left, top - (top - foot) * share, right, top) for left, foot, right, top in boxes]


def list_paper(subject: Subject) -> Paper:
    """The usual sheet for lists: A3 or ANSI B."""
    return subject.papers[0]


def _set_out(paper: Paper, listing: Listing) -> tuple[tuple[Column, ...], list[Bounds]]:
    """The columns widened to share the sheet's width between the tables abreast, and the boxes of those."""
    room = paper.frame[2] - paper.frame[0] - 2 * MARGIN
    width = (room - (listing.abreast - 1) * GAP) / listing.abreast
    return stretched(listing.columns, width), columns_of(paper, width, GAP, head_of(paper, *listing.words))


def _page(subject: Subject, listing: Listing, paper: Paper, parts: list[tuple[Node, ...]], number: int) -> Page:
    name = f"{listing.document}: {listing.title}".upper()
    title = f"{name}, CONTINUED" if number else name
    nodes = tuple(_nodes(parts))
    head = heading(paper, subject.inks, title, *listing.words)
    return Page(paper, (*head, *nodes), listing.title, listing.document, material=listing.material)


def _nodes(parts: list[tuple[Node, ...]]) -> Iterator[Node]:
    for part in parts:
        yield from part
