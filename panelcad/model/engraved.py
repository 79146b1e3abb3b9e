"""The room that a line of engraved lettering takes on its plate."""

from typing import Final

from panelcad.geometry.contour import Contour, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.kept import kept
from panelcad.model.plate import Engraving
from panelcad.model.stroke_font import WIDEST, missing_letters, stroke_width

STROKE: Final = 1 / 7
"""Of a letter's height: the bolder stroke of light letters on dark (DOD-HDBK-791 6-5.3.2.3)."""


def engraving_box(engraving: Engraving) -> Contour:
    """The box that an engraved line of capitals fills, its strokes' width included."""
    return kept("words' box", (engraving,), lambda: _engraving_box(engraving))


def _engraving_box(engraving: Engraving) -> Contour:
    ink = STROKE * engraving.height
    box = rectangle(Point(0.0, 0.0), _line_width(engraving) + ink, engraving.height + ink)
    return Placement(engraving.x, engraving.y, engraving.rotation).contour(box)


def _line_width(engraving: Engraving) -> float:
    """In mm; a letter that the font does not draw counts as wide as it is high."""
    absent = missing_letters(engraving.text)
    text = engraving.text
    for letter in absent:
        text = text.replace(letter, WIDEST)
    return stroke_width(text, engraving.height)
