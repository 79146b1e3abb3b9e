"""A paper as PDF: set with reportlab's flowing text in the packaged fonts, charts painted true to scale."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO, Final
from xml.sax.saxutils import escape

from panelcad.drawing.charts.frame import Chart
from panelcad.drawing.display import Face
from panelcad.outputs.papers.document import Blank, Block, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.pdf_painter import FONT_NAMES, POINTS_PER_MM, PdfPainter, register_fonts
from panelcad.store.atomic import atomic_writer
from panelcad.units import LengthUnit

MARGIN: Final = 18.0 * POINTS_PER_MM
_FOOT: Final = 14.0 * POINTS_PER_MM
_A4: Final = (210.0 * POINTS_PER_MM, 297.0 * POINTS_PER_MM)
_LETTER: Final = (612.0, 792.0)
_COLOURS: Final = {
    Tone.PLAIN: "#1c232b",
    Tone.GOOD: "#205c3f",
    Tone.ERROR: "#a3141c",
    Tone.WARNING: "#8a4f00",
    Tone.ADVICE: "#1d4f86",
    Tone.FAINT: "#5c6773",
    Tone.TOTAL: "#1c232b",
}
_SHADE: Final = "#eef2f6"
_RULE: Final = "#c4cad0"
_SIZES: Final = {1: 12.5, 2: 10.5}


def write_document(path: Path, document: Document, unit: LengthUnit) -> None:
    """Write a paper in place of what was at `path`, whole; on letter paper beside inches, else on A4."""
    with atomic_writer(path) as stream:
        write_document_to(stream, document, unit)


def write_document_to(stream: BinaryIO, document: Document, unit: LengthUnit) -> None:
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate  # noqa: PLC0415 - slow to load

    register_fonts()
    page = _LETTER if unit is LengthUnit.INCH else _A4
    width = page[0] - 2 * MARGIN
    frame = Frame(MARGIN, MARGIN + _FOOT, width, page[1] - 2 * MARGIN - _FOOT, 0, 0, 0, 0)
    template = BaseDocTemplate(
        stream, pagesize=page, title=document.title, subject=document.subtitle, creator="panelcad", invariant=1
    )
    template.addPageTemplates(
        PageTemplate(frames=[frame], onPage=lambda canvas, doc: _foot(canvas, doc, document, page))
    )
    template.build(list(_story(document, width)))


def _story(document: Document, width: float) -> list[Any]:
    story = [
        _paragraph(document.title, size=16.0, bold=Face.BOLD),
        _paragraph(document.subtitle, tone=Tone.FAINT),
        _gap(6),
    ]
    for block in document.blocks:
        story.extend(_SETTERS[type(block)](block, width))
    return story


def _paragraph(
    text: str, *, size: float = 9.0, bold: Face = Face.REGULAR, tone: Tone = Tone.PLAIN, along: int = 0
) -> Any:
    from reportlab.lib.styles import ParagraphStyle  # noqa: PLC0415 - slow to load
    from reportlab.platypus import Paragraph  # noqa: PLC0415

    style = ParagraphStyle(
        "plain",
        fontName=FONT_NAMES[bold],
        fontSize=size,
        leading=size * 1.32,
        textColor=_COLOURS[tone],
        alignment=along,
        splitLongWords=1,
    )
    return Paragraph(escape(text).replace("\n", "<br/>"), style)


def _gap(points: float) -> Any:
    from reportlab.platypus import Spacer  # noqa: PLC0415 - slow to load

    return Spacer(1, points)


def _heading(block: Heading, _width: float) -> list[Any]:
    from reportlab.platypus import CondPageBreak  # noqa: PLC0415 - slow to load

    size = _SIZES[block.level]
    return [
        CondPageBreak(70),
        _gap(12 if block.level == 1 else 7),
        _paragraph(block.text, size=size, bold=Face.BOLD),
        _gap(3),
    ]


def _words(block: Words, _width: float) -> list[Any]:
    face = Face.BOLD if block.tone in {Tone.ERROR, Tone.TOTAL} else Face.REGULAR
    return [_paragraph(block.text, tone=block.tone, bold=face), _gap(4)]


def _grid(block: Grid, width: float) -> list[Any]:
    from reportlab.platypus import LongTable, TableStyle  # noqa: PLC0415 - slow to load

    whole = sum(column.share for column in block.columns)
    along = [2 if column.is_number else 0 for column in block.columns]
    header = [_paragraph(c.title, size=8.0, bold=Face.BOLD, along=a) for c, a in zip(block.columns, along, strict=True)]
    rows = [[_cell(line, i, along[i]) for i in range(len(along))] for line in block.lines]
    table = LongTable([header, *rows], colWidths=[width * c.share / whole for c in block.columns], repeatRows=1)
    style = [
        ("BACKGROUND", (0, 0), (-1, 0), _SHADE),
        ("LINEBELOW", (0, 0), (-1, -1), 0.4, _RULE),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 3),
        ("RIGHTPADDING", (0, 0), (-1, -1), 3),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
    ]
    table.setStyle(TableStyle(style))
    return [table, _gap(6)]


def _cell(line: Line, column: int, along: int) -> Any:
    tone = line.tone_of(column)
    bold = Face.BOLD if tone is Tone.TOTAL else Face.REGULAR
    return _paragraph(line.cells[column], size=8.0, tone=tone, along=along, bold=bold)


def _chart(block: Chart, width: float) -> list[Any]:
    from reportlab.platypus import Flowable  # noqa: PLC0415 - slow to load

    scale = min(1.0, width / (block.width * POINTS_PER_MM))

    class Painted(Flowable):  # type: ignore[misc] # reportlab has no types
        """The chart's display list on the page; named so that reportlab's error messages say which it was."""

        def wrap(self, *_available: float) -> tuple[float, float]:
            return width, block.height * POINTS_PER_MM * scale

        def draw(self) -> None:
            self.canv.scale(scale, scale)
            PdfPainter(self.canv).page(block.nodes)

    return [_gap(4), Painted(), _gap(8)]


def _blank(block: Blank, width: float) -> list[Any]:
    from reportlab.platypus import KeepTogether, Table, TableStyle  # noqa: PLC0415 - slow to load

    cells = [[_paragraph(label, size=8.0, tone=Tone.FAINT) for label in block.labels]]
    table = Table(cells, colWidths=[width / len(block.labels)] * len(block.labels), rowHeights=[34])
    table.setStyle(
        TableStyle(
            [
                ("BOX", (0, 0), (-1, -1), 0.5, _RULE),
                ("INNERGRID", (0, 0), (-1, -1), 0.5, _RULE),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ]
        )
    )
    return [KeepTogether([_gap(6), _paragraph(block.statement), _gap(3), table])]


def _foot(canvas: Any, doc: Any, document: Document, page: tuple[float, float]) -> None:
    """The caution and the paper's marking at the foot of every page."""
    caution = (
        "Planning aid: arithmetic on what was entered; it approves nothing. Unknown is never safe. "
        "Built-in equipment is generic; its weights, currents and prices are invented."
    )
    paragraph = _paragraph(caution, size=7.0, tone=Tone.ERROR)
    width = page[0] - 2 * MARGIN
    _, height = paragraph.wrap(width, _FOOT)
    paragraph.drawOn(canvas, MARGIN, MARGIN + 12.0)
    canvas.setStrokeColor(_RULE)
    canvas.line(MARGIN, MARGIN + 15.0 + height, page[0] - MARGIN, MARGIN + 15.0 + height)
    canvas.setFont(FONT_NAMES[Face.REGULAR], 7.0)
    canvas.setFillColor(_COLOURS[Tone.FAINT])
    canvas.drawString(MARGIN, MARGIN, f"{document.title} · {document.marking}")
    canvas.drawRightString(page[0] - MARGIN, MARGIN, f"page {doc.page}")


_SETTERS: Final[dict[type[Block], Callable[[Any, float], list[Any]]]] = {
    Heading: _heading,
    Words: _words,
    Grid: _grid,
    Chart: _chart,
    Blank: _blank,
}
