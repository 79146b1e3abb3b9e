"""The title block: 180 mm wide, at the lower right, with the eight mandatory fields of ISO 7200:2004.

Those are legal owner, identification number, date of issue, sheet number, title, approval person, creator and document
type. Scale, projection (ISO 5456-2), units, tolerance, material, revision and fingerprint stand with them.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.cautions import SHORT
from panelcad.drawing.display import Across, Along, Face, Node, Path
from panelcad.drawing.inks import LARGE, PLAIN, SMALL, TITLE, Inks
from panelcad.drawing.lettering import fitted, text_width
from panelcad.drawing.paper import Paper, Series
from panelcad.drawing.qr import qr_code
from panelcad.drawing.subject import Subject
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import line, polyline

WIDTH: Final = 180.0
HEIGHT: Final = 60.0
_QR: Final = 24.0
_PAD: Final = 1.0


@dataclass(frozen=True)
class Heading:
    """What differs from sheet to sheet."""

    title: str
    document: str
    scale: str
    material: str
    number: int
    count: int


@dataclass(frozen=True)
class Field:
    """A cell: its label in small letters above its value."""

    label: str
    value: str
    width: float
    height: float = PLAIN
    face: Face = Face.REGULAR


def title_block(subject: Subject, paper: Paper, heading: Heading) -> tuple[Node, ...]:
    """The block's nodes, in the lower right corner of the frame."""
    right, bottom = paper.frame[2], paper.frame[1]
    left = right - WIDTH
    inks = subject.inks
    rows = _rows(subject, paper, heading)
    nodes: list[Node] = [*_caution(left, bottom + HEIGHT, inks)]
    top = bottom + HEIGHT - 6.0
    for indent, height, fields in rows:
        nodes.extend(_row(Point(left + indent, top), height, fields, inks))
        top -= height
    code = qr_code(qr_text(subject), Point(left, bottom + 20.0), _QR, inks.ink)
    symbol = _projection(paper.series, Point(right - 13.0, bottom + 48.2), inks)
    return (*nodes, code, *symbol, Path((box_outline((left, bottom, right, bottom + HEIGHT)),), pen=inks.wide))


def qr_text(subject: Subject) -> str:
    """What the QR code says: the fingerprint, and the revision where there is one."""
    return f"PANELCAD {subject.stamp.fingerprint} {subject.stamp.revision or 'DRAFT'}"


def _rows(subject: Subject, paper: Paper, heading: Heading) -> list[tuple[float, float, tuple[Field, ...]]]:
    """Indent, height and fields of each row, from the top."""
    project, mark = subject.project, subject.stamp
    return [
        (0.0, 10.0, (
            Field("Material", heading.material, 60.0),
            Field("General tolerance", subject.tolerance, 40.0),
            Field("Dimensions in", subject.unit_word, 25.0),
            Field("Scale", heading.scale, 25.0, LARGE, Face.BOLD),
            Field("Projection", "", 30.0),
        )),
        (_QR, 14.0, (
            Field("Title", heading.title, 96.0, TITLE, Face.BOLD),
            Field("Option", f"{subject.option.name}{', part' if subject.part else ''}", 60.0, LARGE),
        )),
        (_QR, 10.0, (
            Field("Identification number", subject.drawing_number, 56.0),
            Field("Document type", heading.document, 50.0),
            Field("Geometry fingerprint", mark.fingerprint, 50.0),
        )),
        (0.0, 10.0, (
            Field("Project", f"{project.title}, {project.aircraft.registration}", 84.0),
            Field("Date of issue", mark.on or "not issued", 28.0),
            Field("Revision", mark.revision or "draft", 22.0, PLAIN, Face.BOLD),
            Field("Sheet", f"{heading.number} / {heading.count}", 22.0),
            Field("Size", paper.name, 24.0),
        )),
        (0.0, 10.0, (
            Field("Legal owner", project.shop or "not stated", 84.0),
            Field("Creator", project.drawn_by or "not stated", 50.0),
            Field("Approved by (signature)", "", 46.0),
        )),
    ]  # fmt: skip


def _row(corner: Point, height: float, fields: tuple[Field, ...], inks: Inks) -> Iterator[Node]:
    """A row's cells, `corner` being its upper left one."""
    x = corner.x
    for field in fields:
        yield Path((box_outline((x, corner.y - height, x + field.width, corner.y)),), pen=inks.narrow)
        yield inks.text(field.label, (x + _PAD, corner.y - _PAD), SMALL, across=Across.TOP, colour=inks.note)
        if field.value:
            yield _value(field, Point(x + _PAD, corner.y - height + 2.0), inks)
        x += field.width


def _value(field: Field, at: Point, inks: Inks) -> Node:
    """The value as large as it fits, down to small letters, then shortened."""
    room = field.width - 2 * _PAD
    height = next((h for h in (field.height, LARGE, PLAIN, SMALL) if _fits(field, h, room)), SMALL)
    return inks.text(fitted(field.value, room, height, field.face), at, height, face=field.face)


def _fits(field: Field, height: float, room: float) -> bool:
    return height <= field.height and text_width(field.value, height, field.face) <= room


def _caution(left: float, top: float, inks: Inks) -> tuple[Node, ...]:
    words = inks.text(SHORT, (left + WIDTH / 2, top - 3.0), PLAIN, Along.CENTRE, Across.MIDDLE, colour=inks.alarm)
    return words, Path((line(Point(left, top - 6.0), Point(left + WIDTH, top - 6.0)),), pen=inks.wide)


def _projection(series: Series, middle: Point, inks: Inks) -> tuple[Node, ...]:
    """A truncated cone from the side and from its small end, which stands at the left (ISO 5456-2)."""
    return _PROJECTION[series](middle, inks)


def _first_angle(middle: Point, inks: Inks) -> tuple[Node, ...]:
    return _cone(middle.moved(-5.5, -1.0), middle.moved(5.5, -1.0), inks)


def _third_angle(middle: Point, inks: Inks) -> tuple[Node, ...]:
    return _cone(middle.moved(5.5, -1.0), middle.moved(-5.5, -1.0), inks)


_PROJECTION: Final[dict[Series, Callable[[Point, Inks], tuple[Node, ...]]]] = {
    Series.ISO: _first_angle,
    Series.ANSI: _third_angle,
}


def _cone(side: Point, end: Point, inks: Inks) -> tuple[Node, ...]:
    length, small, large = 5.0, 1.2, 2.4
    left, right = side.x - length / 2, side.x + length / 2
    corners = ((left, side.y - small), (right, side.y - large), (right, side.y + large), (left, side.y + small))
    cone = closed_chain(tuple(Vertex(*corner) for corner in corners))
    axes = (
        polyline(Point(left - 1.5, side.y), Point(right + 1.5, side.y)),
        polyline(Point(end.x - 3.2, end.y), Point(end.x + 3.2, end.y)),
        polyline(Point(end.x, end.y - 3.2), Point(end.x, end.y + 3.2)),
    )
    return (
        Path((cone,), pen=inks.pen(0.35)),
        Path((circle(end, 2 * small), circle(end, 2 * large)), pen=inks.pen(0.35)),
        Path(axes, pen=inks.pen(0.18)),
    )
