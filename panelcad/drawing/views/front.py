"""The front view: the sheet as the pilot sees it, its cuts, holes, bezels and lettering, in mm of the plate's axes."""

from panelcad.drawing.display import Across, Along, Group, Node, Path, Text
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import Line, ViewStyle
from panelcad.drawing.views.metal import attach_group, bend_group, cut_group, metal_group
from panelcad.geometry.point import Point
from panelcad.model.hole import Face
from panelcad.model.kept import kept
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.plate import Engraving


def front_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """The groups of the front view, from the sheet up; each cut and each item has one with its id as owner.

    Groups of parts that did not change are the very same objects as before. Raises `UnknownName`.
    """
    plate = layout.plate(plate_id)
    return (
        metal_group(plate, style),
        bend_group(plate, style),
        *(cut_group(placed, style, Face.FRONT) for placed in plate.cuts),
        attach_group(plate, style, Face.FRONT),
        *(item_group(placed, style) for placed in plate.items),
        *engraving_groups(plate, style),
    )


def item_group(placed: PlacedItem, style: ViewStyle) -> Group:
    """What of an item is seen from the front: its bezel and knobs; what is behind the sheet is dashed."""
    return kept("item picture", (placed, style), lambda: _item_group(placed, style))


def engraving_groups(plate: PlateLayout, style: ViewStyle) -> tuple[Group, ...]:
    return tuple(_engraving(engraving, style) for engraving in plate.plate.engravings)


def _item_group(placed: PlacedItem, style: ViewStyle) -> Group:
    knobs = tuple(
        Path((body.footprint,), style.palette.knob, style.narrow_pen(style.palette.bezel_edge))
        for body in placed.in_front
    )
    nodes: tuple[Node, ...] = (*_bezel(placed, style), Group(knobs, placed.item.id, Layer.KNOBS))
    return Group(nodes, placed.item.id, Layer.BEZELS, title=placed.item.name)


def _bezel(placed: PlacedItem, style: ViewStyle) -> tuple[Path, ...]:
    colours = style.palette
    if placed.bezel is not None and placed.shows_bezel:
        return (Path((placed.bezel,), colours.bezel, style.narrow_pen(colours.bezel_edge, Line.PHANTOM)),)
    if placed.bezel is not None:
        return (Path((placed.bezel,), pen=style.narrow_pen(colours.bezel_edge, Line.DASHED)),)
    if placed.in_front:
        return ()
    return tuple(
        Path((body.footprint,), pen=style.narrow_pen(colours.bezel_edge, Line.DASHED)) for body in placed.behind
    )


def _engraving(engraving: Engraving, style: ViewStyle) -> Group:
    text = Text(
        engraving.text,
        Point(engraving.x, engraving.y),
        engraving.height,
        style.palette.engraving,
        Along.CENTRE,
        Across.MIDDLE,
        engraving.rotation,
    )
    return Group((text,), engraving.id, Layer.ENGRAVING, title=engraving.text)
