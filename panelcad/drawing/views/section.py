"""A section through a plate and what stands before and behind it, along a straight line.

A vertical section (x = at) is seen from the right: depth z runs to the right, y up. A horizontal one (y = at) is seen
from above: x runs to the right, depth z up. The pilot is at the left or at the bottom.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely

from panelcad.drawing.display import Colour, Group, Path
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import Line, ViewStyle
from panelcad.drawing.views.around import Limit, Space, depth_limits, keep_outs, moving_parts, obstacles
from panelcad.geometry.across import Across
from panelcad.geometry.chord import Interval, chords, point_on, without
from panelcad.geometry.contour import Contour, Vertex, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import polyline
from panelcad.model.layout import Layout, PlacedItem, PlateLayout


@dataclass(frozen=True)
class SectionLine:
    """The line of the section: x = at or y = at, in mm of the plate's axes."""

    across: Across
    at: float

    def place(self, along: float, depth: float) -> Point:
        """Where a point of the section is drawn."""
        return Point(depth, along) if self.across is Across.VERTICAL else Point(along, depth)

    def chords(self, contour: Contour) -> list[Interval]:
        return chords(contour, self.across, self.at)

    def box(self, along: Interval, near: float, far: float) -> Contour:
        corners = [
            self.place(a, z) for a, z in ((along.low, near), (along.high, near), (along.high, far), (along.low, far))
        ]
        return closed_chain(tuple(Vertex(*corner) for corner in corners))

    def boxes(self, contour: Contour, near: float, far: float) -> tuple[Contour, ...]:
        return tuple(self.box(stretch, near, far) for stretch in self.chords(contour))


def section_view(layout: Layout, plate_id: str, line: SectionLine, style: ViewStyle) -> tuple[Group, ...]:
    """The groups of the section; owners as in the other views. Raises `UnknownName`."""
    plate = layout.plate(plate_id)
    found = (
        *_surroundings(layout, plate_id, line, style),
        *(_item(placed, line, style) for placed in plate.items),
        _sheet(plate, line, style),
    )
    return tuple(group for group in found if group.nodes)


def _surroundings(layout: Layout, plate_id: str, line: SectionLine, style: ViewStyle) -> Iterator[Group]:
    colours = style.palette
    for limit in depth_limits(layout, plate_id):
        yield _limit(limit, line, style)
    for space in obstacles(layout, plate_id):
        paths = _filled(
            line.boxes(space.footprint, space.near, space.far), colours.obstacle, colours.obstacle_edge, style
        )
        yield Group(paths, space.owner, Layer.OBSTACLES, title=space.name)
    for space in keep_outs(layout, plate_id):
        paths = _filled(line.boxes(space.footprint, space.near, space.far), colours.moving, colours.moving_edge, style)
        yield Group(paths, space.owner, Layer.KEEP_OUTS, title=space.name)
    for places in moving_parts(layout, plate_id):
        yield _moving(places, line, style)


def _sheet(plate: PlateLayout, line: SectionLine, style: ViewStyle) -> Group:
    """The metal that the line runs through."""
    holes = [stretch for feature in plate.features for stretch in line.chords(feature.contour)]
    left = without(line.chords(plate.outline), holes)
    metal = tuple(line.box(stretch, 0.0, plate.plate.thickness) for stretch in left)
    edge = style.palette.metal_edge
    paths = tuple(Path((piece,), edge, style.narrow_pen(edge)) for piece in metal)
    return Group(paths, plate.plate.id, Layer.METAL, title=plate.plate.name)


def _item(placed: PlacedItem, line: SectionLine, style: ViewStyle) -> Group:
    colours = style.palette
    boxes = tuple(box for body in placed.bodies for box in line.boxes(body.footprint, body.near, body.far))
    bodies = Group(_filled(boxes, colours.body, colours.body_edge, style), placed.item.id, Layer.BODIES)
    bezel = Group(_filled(_bezel(placed, line), colours.bezel, colours.bezel_edge, style), placed.item.id, Layer.BEZELS)
    nodes = tuple(group for group in (bodies, bezel) if group.nodes)
    return Group(nodes, placed.item.id, Layer.BODIES, title=placed.item.name)


def _bezel(placed: PlacedItem, line: SectionLine) -> tuple[Contour, ...]:
    record = placed.cutout.bezel
    if record is None or placed.bezel is None or not placed.shows_bezel or record.thickness == 0.0:
        return ()
    return line.boxes(placed.bezel, -record.thickness, 0.0)


def _limit(limit: Limit, line: SectionLine, style: ViewStyle) -> Group:
    edge = style.wide_pen(style.palette.limit_edge)
    tracks = tuple(
        polyline(*(line.place(along, _depth(limit, line, along)) for along in stretch))
        for stretch in line.chords(limit.footprint)
    )
    return Group(
        tuple(Path((track,), pen=edge) for track in tracks), limit.limit.id, Layer.DEPTH, title=limit.limit.name
    )


def _depth(limit: Limit, line: SectionLine, along: float) -> float:
    return limit.limit.depth_at(*point_on(line.across, line.at, along))


def _moving(places: tuple[Space, ...], line: SectionLine, style: ViewStyle) -> Group:
    """The part where it rests, filled, and the outline of all that it sweeps from there to each end of its travel."""
    colours = style.palette
    at_rest = line.boxes(places[0].footprint, places[0].near, places[0].far)
    rest = _filled(at_rest, colours.moving, colours.moving_edge, style)
    swept = tuple(
        Path(
            (_hull((*at_rest, *line.boxes(end.footprint, end.near, end.far))),),
            pen=style.narrow_pen(colours.moving_edge, Line.PHANTOM),
        )
        for end in places[1:]
        if at_rest or line.chords(end.footprint)
    )
    return Group((*swept, *rest), places[0].owner, Layer.MOVING, title=places[0].name)


def _hull(boxes: tuple[Contour, ...]) -> Contour:
    corners = [segment.start for box in boxes for segment in box.segments]
    around = shapely.MultiPoint(corners).convex_hull
    return closed_chain(tuple(Vertex(x, y) for x, y in around.exterior.coords[:-1]))


def _filled(boxes: tuple[Contour, ...], fill: Colour, edge: Colour, style: ViewStyle) -> tuple[Path, ...]:
    return tuple(Path((box,), fill, style.narrow_pen(edge)) for box in boxes)
