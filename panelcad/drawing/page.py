"""Pages without their border yet, and the border, title block and draft mark that make sheets of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.border import border, draft_mark
from panelcad.drawing.display import Across, Bounds, Face, Node
from panelcad.drawing.inks import LARGE, PLAIN, Inks
from panelcad.drawing.lettering import fitted, wrapped
from panelcad.drawing.paper import Paper
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import PITCH
from panelcad.drawing.title_block import HEIGHT, WIDTH, Heading, title_block

MARGIN: Final = 6.0
_NAME: Final = 7.5
"""Room for a page's name below the frame's top."""
_AIR: Final = 1.5
HEAD: Final = _NAME + 4 * PITCH
"""Room for a page's heading: its name and four lines."""
NO_SCALE: Final = "none"
NO_MATERIAL: Final = "see each plate's sheets"
"""On lists that are of no one plate."""


@dataclass(frozen=True)
class Page:
    paper: Paper
    nodes: tuple[Node, ...]
    title: str
    document: str
    scale: str = NO_SCALE
    material: str = NO_MATERIAL
    level: int = 0


def bordered(subject: Subject, pages: Sequence[Page]) -> list[Sheet]:
    """The pages as numbered sheets of one set; those of an option that is not released are marked as a draft."""
    return [_sheet(subject, page, number, len(pages)) for number, page in enumerate(pages, 1)]


def _sheet(subject: Subject, page: Page, number: int, count: int) -> Sheet:
    heading = Heading(page.title, page.document, page.scale, page.material, number, count)
    mark = () if subject.stamp.is_released else (draft_mark(page.paper.frame, subject.inks),)
    frame = border(page.paper, subject.inks)
    nodes = (*mark, *page.nodes, *frame, *title_block(subject, page.paper, heading))
    return Sheet(page.paper.width, page.paper.height, nodes, f"{number} {page.document}: {page.title}", page.level)


def above_title_block(paper: Paper) -> Bounds:
    """The whole width of the frame, above the title block and below the heading."""
    x1, y1, x2, y2 = paper.frame
    return x1 + MARGIN, y1 + HEIGHT + MARGIN, x2 - MARGIN, y2 - HEAD


def beside_title_block(paper: Paper) -> Bounds:
    """The strip at the foot of the frame, left of the title block."""
    x1, y1, x2, _ = paper.frame
    return x1, y1, x2 - WIDTH, y1 + HEIGHT


def head_of(paper: Paper, *more: str) -> float:
    """Room for a heading with these lines below the name, and air under the last; no less than the usual."""
    return max(HEAD, _NAME + len(_lines(paper, more)) * PITCH + _AIR)


def columns_of(paper: Paper, width: float, gap: float = 6.0, head: float = HEAD) -> list[Bounds]:
    """Boxes of this width side by side below the heading; those over the title block end above it."""
    x1, y1, x2, y2 = paper.frame
    boxes = []
    left = x1 + MARGIN
    while left + width <= x2 - MARGIN + 1e-9:
        foot = y1 + MARGIN if left + width <= x2 - WIDTH - MARGIN else y1 + HEIGHT + MARGIN
        boxes.append((left, foot, left + width, y2 - head))
        left += width + gap
    return boxes


def heading(paper: Paper, inks: Inks, title: str, *more: str) -> tuple[Node, ...]:
    """The page's name at its upper left, and the lines below it, every one; the views keep clear of the first four."""
    x, top = paper.frame[0] + MARGIN, paper.frame[3] - 2.0
    name = inks.text(title, (x, top), LARGE, across=Across.TOP, face=Face.BOLD)
    lines = (
        inks.text(line, (x, top - 5.5 - i * PITCH), across=Across.TOP) for i, line in enumerate(_lines(paper, more))
    )
    return (name, *lines)


def _lines(paper: Paper, more: Sequence[str]) -> list[str]:
    """The sentences of a heading as lines that fit into the frame."""
    width = paper.frame[2] - paper.frame[0] - 2 * MARGIN
    return [fitted(piece, width, PLAIN) for line in more for piece in wrapped(line, width, PLAIN)]
