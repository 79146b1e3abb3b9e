"""Our PDFs as an independent reader (pdfplumber over pdfminer) sees them, in mm from the lower left corner."""

from io import BytesIO
from typing import NamedTuple

import pdfplumber

from panelcad.drawing.sheet import Sheet
from panelcad.outputs.pdf import Properties, write_pdf_to

MM = 25.4 / 72


class Box(NamedTuple):
    x1: float
    y1: float
    x2: float
    y2: float

    @property
    def size(self) -> tuple[float, float]:
        return self.x2 - self.x1, self.y2 - self.y1

    @property
    def centre(self) -> tuple[float, float]:
        return (self.x1 + self.x2) / 2, (self.y1 + self.y2) / 2


def pdf_bytes(sheets: list[Sheet]) -> bytes:
    stream = BytesIO()
    write_pdf_to(stream, sheets, Properties("Test", on="2026-03-01"))
    return stream.getvalue()


def pages(content: bytes):
    return pdfplumber.open(BytesIO(content)).pages


def boxes(shapes) -> list[Box]:
    """Boxes of shapes. A curve's box is that of its ends: right for circles split at quarters, not for any arc."""
    return [Box(*(shape[key] * MM for key in ("x0", "y0", "x1", "y1"))) for shape in shapes]


def closed_shapes(page) -> list[Box]:
    return boxes([*page.curves, *page.rects])


def nearest(found: list[Box], centre: tuple[float, float], size: tuple[float, float]) -> float:
    """How far the best match is from this centre and size, in mm."""
    return min(
        max(abs(a - b) for a, b in zip((*box.centre, *box.size), (*centre, *size), strict=True)) for box in found
    )
