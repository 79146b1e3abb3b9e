"""The sheet and what is cut in it, the same for the front view and the view from behind."""

import math
from collections.abc import Iterator
from itertools import groupby
from typing import Final

from panelcad.drawing.display import Group, Node, Path
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import Line, ViewStyle
from panelcad.geometry.contour import Contour, Vertex, circle, rectangle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, polar
from panelcad.geometry.track import Track, line
from panelcad.model.hole import Face, HoleForm, HoleKind, Nutplate
from panelcad.model.kept import kept
from panelcad.model.layout import Feature, FeatureKind, PlacedCut, PlateLayout
from panelcad.model.plate import Bend, CutState, PlateState

_THREE_QUARTERS: Final = 2.414213562373095
"""tan(270° / 4), the bulge of three quarters of a circle, as which a thread is drawn (ISO 6410-1)."""


def metal_group(plate: PlateLayout, style: ViewStyle) -> Group:
    """The sheet with its inner openings, owned by the plate; narrow where it is there already."""
    colours = style.palette
    outlines = (plate.outline, *(feature.contour for feature in plate.inner))
    pen_of = style.wide_pen if plate.plate.state is PlateState.NEW else style.narrow_pen
    sheet = Path(outlines, colours.metal, pen_of(colours.metal_edge))
    return Group((sheet,), owner=plate.plate.id, layer=Layer.METAL, title=plate.plate.name)


def bend_group(plate: PlateLayout, style: ViewStyle) -> Group:
    pen = style.narrow_pen(style.palette.metal_edge, Line.PHANTOM)
    paths = tuple(Path((_bend_line(bend),), pen=pen) for bend in plate.plate.bends)
    return Group(paths, owner=plate.plate.id, layer=Layer.BENDS, title="Bends")


def cut_group(placed: PlacedCut, style: ViewStyle, seen: Face) -> Group:
    """One cut, seen from a face: its openings, and its holes on a layer of their own."""
    return kept("cut picture", (placed, style, seen.value), lambda: _cut_group(placed, style, seen))


def attach_group(plate: PlateLayout, style: ViewStyle, seen: Face) -> Group:
    """The screws that hold the plate, each in a group of its own; there already unless the plate is new."""
    is_there = plate.plate.state is not PlateState.NEW
    screws = tuple(
        Group(_holes(tuple(features), style, seen, is_there=is_there), owner, Layer.ATTACH, title="Attach screw")
        for owner, features in groupby(plate.attach, key=lambda feature: feature.owner)
    )
    return Group(screws, layer=Layer.ATTACH, title="Attach screws")


def _cut_group(placed: PlacedCut, style: ViewStyle, seen: Face) -> Group:
    is_there = placed.cut.state is CutState.EXISTING
    openings = tuple(_edge(feature, style, is_there=is_there) for feature in placed.openings)
    holes = Group(_holes(placed.holes, style, seen, is_there=is_there), placed.cut.id, Layer.HOLES)
    return Group((*openings, holes), placed.cut.id, Layer.CUTS, title=placed.cut.name)


def _holes(features: tuple[Feature, ...], style: ViewStyle, seen: Face, *, is_there: bool) -> tuple[Node, ...]:
    rivets = {feature.name: feature.centre for feature in features if feature.kind is FeatureKind.RIVET}
    nodes: list[Node] = []
    for feature in features:
        if feature.form is not None and feature.kind is not FeatureKind.RIVET:
            turn = _turn(feature.centre, rivets.get(f"{feature.name} rivet 1", feature.centre))
            nodes.extend(_hardware(feature.form, Placement(*feature.centre, turn), style, seen))
        nodes.append(_edge(feature, style, is_there=is_there))
    return tuple(nodes)


def _edge(feature: Feature, style: ViewStyle, *, is_there: bool) -> Path:
    """A cut's contour: wide where the machinist makes it, narrow where it is there already."""
    colours = style.palette
    pen = style.narrow_pen(colours.existing_edge) if is_there else style.wide_pen(colours.cut_edge)
    return Path((feature.contour,), colours.void, pen)


def _hardware(form: HoleForm, at: Placement, style: ViewStyle, seen: Face) -> Iterator[Path]:
    """Countersink, thread and nutplate about a hole; dashed where the sheet hides them."""
    colour = style.palette.cut_edge
    if form.countersink is not None:
        cone = circle(Point(at.x, at.y), form.countersink.diameter)
        yield Path((cone,), style.palette.void, style.narrow_pen(colour, _line(form.countersink.face, seen)))
    if form.kind is HoleKind.TAPPED:
        yield Path((_thread(form, at),), pen=style.narrow_pen(colour))
    if form.nutplate is not None:
        yield Path((_flange(form.nutplate, at),), pen=style.narrow_pen(colour, _line(Face.BACK, seen)))


def _turn(hole: Point, rivet: Point) -> float:
    """Degrees by which a nutplate lies turned: its rivets tell, mirrored and turned as the cut is."""
    return math.degrees(math.atan2(rivet.y - hole.y, rivet.x - hole.x))


def _flange(nutplate: Nutplate, at: Placement) -> Contour:
    length, width = nutplate.flange_length, nutplate.flange_width
    outline = rectangle(Point(0.0, 0.0), length, width, min(length, width) / 2)
    return at.contour(outline)


def _line(face: Face, seen: Face) -> Line:
    return Line.CONTINUOUS if face is seen else Line.DASHED


def _thread(form: HoleForm, at: Placement) -> Track:
    centre = Point(at.x, at.y)
    start, end = polar(centre, form.fastener / 2, 100.0), polar(centre, form.fastener / 2, 10.0)
    return Track((Vertex(*start, _THREE_QUARTERS), Vertex(*end)))


def _bend_line(bend: Bend) -> Track:
    return line(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2))
