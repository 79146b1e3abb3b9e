"""The first page of a template: how to print and glue the pages, and where each belongs."""

from collections.abc import Iterator, Sequence
from typing import Final

from panelcad.drawing.box import box_outline, middle, size
from panelcad.drawing.cautions import BEFORE_CUTTING
from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path, Text, union
from panelcad.drawing.inks import PLAIN, TITLE, Inks
from panelcad.drawing.lettering import fitted, wrapped
from panelcad.drawing.scaling import scaled
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import PITCH
from panelcad.drawing.template_foot import template_foot
from panelcad.drawing.tiles import FOOT, Printer, Tile
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout

_GAP: Final = 4.0
_HOW: Final = (
    "Print every page at 100 % (actual size, no fitting to the page) and measure both bars on each before use.",
    "Trim one of two neighbouring pages along its dashed line and glue them with the registration marks in line.",
    "Check the length of the whole template with a rule: paper stretches with moisture.",
)


def overview(subject: Subject, plate: PlateLayout, printer: Printer, tiles: Sequence[Tile]) -> Sheet:
    name = plate.plate.name
    words = list(_instructions(name, printer, subject.inks))
    lowest = min(node.at.y for node in words) - PITCH - _GAP
    room = (printer.margin, printer.margin + FOOT + _GAP, printer.width - printer.margin, lowest)
    foot = template_foot(subject, plate, printer, "Overview")
    nodes = (*words, *_map(plate, tiles, room, subject.inks), *foot)
    return Sheet(printer.width, printer.height, nodes, f"{name}, how the pages go together")


def _instructions(name: str, printer: Printer, inks: Inks) -> Iterator[Text]:
    width = printer.width - 2 * printer.margin
    left, top = printer.margin, printer.height - printer.margin
    title = fitted(f"Full-size template: {name}", width, TITLE, Face.BOLD)
    yield inks.text(title, (left, top), TITLE, across=Across.TOP, face=Face.BOLD)
    y = top - 10.0
    for words in (*_HOW, *BEFORE_CUTTING[:4]):
        for piece in wrapped(f"– {words}", width, PLAIN):
            yield inks.text(piece, (left, y), across=Across.TOP)
            y -= PITCH


def _map(plate: PlateLayout, tiles: Sequence[Tile], room: Bounds, inks: Inks) -> Iterator[Node]:
    """The plate and its pages, as large as the room allows, each page with its name."""
    whole = union([tile.window for tile in tiles])
    factor = min(there / here for there, here in zip(size(room), size(whole), strict=True))
    here, there = middle(whole), middle(room)
    origin = Point(there.x - here.x * factor, there.y - here.y * factor)
    contours = (plate.outline, *(feature.contour for feature in plate.features))
    frames = tuple(box_outline(tile.window) for tile in tiles)
    paths = (Path(contours, pen=inks.pen(0.25 / factor)), Path(frames, pen=inks.pen(0.18 / factor)))
    yield from scaled(paths, factor, origin)
    for tile in tiles:
        x, y = middle(tile.window)
        at = (origin.x + x * factor, origin.y + y * factor)
        yield inks.text(tile.name, at, TITLE, Along.CENTRE, Across.MIDDLE, face=Face.BOLD, colour=inks.note)
