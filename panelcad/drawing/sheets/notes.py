"""Numbered lines and framed boxes of words."""

from collections.abc import Iterator, Sequence
from typing import Final

from panelcad.drawing.box import box_outline, shrunk
from panelcad.drawing.cautions import BEFORE_CUTTING, BEFORE_FLIGHT
from panelcad.drawing.display import Across, Bounds, Face, Node, Path
from panelcad.drawing.inks import LARGE, PLAIN, Inks
from panelcad.drawing.lettering import wrapped
from panelcad.drawing.table import PITCH

_INDENT: Final = 5.0
_GAP: Final = 1.0
_WIDEST: Final = 330.0


def caution_box(box: Bounds, inks: Inks) -> tuple[Node, ...]:
    """What must be read before cutting and before flight, side by side."""
    box = (box[0], box[1], min(box[2], box[0] + _WIDEST), box[3])
    left, bottom, right, top = shrunk(box, 3.0)
    half = (left + right) / 2
    columns = (
        ("BEFORE CUTTING", BEFORE_CUTTING, (left, bottom, half - 3.0, top)),
        ("BEFORE FLIGHT", BEFORE_FLIGHT, (half + 3.0, bottom, right, top)),
    )
    texts = tuple(node for title, lines, column in columns for node in titled_list(title, lines, column, inks))
    return (Path((box_outline(box),), pen=inks.wide), *texts)


def titled_list(title: str, lines: Sequence[str], box: Bounds, inks: Inks) -> Iterator[Node]:
    """A bold title and dashed lines below it, from the top of the box."""
    left, _, right, top = box
    yield inks.text(title, (left, top), LARGE, across=Across.TOP, face=Face.BOLD, colour=inks.alarm)
    y = top - LARGE - 2.5
    for words in lines:
        yield inks.text("–", (left, y), across=Across.TOP)
        for piece in wrapped(words, right - left - _INDENT, PLAIN):
            yield inks.text(piece, (left + _INDENT, y), across=Across.TOP)
            y -= PITCH
        y -= _GAP
