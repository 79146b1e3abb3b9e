"""Lettering as Qt paths, taken from the packaged fonts, so that a screen shows what the papers print."""

from functools import cache
from io import BytesIO
from typing import Any

from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont
from PySide6.QtGui import QPainterPath, QTransform

from panelcad.drawing.display import Face
from panelcad.drawing.lettering import em_size, font_file, metrics


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
def _font(face: Face) -> TTFont:
    return TTFont(BytesIO(font_file(face).read_bytes()), lazy=True)


@cache
def _glyph(char: str, face: Face) -> QPainterPath:
    """One glyph in ems."""
    font = _font(face)
    glyphs = font.getGlyphSet()
    pen = _PathPen(glyphs)
    glyphs[font.getBestCmap().get(ord(char), ".notdef")].draw(pen)
    size = 1 / font["head"].unitsPerEm
    path = QTransform.fromScale(size, size).map(pen.path)
    path.setFillRule(pen.path.fillRule())
    return path


class _PathPen(BasePen):  # type: ignore[misc]  # fontTools carries no types
    """Draws a glyph of fontTools into a Qt path."""

    def __init__(self, glyphs: Any) -> None:
        super().__init__(glyphs)
        self.path = QPainterPath()

    def _moveTo(self, point: tuple[float, float]) -> None:  # noqa: N802 - fontTools names it
        self.path.moveTo(*point)

    def _lineTo(self, point: tuple[float, float]) -> None:  # noqa: N802
        self.path.lineTo(*point)

    def _curveToOne(  # noqa: N802
        self, first: tuple[float, float], second: tuple[float, float], point: tuple[float, float]
    ) -> None:
        self.path.cubicTo(*first, *second, *point)

    def _qCurveToOne(self, first: tuple[float, float], point: tuple[float, float]) -> None:  # noqa: N802
        self.path.quadTo(*first, *point)

    def _closePath(self) -> None:  # noqa: N802
        self.path.closeSubpath()
