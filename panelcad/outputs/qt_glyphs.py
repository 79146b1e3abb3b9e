"""Lettering as Qt paths, taken from the packaged fonts, so that a screen shows what the papers print."""

from functools import cache
from io import BytesIO
from typing import TYPE_CHECKING

from PySide6.QtGui import QPainterPath, QTransform

from panelcad.drawing.display import Face
from panelcad.drawing.lettering import em_size, font_file, metrics

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont


def text_path(text: str, height: float, face: Face) -> QPainterPath:
    """The outlines of one line of text, y up, its baseline starting at the origin; capitals are `height` high."""
    font = metrics(face)
    path = QPainterPath()
    advance = 0.0
    for char in text:
        path.addPath(_glyph(char, face).translated(advance, 0.0))
        advance += font.widths.get(char, font.missing)
    size = em_size(height, face)
    return QTransform.fromScale(size, size).map(path)


@cache
def _font(face: Face) -> "TTFont":
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - fonts are read when the first letter is drawn

    return TTFont(BytesIO(font_file(face).read_bytes()), lazy=True)


@cache
def _glyph(char: str, face: Face) -> QPainterPath:
    """One glyph in ems."""
    from panelcad.outputs.qt_glyph_pen import PathPen  # noqa: PLC0415

    font = _font(face)
    glyphs = font.getGlyphSet()
    pen = PathPen(glyphs)
    glyphs[font.getBestCmap().get(ord(char), ".notdef")].draw(pen)
    size = 1 / font["head"].unitsPerEm
    path = QTransform.fromScale(size, size).map(pen.path)
    path.setFillRule(pen.path.fillRule())
    return path
