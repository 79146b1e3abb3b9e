"""Our own icons, drawn as vectors and rendered in the theme's ink at the size that is asked for."""

from functools import cache
from pathlib import Path
from typing import Final

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

_FOLDER: Final = Path(__file__).parent
_SIZES: Final = (16, 20, 24, 30, 32, 40, 48)


@cache
def icon(name: str, ink: str, disabled: str) -> QIcon:
    """The icon in this ink, greyed where what it stands for is not to be had."""
    made = QIcon()
    for mode, colour in ((QIcon.Mode.Normal, ink), (QIcon.Mode.Disabled, disabled)):
        svg = (_FOLDER / f"{name}.svg").read_text(encoding="utf-8").replace("currentColor", colour)
        renderer = QSvgRenderer(QByteArray(svg.encode()))
        for size in _SIZES:
            made.addPixmap(_rendered(renderer, size), mode)
    return made


@cache
def program_icon() -> QIcon:
    made = QIcon()
    renderer = QSvgRenderer(str(_FOLDER / "panelcad.svg"))
    for size in (16, 24, 32, 48, 64, 128, 256):
        made.addPixmap(_rendered(renderer, size))
    return made


def _rendered(renderer: QSvgRenderer, size: int) -> QPixmap:
    pixmap = QPixmap(QSize(size, size))
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    renderer.render(painter, QRectF(0, 0, size, size))
    painter.end()
    return pixmap
