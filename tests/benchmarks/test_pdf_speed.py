"""The drawing's PDF against bare reportlab writing the same entities, in the same run: at most half as long again.

Both sides get what is to be written beforehand: ours the sheets, the other flat lists of numbers in points. The time
from a project to the finished file, layout and label placing included, is told beside it.
"""

from collections.abc import Iterator
from io import BytesIO
from time import process_time

import pytest

from panelcad.drawing.display import Face, Group, Node, Path, Text
from panelcad.drawing.lettering import em_size, text_origin
from panelcad.geometry.contour import Chain, Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, direction
from panelcad.geometry.segment import Line
from panelcad.outputs.drawing import drawing_sheets
from panelcad.outputs.pdf import Properties, write_pdf_to
from panelcad.outputs.pdf_painter import FONT_NAMES, POINTS_PER_MM, curves
from tests.drawing import papers

MOST = 1.5
Curve = tuple[float, ...]


def flat(nodes: tuple[Node, ...]) -> Iterator[Path | Text]:
    for node in nodes:
        if isinstance(node, Group):
            yield from flat(node.nodes)
        elif isinstance(node, Path | Text):
            yield node


def points(*values: float) -> Curve:
    return tuple(value * POINTS_PER_MM for value in values)


def outline(shape) -> tuple[Curve, list[Curve], bool]:
    """Start, then the end of each line or both handles and the end of each curve, in points; whether it is closed."""
    pieces: list[Curve] = []
    for segment in shape.segments:
        if isinstance(segment, Line):
            pieces.append(points(*segment.end))
        else:
            pieces.extend(points(*first, *second, *end) for first, second, end in curves(segment))
    return points(*shape.segments[0].start), pieces, isinstance(shape, Chain | Rounded)


def prepared(node: Path | Text):
    if isinstance(node, Text):
        start = Placement(node.at.x, node.at.y, node.rotation).point(Point(*text_origin(node)))
        return node, (*direction(node.rotation), *points(*start, em_size(node.height, node.face)))
    return node, [outline(shape) for shape in node.outlines]


def bare(pages, stream: BytesIO) -> None:
    """The same paths and texts with the same numbers, by reportlab alone."""
    from reportlab.pdfgen.canvas import Canvas

    canvas = Canvas(stream, invariant=1, pageCompression=1, initialFontName=FONT_NAMES[Face.REGULAR])
    for width, height, nodes in pages:
        canvas.setPageSize((width, height))
        for node, made in nodes:
            if isinstance(node, Text):
                bare_text(canvas, node, made)
            else:
                bare_path(canvas, node, made)
        canvas.showPage()
    canvas.save()


def bare_text(canvas, node: Text, made) -> None:
    cosine, sine, x, y, size = made
    colour = node.colour
    written = canvas.beginText()
    written.setFont(FONT_NAMES[node.face], size)
    canvas.setFillColorRGB(colour.red / 255, colour.green / 255, colour.blue / 255, colour.opacity / 255)
    written.setTextTransform(cosine, sine, -sine, cosine, x, y)
    written.textOut(node.text)
    canvas.drawText(written)


def bare_path(canvas, node: Path, made) -> None:
    path = canvas.beginPath()
    for start, pieces, closed in made:
        path.moveTo(*start)
        for piece in pieces:
            if len(piece) == 2:
                path.lineTo(*piece)
            else:
                path.curveTo(*piece)
        if closed:
            path.close()
    if node.fill is not None:
        fill = node.fill
        canvas.setFillColorRGB(fill.red / 255, fill.green / 255, fill.blue / 255, fill.opacity / 255)
    if node.pen is not None:
        pen = node.pen
        canvas.setStrokeColorRGB(pen.colour.red / 255, pen.colour.green / 255, pen.colour.blue / 255)
        canvas.setLineWidth(pen.width * POINTS_PER_MM)
        canvas.setDash(list(points(*pen.dashes)))
    canvas.drawPath(path, int(node.pen is not None), int(node.fill is not None), 0)


def test_a_drawing_takes_at_most_half_as_long_again_as_bare_reportlab(benchmark):
    subject = papers.sample("tourer", "glass")
    sheets = drawing_sheets(subject)
    pages = [(*points(sheet.width, sheet.height), [prepared(node) for node in flat(sheet.nodes)]) for sheet in sheets]
    rounds = 15 if benchmark.enabled else 1
    ours, others, whole = [], [], []
    for _ in range(rounds):
        mine, other = BytesIO(), BytesIO()
        ours.append(_seconds(lambda stream=mine: write_pdf_to(stream, sheets, Properties("Speed"))))
        others.append(_seconds(lambda stream=other: bare(pages, stream)))
        whole.append(_seconds(lambda: drawing_sheets(subject)))
    benchmark.pedantic(lambda: write_pdf_to(BytesIO(), sheets, Properties("Speed")), rounds=1)
    assert _letters(mine) == _letters(other)
    ratio, with_layout = min(ours) / min(others), (min(ours) + min(whole)) / min(others)
    benchmark.extra_info["ratio to bare reportlab"] = round(ratio, 2)
    benchmark.extra_info["ratio with the layout"] = round(with_layout, 2)
    if not benchmark.enabled:
        pytest.skip("speed is measured with --benchmark-enable; the letters are the same")
    print(f"\n{min(ours) * 1000:.0f} ms, {ratio:.2f} times bare reportlab, {with_layout:.2f} with layout")  # noqa: T201
    assert ratio <= MOST


def _seconds(work) -> float:
    start = process_time()
    work()
    return process_time() - start


def _letters(stream: BytesIO) -> list[int]:
    """How many letters an independent reader finds on each page, without the spaces that it guesses between texts."""
    from pypdfium2 import PdfDocument

    found = (page.get_textpage().get_text_range() for page in PdfDocument(stream.getvalue()))
    return [len("".join(words.split())) for words in found]
