"""Sheets become one PDF file: fonts embedded, bookmarks, properties, and the same bytes each time."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, BinaryIO, Final

from panelcad.drawing.display import Face
from panelcad.drawing.sheet import Sheet
from panelcad.outputs.paper_file import paper_file
from panelcad.outputs.pdf_painter import FONT_NAMES, POINTS_PER_MM, PdfPainter, register_fonts

_UNDATED: Final = "2000-01-01"
"""Written into the properties of a paper that was not released: a PDF must have a date, and today's would differ."""


@dataclass(frozen=True)
class Properties:
    """What a PDF says about itself. `on` is a date such as 2026-03-01."""

    title: str
    author: str = ""
    subject: str = ""
    keywords: str = ""
    on: str = _UNDATED


def write_pdf(path: Path | str, sheets: Sequence[Sheet], properties: Properties) -> None:
    """Write the sheets, one a page, in place of what was at `path`, at once and whole. Raises `UnusableInput`."""
    with paper_file(path) as stream:
        write_pdf_to(stream, sheets, properties)


def write_pdf_to(stream: BinaryIO, sheets: Sequence[Sheet], properties: Properties) -> None:
    canvas = _canvas(stream, properties)
    painter = PdfPainter(canvas)
    above = -1
    for number, sheet in enumerate(sheets, 1):
        above = min(sheet.level, above + 1)
        canvas.setPageSize((sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM))
        canvas.bookmarkPage(f"sheet-{number}")
        canvas.addOutlineEntry(sheet.title, f"sheet-{number}", level=above)
        painter.page(sheet.nodes)
        canvas.showPage()
    canvas.save()


def _canvas(stream: BinaryIO, properties: Properties) -> Any:
    from reportlab.pdfgen.canvas import Canvas  # noqa: PLC0415 - slow to load

    register_fonts()
    canvas = Canvas(stream, invariant=1, pageCompression=1, initialFontName=FONT_NAMES[Face.REGULAR], lang="en")
    canvas.setTitle(properties.title)
    canvas.setAuthor(properties.author)
    canvas.setSubject(properties.subject)
    canvas.setKeywords(properties.keywords)
    canvas.setCreator("panelcad")
    canvas.setProducer("panelcad")
    day = properties.on.replace("-", "")
    canvas.setDateFormatter(lambda *_clock: f"D:{day}000000+00'00'")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.showOutline()
    return canvas
