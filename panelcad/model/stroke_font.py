"""Lettering as single strokes, for engraving: tracks of lines and true arcs in mm."""

import math
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Final

from panelcad.errors import UnknownName
from panelcad.geometry.contour import Vertex
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track
from panelcad.model.stroke_glyphs import ALIKE, CAPITAL, GLYPHS, MARK_BESIDE, MARKS_ABOVE, MARKS_BELOW, SMALL

LETTER_GAP: Final = 3.0
WORD_GAP: Final = 7.0
"""Between the middles of strokes, in tenths of a capital: a = 2/10 h and e = 6/10 h of ISO 3098, lettering B, which are
clear of ink (from memory), and its stroke of 1/10 h. A stroke of 1/7 h leaves more than its own width clear."""

WIDEST: Final = "W"
"""As wide as a letter may be: as wide as it is high."""

_BENDS: Final = {"l": 90.0, "r": -90.0, "L": 180.0, "R": -180.0}
_CARON: Final = "\u030c"
_TALL: Final = frozenset("bdfhklt")
_DOTLESS: Final = {"i": "ı", "j": "ȷ"}


@dataclass(frozen=True)
class Glyph:
    """Strokes in tenths of the height of a capital, the leftmost at x = 0."""

    strokes: tuple[Track, ...]
    width: float


def stroke_lettering(text: str, height: float, at: Point, rotation: float = 0.0) -> tuple[Track, ...]:
    """One line of text as strokes, its middle at `at`, its capitals `height` mm high. Raises `UnknownName`."""
    scale = height / CAPITAL
    turned = Placement(at.x, at.y, rotation)
    x = -stroke_width(text, height) / 2
    tracks: list[Track] = []
    for letter in _letters(text):
        drawn = _glyph(letter)
        tracks.extend(_set(stroke, scale, x, -height / 2, turned) for stroke in drawn.strokes)
        x += (drawn.width + LETTER_GAP) * scale
    return tuple(tracks)


def stroke_width(text: str, height: float) -> float:
    """Width in mm of one line of text. Raises `UnknownName` for a letter that is not drawn."""
    widths = [_glyph(letter).width for letter in _letters(text)]
    return (sum(widths) + LETTER_GAP * (len(widths) - 1)) * height / CAPITAL if widths else 0.0


def missing_letters(text: str) -> tuple[str, ...]:
    """The letters of a text that the font does not draw, each once."""
    return tuple(dict.fromkeys(letter for letter in _letters(text) if not _is_drawn(letter)))


def _set(stroke: Track, scale: float, dx: float, dy: float, turned: Placement) -> Track:
    moved = (Point(v.x * scale + dx, v.y * scale + dy) for v in stroke.vertices)
    bulges = (v.bulge for v in stroke.vertices)
    return Track(tuple(Vertex(*turned.point(point), bulge) for point, bulge in zip(moved, bulges, strict=True)))


def _letters(text: str) -> Iterator[str]:
    """The text letter by letter, each with the marks that belong to it."""
    cluster = ""
    for char in unicodedata.normalize("NFC", " ".join(text.split())):
        if cluster and unicodedata.combining(char):
            cluster += char
            continue
        if cluster:
            yield cluster
        cluster = char
    if cluster:
        yield cluster


def _base_and_marks(letter: str) -> tuple[str, str]:
    if letter in GLYPHS:
        return letter, ""
    if letter in ALIKE:
        return ALIKE[letter], ""
    apart = unicodedata.normalize("NFD", letter)
    return ALIKE.get(apart[0], apart[0]), apart[1:]


def _is_drawn(letter: str) -> bool:
    base, marks = _base_and_marks(letter)
    return base in GLYPHS and all(mark in MARKS_ABOVE or mark in MARKS_BELOW for mark in marks)


@cache
def _glyph(letter: str) -> Glyph:
    if letter == " ":
        return Glyph((), WORD_GAP - 2 * LETTER_GAP)
    if not _is_drawn(letter):
        raise UnknownName("engraved letter", letter)
    base, marks = _base_and_marks(letter)
    if any(mark in MARKS_ABOVE for mark in marks):
        base = _DOTLESS.get(base, base)
    strokes = _parsed(GLYPHS[base])
    middle, width = _middle(strokes)
    for mark in marks:
        strokes += _mark(base, mark, middle, width)
    return _from_left(strokes)


def _mark(base: str, mark: str, middle: float, width: float) -> tuple[Track, ...]:
    if mark in MARKS_BELOW:
        return _shifted(_parsed(MARKS_BELOW[mark]), middle, 0.0)
    if mark == _CARON and base in "dltL":
        return _shifted(_parsed(MARK_BESIDE), width + 0.8 if base != "L" else middle, 0.0)
    is_small = base.islower() and base not in _TALL
    return _shifted(_parsed(MARKS_ABOVE[mark]), middle, SMALL if is_small else CAPITAL)


def _middle(strokes: tuple[Track, ...]) -> tuple[float, float]:
    lefts, rights = zip(*((s.bounds[0], s.bounds[2]) for s in strokes), strict=True)
    return (min(lefts) + max(rights)) / 2, max(rights)


def _from_left(strokes: tuple[Track, ...]) -> Glyph:
    left = min(stroke.bounds[0] for stroke in strokes)
    right = max(stroke.bounds[2] for stroke in strokes)
    return Glyph(_shifted(strokes, -left, 0.0), right - left)


def _shifted(strokes: tuple[Track, ...], dx: float, dy: float) -> tuple[Track, ...]:
    return tuple(Track(tuple(v._replace(x=v.x + dx, y=v.y + dy) for v in stroke.vertices)) for stroke in strokes)


@cache
def _parsed(drawing: str) -> tuple[Track, ...]:
    return tuple(Track(tuple(_vertices(stroke.split()))) for stroke in drawing.split(";"))


def _vertices(tokens: list[str]) -> Iterator[Vertex]:
    for token, following in zip(tokens, [*tokens[1:], ""], strict=True):
        if "," in token:
            x, y = token.split(",")
            yield Vertex(float(x), float(y), _bulge(following))


def _bulge(token: str) -> float:
    """tan(sweep / 4) of the bend that a token names; a point, or nothing, bends nothing."""
    if token in _BENDS:
        return math.tan(math.radians(_BENDS[token]) / 4)
    return math.tan(math.radians(float(token[1:])) / 4) if token.startswith("~") else 0.0
