"""The view from behind, as the mechanic under the panel sees it: mirrored, so that x grows to the left.

What is nearer to the mechanic is drawn later and covers what is farther away. A point of the plate at (x, y) is drawn
at (-x, y).
"""

from dataclasses import replace
from functools import partial

from panelcad.drawing.display import Colour, Group, Path
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import Line, ViewStyle
from panelcad.drawing.views.around import Limit, Space, depth_limits, moving_parts, obstacles
from panelcad.drawing.views.metal import attach_group, cut_group, metal_group
from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.hole import Face
from panelcad.model.kept import kept
from panelcad.model.layout import Feature, Layout, PlacedCut, PlacedItem, PlateLayout

MIRROR = Placement(mirrored=True)


def behind_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """The groups of the view from behind; owners are ids of cuts, items and surroundings. Raises `UnknownName`."""
    seen = mirrored_plate(layout.plate(plate_id))
    bodies = [
        (max(body.far for body in placed.behind), body_group(placed, style)) for placed in seen.items if placed.behind
    ]
    spaces = [(space.far, _space_group(space, style)) for space in obstacles(layout, plate_id)]
    in_order = [group for _, group in sorted((*bodies, *spaces), key=lambda pair: pair[0])]
    return (
        metal_group(seen, style),
        *(cut_group(placed, style, Face.BACK) for placed in seen.cuts),
        attach_group(seen, style, Face.BACK),
        *(_limit_group(limit, style) for limit in depth_limits(layout, plate_id)),
        *in_order,
        *(_moving_group(part, style) for part in moving_parts(layout, plate_id)),
    )


def mirrored_plate(plate: PlateLayout) -> PlateLayout:
    """The plate with all its contours mirrored about its y axis; bezels are left out, for the sheet hides them."""
    return replace(
        plate,
        outline=MIRROR.contour(plate.outline),
        inner=tuple(_mirrored(feature) for feature in plate.inner),
        attach=tuple(_mirrored(feature) for feature in plate.attach),
        cuts=tuple(kept("mirrored cut", (placed,), partial(_mirrored_cut, placed)) for placed in plate.cuts),
        items=tuple(kept("mirrored item", (placed,), partial(_mirrored_item, placed)) for placed in plate.items),
    )


def body_group(placed: PlacedItem, style: ViewStyle) -> Group:
    """The bodies of an item behind the sheet, the farthest from the sheet last."""
    return kept("bodies picture", (placed, style), lambda: _body_group(placed, style))


def _body_group(placed: PlacedItem, style: ViewStyle) -> Group:
    colours = style.palette
    deep = sorted(placed.behind, key=lambda body: body.far)
    paths = tuple(Path((body.footprint,), colours.body, style.narrow_pen(colours.body_edge)) for body in deep)
    return Group(paths, placed.item.id, Layer.BODIES, title=placed.item.name)


def _space_group(space: Space, style: ViewStyle) -> Group:
    colours = style.palette
    path = _outline(space.footprint, colours.obstacle, colours.obstacle_edge, style, Line.CONTINUOUS)
    return Group((path,), space.owner, Layer.OBSTACLES, title=space.name)


def _limit_group(limit: Limit, style: ViewStyle) -> Group:
    path = _outline(limit.footprint, None, style.palette.limit_edge, style, Line.PHANTOM)
    return Group((path,), limit.limit.id, Layer.DEPTH, title=limit.limit.name)


def _moving_group(places: tuple[Space, ...], style: ViewStyle) -> Group:
    colours = style.palette
    paths = tuple(
        _outline(place.footprint, None if i else colours.moving, colours.moving_edge, style, Line.PHANTOM)
        for i, place in enumerate(places)
    )
    return Group(paths, places[0].owner, Layer.MOVING, title=places[0].name)


def _outline(footprint: Contour, fill: Colour | None, edge: Colour, style: ViewStyle, line: Line) -> Path:
    return Path((MIRROR.contour(footprint),), fill, style.narrow_pen(edge, line))


def _mirrored(feature: Feature) -> Feature:
    return replace(feature, contour=MIRROR.contour(feature.contour), centre=Point(-feature.centre.x, feature.centre.y))


def _mirrored_cut(placed: PlacedCut) -> PlacedCut:
    return replace(placed, features=tuple(_mirrored(feature) for feature in placed.features))


def _mirrored_item(placed: PlacedItem) -> PlacedItem:
    bodies = tuple(replace(body, footprint=MIRROR.contour(body.footprint)) for body in placed.bodies)
    return replace(placed, bezel=None, bodies=bodies)
