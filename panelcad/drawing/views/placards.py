"""What placards say, on the front view: fitted to the placard as it is on the appearance, in mm of the plate's axes."""

from dataclasses import replace
from typing import Final

from panelcad.drawing.display import Group, Text
from panelcad.drawing.faces.marks import Box
from panelcad.drawing.faces.plates import lettering
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import ViewStyle
from panelcad.model.kept import kept
from panelcad.model.layout import Layout, PlacedItem
from panelcad.model.placard import is_placard

_MARGIN: Final = 0.1
"""Of a placard's height, left free around its words."""
_NOWHERE: Final = Group((), layer=Layer.REACH)


def placard_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """One group a placard that shows in front, with its id as owner."""
    items = layout.plate(plate_id).items
    return tuple(_words(placed, style) for placed in items if is_placard(placed.cutout) and placed.shows_bezel)


def _words(placed: PlacedItem, style: ViewStyle) -> Group:
    """The placard itself is touched, not its words."""

    def made() -> Group:
        return Group((_NOWHERE, *_lines(placed, style)), placed.item.id, Layer.ENGRAVING)

    return kept("words of a placard", (placed, style), made)


def _lines(placed: PlacedItem, style: ViewStyle) -> tuple[Text, ...]:
    bezel, place = placed.cutout.bezel, placed.placement
    if bezel is None:
        return ()
    area = Box.around(bezel.shape.contour())
    return tuple(
        replace(line, at=place.point(line.at), rotation=place.rotation, colour=style.palette.engraving)
        for line in lettering(placed.item.name, area.inset(_MARGIN * area.height))
    )
