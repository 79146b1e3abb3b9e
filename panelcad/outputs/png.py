"""A display list as a PNG of any size, painted by the same painter as the window."""

from pathlib import Path
from typing import Any

from panelcad.drawing.display import Bounds, Colour, Node
from panelcad.errors import UnusableInput
from panelcad.store.atomic import write_atomically

WIDEST_PX = 20_000


def png(nodes: tuple[Node, ...], bounds: Bounds, width_px: int, background: Colour | None = None) -> bytes:
    """The PNG of what `bounds` (mm) shows, `width_px` wide, square pixels; transparent where nothing is drawn.

    Raises `UnusableInput` for a size that cannot be painted.
    """
    from PySide6.QtGui import QImage, QPainter  # noqa: PLC0415 - a screen library, only where a PNG is asked for

    from panelcad.outputs.qt_painter import colour, paint  # noqa: PLC0415

    x1, _, x2, y2 = bounds
    height_px = checked_height(bounds, width_px)
    image = QImage(width_px, height_px, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(colour(background or Colour(0, 0, 0, 0)))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    scale = width_px / (x2 - x1)
    painter.scale(scale, -scale)
    painter.translate(-x1, -y2)
    paint(painter, nodes)
    painter.end()
    return _encoded(image)


def _encoded(image: Any) -> bytes:
    from PySide6.QtCore import QBuffer, QByteArray, QIODevice  # noqa: PLC0415
    from PySide6.QtGui import QImageWriter  # noqa: PLC0415

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(b"PNG"))
    if not writer.write(image):
        raise UnusableInput("picture", "", f"it cannot be written ({writer.errorString()})", "a smaller picture")
    return bytes(buffer.data().data())


def checked_height(bounds: Bounds, width_px: int) -> int:
    """The height in pixels that goes with a width. Raises `UnusableInput` where one of them is out of reach."""
    x1, y1, x2, y2 = bounds
    height = round(width_px * (y2 - y1) / (x2 - x1)) if x2 > x1 else 0
    if not (1 <= width_px <= WIDEST_PX and 1 <= height <= WIDEST_PX):
        raise UnusableInput("picture", "width", f"{width_px} pixels cannot be painted", f"1 to {WIDEST_PX} pixels")
    return height


def write_png(nodes: tuple[Node, ...], bounds: Bounds, width_px: int, path: Path) -> None:
    """Write the picture; the old file stays whole until the new one is complete."""
    write_atomically(path, png(nodes, bounds, width_px))
