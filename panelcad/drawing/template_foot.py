"""The foot of each page of a template: bars that prove the printer's scale, what the page is, and its QR code."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Face, Node
from panelcad.drawing.inks import LARGE, SMALL
from panelcad.drawing.lettering import fitted
from panelcad.drawing.qr import qr_code
from panelcad.drawing.scale_bar import scale_bars
from panelcad.drawing.subject import Subject
from panelcad.drawing.tiles import FOOT, Printer
from panelcad.drawing.title_block import qr_text
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout

_BARS: Final = 121.0
"""Room for the bars and their words."""
_CODE: Final = FOOT - 5.0


def template_foot(subject: Subject, plate: PlateLayout, printer: Printer, name: str) -> Iterator[Node]:
    left, bottom = printer.margin, printer.margin
    right = printer.width - printer.margin
    yield from scale_bars(Point(left, bottom + 3.0), subject.inks)
    yield qr_code(qr_text(subject), Point(right - _CODE, bottom), _CODE, subject.inks.ink)
    x = left + _BARS
    room = right - _CODE - 1.0 - x
    for i, (words, height, face) in enumerate(_lines(subject, plate, name)):
        at = (x, bottom + 19.0 - 4.2 * i)
        yield subject.inks.text(fitted(words, room, height, face), at, height, face=face)


def _lines(subject: Subject, plate: PlateLayout, name: str) -> tuple[tuple[str, float, Face], ...]:
    mark = subject.stamp
    state = f"Issued {mark.on}" if mark.is_released else "DRAFT – NOT FOR CUTTING"
    return (
        (name, LARGE, Face.BOLD),
        (f"{plate.plate.name}, {subject.drawing_number}", SMALL, Face.REGULAR),
        (f"{mark.fingerprint}, revision {mark.revision or 'none'}", SMALL, Face.REGULAR),
        (state, SMALL, Face.BOLD),
        ("Print at 100 %, measure both bars.", SMALL, Face.REGULAR),
    )
