"""The proposal's comparison: all options side by side, and how many independent sources each function has."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Across, Node
from panelcad.drawing.inks import INKS, Ink, Inks
from panelcad.drawing.paper import Paper
from panelcad.drawing.table import Column, Row, run_over
from panelcad.model.function import Function
from panelcad.outputs.proposal_pages import CHANGES, GAP, MARK, Body, room
from panelcad.outputs.story import Story

_INKS: Final[Inks] = INKS[Ink.COLOUR]
_WHAT_COUNTS: Final = (
    "Sources of each function in working order. Those that one failure takes away together count as one; 0 is none."
)
_MOST_PAGES: Final = 20


def comparison_pages(stories: tuple[Story, ...], paper: Paper) -> list[Body]:
    """Tables of all options, each over as many pages as it needs."""
    figures = [Body("The options compared", nodes) for nodes in _figures(stories, paper)]
    changes = [Body(CHANGES, nodes) for nodes in _changes(stories, paper)]
    functions = [Body("How many of each function", nodes) for nodes in _functions(stories, paper)]
    return figures + changes + functions


def _figures(stories: tuple[Story, ...], paper: Paper) -> Iterator[tuple[Node, ...]]:
    box = room(paper)
    return run_over(_columns(stories, box[2] - box[0], 0.2), list(_compared(stories)), (box,) * _MOST_PAGES, _INKS)


def _changes(stories: tuple[Story, ...], paper: Paper) -> Iterator[tuple[Node, ...]]:
    box = room(paper)
    width = box[2] - box[0]
    columns = (Column("Option", 0.16 * width), Column("Adds", 0.42 * width), Column("Takes out", 0.42 * width))
    rows = [
        Row((told.option.name, _list(told.adds, told.small_added), _list(told.takes_out)))
        for told in stories
        if not told.is_as_found
    ]
    return run_over(columns, rows, (box,) * _MOST_PAGES, _INKS)


def _list(names: tuple[str, ...], small: tuple[str, ...] = ()) -> str:
    listed = "; ".join(names) or "nothing"
    return f"{listed}. Small parts: {'; '.join(small)}" if small else listed


def _functions(stories: tuple[Story, ...], paper: Paper) -> Iterator[tuple[Node, ...]]:
    """Two columns of the table stand side by side on a page, below what the numbers mean."""
    x1, y1, x2, y2 = room(paper)
    note = _INKS.text(_WHAT_COUNTS, (x1, y2), across=Across.TOP)
    y2 -= 7.0
    half = (x2 - x1 - GAP) / 2
    boxes = ((x1, y1, x1 + half, y2), (x1 + half + GAP, y1, x2, y2)) * _MOST_PAGES
    halves = list(run_over(_columns(stories, half, 0.3), list(_sources(stories)), boxes, _INKS))
    for left in range(0, len(halves), 2):
        yield note, *(node for nodes in halves[left : left + 2] for node in nodes)


def _columns(stories: tuple[Story, ...], width: float, first: float) -> tuple[Column, ...]:
    """A column of the share `first` for the names of the rows, and as wide ones for each option."""
    each = width * (1.0 - first) / len(stories)
    return (Column("", width * first), *(Column(told.option.name, each) for told in stories))


def _compared(stories: tuple[Story, ...]) -> Iterator[Row]:
    yield Row(("Price", *(told.price for told in stories)))
    yield Row(("Errors open", *(str(len(told.fit_errors) + len(told.plan_errors)) for told in stories)))
    yield Row(("of these: it does not fit", *(str(len(told.fit_errors)) for told in stories)))
    yield Row(("of these: equipment, load, weight", *(str(len(told.plan_errors)) for told in stories)))
    for i, (title, _) in enumerate(stories[0].figures):
        yield Row((title, *(told.figures[i][1] for told in stories)))
    yield Row((MARK, *(told.fingerprint for told in stories)))


def _sources(stories: tuple[Story, ...]) -> Iterator[Row]:
    for function in Function:
        if any(function in told.functions for told in stories):
            yield Row((function.value, *(str(told.functions.get(function, 0)) for told in stories)))
