"""The first page of a template: how to print and glue the pages, and where each belongs."""

from collections.abc import Iterator, Sequence
from typing import Final

from panelcad.drawing.box import box_outline, middle, size
from panelcad.drawing.cautions import BEFORE_CUTTING
from panelcad.drawing.display import Across, Along, Bounds, Colour, Face, Node, Path, Text, union
from panelcad.drawing.inks import PLAIN, TITLE, Inks
from panelcad.drawing.lettering import fitted, text_width, wrapped
from panelcad.drawing.scaling import scaled
from panelcad.drawing.schedule import holes
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import PITCH
from panelcad.drawing.template_foot import template_foot
from panelcad.drawing.tiles import FOOT, Printer, Tile
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState

_GAP: Final = 4.0
_AIR: Final = 0.8
_VEIL: Final = Colour.parse("#ffffffb0")
"""Behind a page's name: lines show through it, paler."""
_FRAME: Final = 0.18
_CUT: Final = 0.35
"""Line widths in mm of pages and of what is there already, and of what is to be made."""
_HOW: Final = (
    "Print every page at 100 % (actual size, no fitting to the page) and measure both bars on each before use.",
    "Trim one of two neighbouring pages along its dashed line and glue them with the registration marks in line.",
    "Seen from the front, as the pilot sees the panel.",
)


def overview(subject: Subject, plate: PlateLayout, printer: Printer, tiles: Sequence[Tile]) -> Sheet:
    name = plate.plate.name
    words = list(_instructions(name, (*_HOW, *_of_plate(subject, plate)), printer, subject.inks))
    lowest = min(node.at.y for node in words) - PITCH - _GAP
    room = (printer.margin, printer.margin + FOOT + _GAP, printer.width - printer.margin, lowest)
    foot = template_foot(subject, plate, printer, "Overview")
    nodes = (*words, *_map(subject, plate, tiles, room), *foot)
    return Sheet(printer.width, printer.height, nodes, f"{name}, how the pages go together")


def _of_plate(subject: Subject, plate: PlateLayout) -> Iterator[str]:
    """What the glued template must measure, and what its lines mean."""
    across, upward = (subject.length(extent) for extent in size(plate.outline.bounds))
    yield f"Check the whole template with a rule, {across} wide and {upward} high: paper stretches with moisture."
    if plate.plate.state is not PlateState.NEW:
        yield "Wide lines are to be made, narrow ones are there already."


def _instructions(name: str, lines: Sequence[str], printer: Printer, inks: Inks) -> Iterator[Text]:
    width = printer.width - 2 * printer.margin
    left, top = printer.margin, printer.height - printer.margin
    title = fitted(f"Full-size template: {name}", width, TITLE, Face.BOLD)
    yield inks.text(title, (left, top), TITLE, across=Across.TOP, face=Face.BOLD)
    y = top - 10.0
    for words in (*lines, *BEFORE_CUTTING[:4]):
        for piece in wrapped(f"– {words}", width, PLAIN):
            yield inks.text(piece, (left, y), across=Across.TOP)
            y -= PITCH


def _map(subject: Subject, plate: PlateLayout, tiles: Sequence[Tile], room: Bounds) -> Iterator[Node]:
    """The plate and its pages, as large as the room allows, each page with its name."""
    inks = subject.inks
    whole = union([tile.window for tile in tiles])
    factor = min(there / here for there, here in zip(size(room), size(whole), strict=True))
    here, there = middle(whole), middle(room)
    origin = Point(there.x - here.x * factor, there.y - here.y * factor)
    frames = tuple(box_outline(tile.window) for tile in tiles)
    made, old = _metal(subject, plate)
    paths = (
        Path(frames, pen=inks.pen(_FRAME / factor, colour=inks.faint)),
        Path(old, pen=inks.pen(_FRAME / factor)),
        Path(made, pen=inks.pen(_CUT / factor)),
    )
    yield from scaled(paths, factor, origin)
    for tile in tiles:
        x, y = middle(tile.window)
        at = (origin.x + x * factor, origin.y + y * factor)
        yield Path((box_outline(_around(tile.name, at)),), fill=_VEIL)
        yield inks.text(tile.name, at, TITLE, Along.CENTRE, Across.MIDDLE, face=Face.BOLD, colour=inks.note)


def _metal(subject: Subject, plate: PlateLayout) -> tuple[tuple[Contour, ...], tuple[Contour, ...]]:
    """The contours that are to be made, and those that are there already."""
    listed = holes(subject, plate)
    made = tuple(hole.feature.contour for hole in listed if not hole.is_there)
    there = tuple(hole.feature.contour for hole in listed if hole.is_there)
    if plate.plate.state is PlateState.NEW:
        return (plate.outline, *made), there
    return made, (plate.outline, *there)


def _around(name: str, at: tuple[float, float]) -> Bounds:
    """The box of a page's name with a little air, so that it can be read above the lines."""
    half_width, half_height = text_width(name, TITLE, Face.BOLD) / 2 + _AIR, TITLE / 2 + _AIR
    return at[0] - half_width, at[1] - half_height, at[0] + half_width, at[1] + half_height
