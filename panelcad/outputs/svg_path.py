"""SVG path data of contours, tracks and letters: x right, y down, in mm, true arcs."""

import math
from functools import cache

from panelcad.drawing.display import Face
from panelcad.drawing.lettering import em_size, font_file, text_width
from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.segment import Arc, Segment
from panelcad.geometry.track import Track

Outline = Contour | Track


def number(value: float, places: int = 3) -> str:
    """A coordinate without needless zeros."""
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def path_data(outlines: tuple[Outline, ...], places: int = 3) -> str:
    """The `d` of a path of several outlines, y turned down."""
    return "".join(_one(outline, places) for outline in outlines)


def _one(outline: Outline, places: int) -> str:
    if isinstance(outline, Rounded) and outline.is_circle:
        return _circle(outline, places)
    segments = outline.segments
    start = segments[0].start
    drawn = "".join(_segment(segment, places) for segment in segments)
    closed = "" if isinstance(outline, Track) else "Z"
    return f"M{number(start.x, places)} {number(-start.y, places)}{drawn}{closed}"


def _circle(outline: Rounded, places: int) -> str:
    (centre,) = outline.core
    radius = number(outline.radius, places)
    across = number(2 * outline.radius, places)
    start = f"M{number(centre.x - outline.radius, places)} {number(-centre.y, places)}"
    return f"{start}a{radius} {radius} 0 1 0 {across} 0a{radius} {radius} 0 1 0 -{across} 0Z"


def _segment(segment: Segment, places: int) -> str:
    end = f"{number(segment.end.x, places)} {number(-segment.end.y, places)}"
    if not isinstance(segment, Arc):
        return f"L{end}"
    radius = number(segment.radius, places)
    large = int(abs(segment.sweep) > math.pi)
    return f"A{radius} {radius} 0 {large} {int(segment.sweep < 0)} {end}"


def letters(text: str, height: float, face: Face, places: int = 3) -> str:
    """The outlines of a line of text whose left end of the baseline is the origin, y down."""
    scale = em_size(height, face)
    pieces, x = [], 0.0
    for char in text:
        pieces.append(_letter(char, face, round(scale, 6), round(x, 6), places))
        x += text_width(char, height, face)
    return "".join(pieces)


@cache
def _letter(char: str, face: Face, scale: float, x: float, places: int) -> str:
    from fontTools.pens.svgPathPen import SVGPathPen  # noqa: PLC0415 - slow to load
    from fontTools.pens.transformPen import TransformPen  # noqa: PLC0415

    glyphs, names, em = _glyphs(face)
    pen = SVGPathPen(glyphs, ntos=lambda value: number(value, places))
    name = names.get(ord(char), ".notdef")
    glyphs[name].draw(TransformPen(pen, (scale / em, 0, 0, -scale / em, x, 0)))
    return str(pen.getCommands())


@cache
def _glyphs(face: Face):  # type: ignore[no-untyped-def]  # noqa: ANN202 - fontTools has no types
    from fontTools.ttLib import TTFont  # noqa: PLC0415

    font = TTFont(font_file(face), lazy=True)
    return font.getGlyphSet(), font.getBestCmap(), font["head"].unitsPerEm
