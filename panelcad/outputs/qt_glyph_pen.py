"""A pen of fontTools that draws into a Qt path."""

from typing import Any

from fontTools.pens.basePen import BasePen
from PySide6.QtGui import QPainterPath


class PathPen(BasePen):  # type: ignore[misc]  # fontTools carries no types
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
