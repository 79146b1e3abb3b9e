"""An outline or a cutout's contours taken in from somebody's DXF: lines and true arcs, closed, their unit known."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from pydantic import ValidationError

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.gap import contains
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.intake.dxf_file import DxfFile, FoundContour, read_dxf
from panelcad.model.shape import Circle, Corner, Outline, Shape
from panelcad.units import LengthUnit, format_length

CLOSED: Final = "closed contours of lines and arcs"
NOT_CUT: Final = frozenset({"BEND", "CENTRE_MARK", "DEFPOINTS", "ENGRAVE", "HARDWARE", "LEAD_IN", "REFERENCE"})
"""Layers that are no metal's edge in our own cutting files, and construction points; read only where they are named."""


@dataclass(frozen=True)
class TakenIn:
    """One contour as the model keeps it: its shape about its own middle, and where that is in the drawing, in mm."""

    layer: str
    shape: Shape
    x: float
    y: float


@dataclass(frozen=True)
class TakenInPanel:
    """The sheet's edge, in the drawing's own axes, and every contour inside it."""

    outline: Shape
    openings: tuple[TakenIn, ...]
    unit: LengthUnit


def read_contours(path: Path | str, unit: LengthUnit | None = None, layer: str | None = None) -> tuple[TakenIn, ...]:
    """Every closed contour of a drawing, or of one of its layers, in the drawing's order, loose lines last.

    `unit` is meant where the file states none. Raises `UnusableInput`: no DXF, no unit, open chains, curves that are
    neither line nor arc, or nothing at all.
    """
    drawing = read_dxf(path, unit)
    return tuple(_taken_in(drawing.source, found) for found in _closed(drawing, layer))


def read_panel(path: Path | str, unit: LengthUnit | None = None, layer: str | None = None) -> TakenInPanel:
    """The contour that holds all others as the outline, the others as openings. Raises `UnusableInput`."""
    drawing = read_dxf(path, unit)
    found = _closed(drawing, layer)
    edge = max(found, key=lambda each: each.contour.area)
    inner = [each for each in found if each is not edge]
    for each in inner:
        if not contains(edge.contour, _first_point(each.contour)):
            place = f"layer {each.layer}, {_at(_first_point(each.contour), drawing.unit)}"
            raise UnusableInput(
                drawing.source, place, "a contour lies outside the largest one", "one sheet with its cuts"
            )
    outline = _shape(drawing.source, edge.layer, edge.contour, Point(0.0, 0.0))
    return TakenInPanel(outline, tuple(_taken_in(drawing.source, each) for each in inner), drawing.unit)


def _closed(drawing: DxfFile, layer: str | None) -> list[FoundContour]:
    _refuse_open(drawing, layer)
    _refuse_curves(drawing, layer)
    found = [each for each in drawing.contours if _is_asked_for(each.layer, layer)]
    if not found:
        place = f"layer {layer}" if layer else ""
        raise UnusableInput(drawing.source, place, "it holds no closed contour", CLOSED + _known_layers(drawing))
    return found


def _is_asked_for(layer: str, asked: str | None) -> bool:
    return layer.upper() not in NOT_CUT if asked is None else layer.upper() == asked.upper()


def _refuse_open(drawing: DxfFile, layer: str | None) -> None:
    for found in drawing.tracks:
        if _is_asked_for(found.layer, layer):
            start, end = found.track.vertices[0].point, found.track.vertices[-1].point
            gap = format_length(distance(start, end), drawing.unit)
            place = f"layer {found.layer}, {_at(start, drawing.unit)}"
            raise UnusableInput(drawing.source, place, f"a chain of lines is open by {gap}", CLOSED)


def _refuse_curves(drawing: DxfFile, layer: str | None) -> None:
    for kind, where in drawing.unreadable:
        if _is_asked_for(where, layer):
            raise UnusableInput(drawing.source, f"layer {where}", f"it holds an entity of kind {kind}", CLOSED)


def _known_layers(drawing: DxfFile) -> str:
    names = sorted({each.layer for each in drawing.contours})
    return f"; there are some on {', '.join(names[:6])}" if names else ""


def _taken_in(source: str, found: FoundContour) -> TakenIn:
    x1, y1, x2, y2 = found.contour.bounds
    middle = Point((x1 + x2) / 2, (y1 + y2) / 2)
    return TakenIn(found.layer, _shape(source, found.layer, found.contour, middle), middle.x, middle.y)


def _shape(source: str, layer: str, contour: Contour, origin: Point) -> Shape:
    moved = Placement(-origin.x, -origin.y).contour(contour)
    try:
        if isinstance(moved, Rounded) and moved.is_circle and distance(moved.centre, Point(0.0, 0.0)) < 1e-9:
            return Circle(diameter=2 * moved.radius)
        return Outline(corners=tuple(_corners(moved)))
    except ValidationError as error:
        message = error.errors()[0]["msg"].removeprefix("Value error, ")
        raise UnusableInput(
            source,
            f"layer {layer}",
            "a contour cannot be used",
            message.removesuffix(" are expected").removesuffix(" is expected"),
        ) from None


def _corners(contour: Contour) -> Iterator[Corner]:
    chain = contour.chain if isinstance(contour, Rounded) else contour
    for vertex in chain.vertices:
        yield Corner(x=vertex.x, y=vertex.y, bulge=vertex.bulge)


def _first_point(contour: Contour) -> Point:
    return contour.segments[0].start


def _at(point: Point, unit: LengthUnit) -> str:
    return f"x {format_length(point.x, unit)}, y {format_length(point.y, unit)}"
