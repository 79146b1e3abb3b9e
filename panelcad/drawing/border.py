"""The border of a sheet: frame, grid references and centring marks after ISO 5457, and the mark across a draft."""

from collections.abc import Iterator
from itertools import pairwise
from string import ascii_uppercase
from typing import Final

from panelcad.drawing.box import box_outline, grown
from panelcad.drawing.display import Across, Along, Bounds, Face, Group, Node, Path
from panelcad.drawing.inks import FRAME, LARGE, Inks
from panelcad.drawing.lettering import text_width
from panelcad.drawing.paper import Paper
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

FIELD: Final = 50.0
"""Length of a grid field, counted from the sheet's centring marks."""
STRIP: Final = 5.0
"""Width of the strip around the frame that bears the references."""
LETTERS: Final = "".join(letter for letter in ascii_uppercase if letter not in "IO")
DRAFT: Final = "DRAFT – NOT FOR CUTTING"


def border(paper: Paper, inks: Inks) -> tuple[Node, ...]:
    """Frame, grid references and centring marks."""
    frame = Path((box_outline(paper.frame),), pen=inks.pen(FRAME))
    outside = Path((box_outline(grown(paper.frame, STRIP)),), pen=inks.narrow)
    return (outside, *_references(paper.frame, inks), frame, *_centring(paper.frame, inks))


def draft_mark(box: Bounds, inks: Inks) -> Group:
    """The words across the whole of a box, to stand behind all else."""
    x1, y1, x2, y2 = box
    height = 0.8 * (x2 - x1) / text_width(DRAFT, 1.0, Face.BOLD)
    mark = inks.text(
        DRAFT,
        ((x1 + x2) / 2, (y1 + y2) / 2),
        height,
        Along.CENTRE,
        Across.MIDDLE,
        rotation=25.0,
        face=Face.BOLD,
        colour=inks.draft,
    )
    return Group((mark,), layer="draft")


def fields(low: float, high: float) -> list[float]:
    """The ends of the grid fields from `low` to `high`: whole fields from the middle, the rest in the outermost."""
    middle = (low + high) / 2
    half = max(1, round((high - low) / 2 / FIELD))
    return [low, *(middle + i * FIELD for i in range(1 - half, half)), high]


def _references(frame: Bounds, inks: Inks) -> Iterator[Node]:
    x1, y1, x2, y2 = frame
    columns, rows = fields(x1, x2), fields(y1, y2)
    for number, (low, high) in enumerate(pairwise(columns), 1):
        yield from (_reference(str(number), (low + high) / 2, y, inks) for y in (y1 - STRIP / 2, y2 + STRIP / 2))
    for letter, (high, low) in zip(LETTERS, pairwise(rows[::-1]), strict=False):
        yield from (_reference(letter, x, (low + high) / 2, inks) for x in (x1 - STRIP / 2, x2 + STRIP / 2))
    ticks = [(Point(x, y), Point(x, y + STRIP)) for x in columns[1:-1] for y in (y1 - STRIP, y2)]
    ticks += [(Point(x, y), Point(x + STRIP, y)) for y in rows[1:-1] for x in (x1 - STRIP, x2)]
    yield Path(tuple(line(*tick) for tick in ticks), pen=inks.narrow)


def _reference(text: str, x: float, y: float, inks: Inks) -> Node:
    return inks.text(text, (x, y), LARGE, Along.CENTRE, Across.MIDDLE)


def _centring(frame: Bounds, inks: Inks) -> tuple[Node, ...]:
    x1, y1, x2, y2 = frame
    x, y = (x1 + x2) / 2, (y1 + y2) / 2
    marks = (
        line(Point(x1 - STRIP, y), Point(x1 + STRIP, y)),
        line(Point(x2 - STRIP, y), Point(x2 + STRIP, y)),
        line(Point(x, y1 - STRIP), Point(x, y1 + STRIP)),
        line(Point(x, y2 - STRIP), Point(x, y2 + STRIP)),
    )
    return (Path(marks, pen=inks.pen(FRAME)),)
