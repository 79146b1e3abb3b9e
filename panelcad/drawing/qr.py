"""A QR code as a display list (ISO/IEC 18004), encoded by reportlab."""

from functools import cache
from itertools import groupby
from typing import Final

from panelcad.drawing.display import Colour, Path
from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point

QUIET: Final = 4
"""Light modules that the standard wants around a code."""


@cache
def modules(text: str) -> tuple[tuple[bool, ...], ...]:
    """The rows of dark modules, from the top; error correction M."""
    from reportlab.graphics.barcode.qrencoder import QR8bitByte, QRCode, QRErrorCorrectLevel  # noqa: PLC0415 - slow

    code = QRCode(None, QRErrorCorrectLevel.M)
    code.addData(QR8bitByte(text))
    code.make()
    count = code.getModuleCount()
    return tuple(tuple(bool(code.isDark(row, column)) for column in range(count)) for row in range(count))


def qr_code(text: str, at: Point, size: float, colour: Colour) -> Path:
    """The code in a square of `size` mm, its quiet zone included, whose lower left corner is `at`."""
    rows = modules(text)
    step = size / (len(rows) + 2 * QUIET)
    bars = []
    for i, row in enumerate(rows):
        y = at.y + size - (QUIET + i + 0.5) * step
        for start, length in _runs(row):
            x = at.x + (QUIET + start + length / 2) * step
            bars.append(rectangle(Point(x, y), length * step, step))
    return Path(tuple(bars), fill=colour)


def _runs(row: tuple[bool, ...]) -> list[tuple[int, int]]:
    """Start and length of each run of dark modules."""
    runs = []
    start = 0
    for dark, group in groupby(row):
        length = len(list(group))
        if dark:
            runs.append((start, length))
        start += length
    return runs
